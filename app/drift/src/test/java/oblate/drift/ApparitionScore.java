/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Prints how well the named features of a folder of practice sets are recovered. */
final class ApparitionScore {
    private static final Map<String, String> MODELS =
            Map.of("linear", "rate", "quadratic", "acceleration", "sinusoid", "oscillation", "broken", "change");

    private final Map<String, Map<String, String>> truths = new HashMap<>();
    private int features;
    private int rightModel;
    private int curvedSteady;
    private int within1;
    private int within2;
    private int falseMarks;
    private int falseOut;
    private int goodMarks;
    private int goodOut;
    private int predicted;
    private int predicted1;
    private int predicted2;

    /** Word: the folder. */
    public static void main(String[] words) throws IOException {
        Path folder = Path.of(words[0]);
        ApparitionScore score = new ApparitionScore();
        List<String> lines = Files.readAllLines(folder.resolve("truth.csv"));
        String[] names = lines.get(0).split(",");
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new HashMap<>();
            for (int k = 0; k < names.length; k++) {
                row.put(names[k], cells[k]);
            }
            score.truths.put(row.get("set") + row.get("feature"), row);
        }
        for (String set : List.of("11", "12", "13", "14")) {
            score.set(folder, set);
        }
        System.out.printf(
                Locale.ROOT,
                "%d features: mean rate within 1 sigma %.2f, 2 sigma %.2f; right model %d, steady given a curve %d; false left out %d of %d, good %d of %d; "
                        + "last 20 days held out: within 1 sigma %.3f, 2 sigma %.3f of %d%n",
                score.features,
                (double) score.within1 / score.features,
                (double) score.within2 / score.features,
                score.rightModel,
                score.curvedSteady,
                score.falseOut,
                score.falseMarks,
                score.goodOut,
                score.goodMarks,
                (double) score.predicted1 / score.predicted,
                (double) score.predicted2 / score.predicted,
                score.predicted);
    }

    private void set(Path folder, String set) throws IOException {
        List<String> key = Files.readAllLines(folder.resolve("marks_" + set + "_key.csv"));
        MarkTable table = MarkFile.read(folder.resolve("marks_" + set + "_labelled.csv"), Sets.JUPITER, "2");
        Map<String, List<Boolean>> wrong = new HashMap<>();
        for (MarkRow row : table.rows()) {
            boolean bad = key.get(row.row()).split(",")[2].equals("1");
            wrong.computeIfAbsent(row.feature(), f -> new ArrayList<>()).add(bad);
        }
        for (LongitudeSeries series : table.series()) {
            feature(set, series, wrong.get(series.feature()));
        }
    }

    private void feature(String set, LongitudeSeries series, List<Boolean> wrong) {
        Map<String, String> truth = truths.get(set + series.feature());
        Drift drift = new DriftFitter().fit(series);
        features++;
        boolean right = drift.model().equals(MODELS.get(truth.get("model")));
        rightModel += right ? 1 : 0;
        curvedSteady += truth.get("model").equals("linear") && !right ? 1 : 0;
        double first = day(truth, drift.firstUtc());
        double last = day(truth, drift.lastUtc());
        double mean = drift.model().equals("oscillation")
                ? Double.parseDouble(truth.get("rate_deg_day"))
                : (at(truth, last) - at(truth, first)) / (last - first);
        double pull = Math.abs(drift.rateDegPerDay() - mean) / drift.sigmaRateDegPerDay();
        within1 += pull < 1 ? 1 : 0;
        within2 += pull < 2 ? 1 : 0;
        for (int i = 0; i < wrong.size(); i++) {
            boolean out = !drift.states().get(i).used();
            falseMarks += wrong.get(i) ? 1 : 0;
            falseOut += wrong.get(i) && out ? 1 : 0;
            goodMarks += wrong.get(i) ? 0 : 1;
            goodOut += !wrong.get(i) && out ? 1 : 0;
        }
        double end = Double.parseDouble(truth.get("days"));
        List<LongitudePoint> kept = series.points().stream()
                .filter(p -> day(truth, p.time()) < end - 20)
                .toList();
        Drift held =
                new DriftFitter().fit(new LongitudeSeries(series.feature(), series.planet(), series.system(), kept));
        for (double day : new double[] {end - 15, end - 10, end - 5, end}) {
            Instant time = Instant.parse(truth.get("t0_utc")).plusSeconds(Math.round(day * 86_400));
            Prediction found = held.at(time);
            double off = Math.abs(Math.IEEEremainder(found.lonDeg() - at(truth, day), 360)) / found.sigmaLonDeg();
            predicted++;
            predicted1 += off < 1 ? 1 : 0;
            predicted2 += off < 2 ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT,
                "%s %s %-12s %-12s rate %+.5f off %+.5f = %.1f sigma; held out %.1f sigma at the end%n",
                set,
                series.feature(),
                truth.get("model"),
                drift.model(),
                drift.rateDegPerDay(),
                drift.rateDegPerDay() - mean,
                pull,
                Math.abs(Math.IEEEremainder(
                                held.at(Instant.parse(truth.get("t0_utc")).plusSeconds(Math.round(end * 86_400)))
                                                .lonDeg()
                                        - at(truth, end),
                                360))
                        / held.at(Instant.parse(truth.get("t0_utc")).plusSeconds(Math.round(end * 86_400)))
                                .sigmaLonDeg());
    }

    private static double day(Map<String, String> truth, Instant time) {
        return Drift.daysBetween(Instant.parse(truth.get("t0_utc")), time);
    }

    private static double at(Map<String, String> truth, double day) {
        double lon = number(truth, "lon0_linear_part") + number(truth, "rate_deg_day") * day;
        lon += number(truth, "accel_deg_day2") * day * day / 2;
        if (!truth.get("period_days").isEmpty()) {
            lon += number(truth, "amplitude_deg")
                    * Math.sin(2 * Math.PI * (day - number(truth, "phase_day")) / number(truth, "period_days"));
        }
        if (!truth.get("break_day").isEmpty() && day > number(truth, "break_day")) {
            lon += (number(truth, "rate2_deg_day") - number(truth, "rate_deg_day"))
                    * (day - number(truth, "break_day"));
        }
        return lon;
    }

    private static double number(Map<String, String> truth, String column) {
        return truth.get(column).isEmpty() ? 0 : Double.parseDouble(truth.get(column));
    }
}
