/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import oblate.drift.Drift;
import oblate.drift.Prediction;
import oblate.report.ReportTable;
import oblate.sky.PlanetModel;

/** Where features are expected at instants. */
final class DriftPredictions {
    private final List<Instant> times;

    private DriftPredictions(List<Instant> times) {
        this.times = times;
    }

    /** Of instants as written. */
    static DriftPredictions at(List<String> words) {
        List<Instant> times = new ArrayList<>();
        for (String word : words.stream()
                .flatMap(w -> Arrays.stream(w.split(",")))
                .map(String::strip)
                .toList()) {
            try {
                times.add(OffsetDateTime.parse(word).toInstant());
            } catch (DateTimeException e) {
                throw badTime(word, e);
            }
        }
        return new DriftPredictions(times);
    }

    private static UsageException badTime(String word, DateTimeException cause) {
        UsageException bad =
                new UsageException("--predict \"" + word + "\" is no instant; write it as 2024-12-07T20:00:00Z");
        bad.initCause(cause);
        return bad;
    }

    /** A feature's drift with what it predicts. */
    private record Row(Drift drift, Prediction prediction) {}

    ReportTable table(PlanetModel planet, List<Drift> drifts) {
        List<Row> rows = new ArrayList<>();
        drifts.forEach(d -> times.forEach(t -> rows.add(new Row(d, d.at(t)))));
        return new TableOf<Row>("Where features of " + planet.label() + " are expected")
                .fact("longitudes", "mean of all kinds of motion that fit, by their shares")
                .fact(
                        "errors",
                        "one standard error: that of each kind, what lies between the kinds, and what no fit can know; a rate that changes in the last 15 % of the arc of marks or later is not in it")
                .text("feature", "name of the feature", r -> r.drift().series().feature())
                .text("time_utc", "instant, UTC", r -> r.prediction().time())
                .number("lon_deg", "deg", 3, "expected longitude", r -> r.prediction()
                        .reducedLonDeg())
                .number("sigma_lon_deg", "deg", 3, "its standard error", r -> r.prediction()
                        .sigmaLonDeg())
                .text(
                        "system",
                        "rotation system",
                        r -> r.drift().series().system().label())
                .text("model", "kind of motion chosen", r -> r.drift().model())
                .text("shares", "what each kind of motion counts for", r -> shares(r.drift()))
                .number("days_beyond_arc", "d", 2, "days outside the marks", r -> r.prediction()
                        .daysBeyondArc())
                .number("arc_days", "d", 1, "length of the arc of marks", r -> arcDays(r.drift()))
                .rows(rows);
    }

    private static String shares(Drift drift) {
        return drift.alternatives().stream()
                .map(a -> String.format(Locale.ROOT, "%s %.2f", a.curve().modelId(), a.weight()))
                .collect(Collectors.joining(", "));
    }

    private static double arcDays(Drift drift) {
        return (drift.lastUtc().getEpochSecond() - drift.firstUtc().getEpochSecond()) / 86_400.0;
    }
}
