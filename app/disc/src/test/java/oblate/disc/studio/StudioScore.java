/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.ServiceLoader;
import java.util.TreeMap;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.DiscFitter;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** Fits the studio's pictures and says how far off the fits are; by hand: main with the number of pictures, 0 for all, and "none" for no hints. */
final class StudioScore {
    private final Sky sky = Sky.bundled();
    private final Map<String, PlanetModel> planets = new TreeMap<>();

    StudioScore() {
        for (PlanetModel planet : ServiceLoader.load(PlanetModel.class)) {
            planets.put(planet.id(), planet);
        }
    }

    /** One fit beside its truth: errors in percent of the radius and degrees, and in stated sigmas. */
    record Row(
            StudioPicture picture,
            DiscFit fit,
            String refusal,
            double centrePercent,
            double radiusPercent,
            double angleDeg,
            double[] sigmas,
            double seconds) {

        boolean found() {
            return fit != null;
        }

        /** Worst of centre, radius and angle, in stated sigmas. */
        double worst() {
            double worst = 0;
            for (double s : sigmas) {
                worst = Math.max(worst, Math.abs(s));
            }
            return worst;
        }
    }

    Row score(StudioPicture picture, boolean hinted) {
        Random random = new Random(picture.width * 31L + picture.height);
        double off = 12 * random.nextDouble() - 6;
        FitHints hints = hinted
                ? FitHints.of(Math.IEEEremainder(picture.poleDeg + off, 360), 6, picture.mirrored)
                : FitHints.none();
        var disc = sky.disc(planets.get(picture.how.body()), Instant.parse(picture.how.time()));
        var pixels = picture.draw();
        long start = System.nanoTime();
        FitOutcome outcome = new DiscFitter().fit(pixels, disc, hints, Progress.SILENT);
        double seconds = (System.nanoTime() - start) / 1e9;
        if (!(outcome instanceof FitOutcome.Fitted fitted)) {
            return new Row(picture, null, ((FitOutcome.Refused) outcome).reason(), 0, 0, 0, new double[4], seconds);
        }
        Placement p = fitted.fit().placement();
        PlacementCovariance c = fitted.fit().covariance();
        double dx = p.centreXPx() - picture.cx;
        double dy = p.centreYPx() - picture.cy;
        double dr = p.equatorialRadiusPx() - picture.radius;
        double da = Math.IEEEremainder(p.poleAngleDeg() - picture.poleDeg, 360);
        return new Row(
                picture,
                fitted.fit(),
                "",
                100 * Math.hypot(dx, dy) / picture.radius,
                100 * dr / picture.radius,
                da,
                new double[] {
                    dx / Math.sqrt(c.get(0, 0)),
                    dy / Math.sqrt(c.get(1, 1)),
                    dr / c.sigmaRadiusPx(),
                    da / c.sigmaPoleAngleDeg()
                },
                seconds);
    }

    private static double quantile(List<Double> values, double share) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        double k = share * (sorted.size() - 1);
        int i = (int) k;
        return sorted.get(i) + (k - i) * (sorted.get(Math.min(i + 1, sorted.size() - 1)) - sorted.get(i));
    }

    static String line(String group, List<Row> rows) {
        List<Row> found = rows.stream().filter(Row::found).toList();
        if (found.isEmpty()) {
            return group + ": none found of " + rows.size();
        }
        List<Double> centre = found.stream().map(Row::centrePercent).toList();
        List<Double> radius =
                found.stream().map(r -> Math.abs(r.radiusPercent())).toList();
        List<Double> angle = found.stream().map(r -> Math.abs(r.angleDeg())).toList();
        int[] inside = new int[6];
        for (Row r : found) {
            for (int k = 0; k < 4; k++) {
                int at = k < 2 ? 0 : k == 2 ? 2 : 4;
                inside[at] += Math.abs(r.sigmas()[k]) < 1 ? 1 : 0;
                inside[at + 1] += Math.abs(r.sigmas()[k]) < 2 ? 1 : 0;
            }
        }
        int n = found.size();
        return String.format(
                Locale.ROOT,
                "%-15s n %2d lost %d trusted %2d | centre %% %.3f/%.3f | radius %% %.3f/%.3f signed %+.3f | angle %.3f/%.3f | inside 1, 2 sigma: centre %d %d radius %d %d angle %d %d | s %.2f/%.2f",
                group,
                rows.size(),
                rows.size() - n,
                found.stream().filter(r -> r.fit().trust() == Trust.TRUSTED).count(),
                quantile(centre, 0.5),
                quantile(centre, 0.9),
                quantile(radius, 0.5),
                quantile(radius, 0.9),
                quantile(found.stream().map(Row::radiusPercent).toList(), 0.5),
                quantile(angle, 0.5),
                quantile(angle, 0.9),
                50 * inside[0] / n,
                50 * inside[1] / n,
                100 * inside[2] / n,
                100 * inside[3] / n,
                100 * inside[4] / n,
                100 * inside[5] / n,
                quantile(rows.stream().map(Row::seconds).toList(), 0.5),
                quantile(rows.stream().map(Row::seconds).toList(), 1));
    }

    static String detail(Row r) {
        StudioPicture p = r.picture();
        return String.format(
                Locale.ROOT,
                "%-8s %-6s R %5.1f phase %5.1f c %6.3f%% (%+.1f %+.1f) r %+6.3f%% (%+.1f) a %+8.3f (%+.1f) %s %s",
                p.how.body(),
                p.grade,
                p.radius,
                p.how.phase(),
                r.centrePercent(),
                r.sigmas()[0],
                r.sigmas()[1],
                r.radiusPercent(),
                r.sigmas()[2],
                r.angleDeg(),
                r.sigmas()[3],
                r.found()
                        ? r.fit().trust() + (r.fit().placement().mirrored() == p.mirrored ? "" : " MIRROR")
                        : "REFUSED",
                r.found() ? String.join(" ", r.fit().reasons()) : r.refusal());
    }

    static void report(List<Row> rows, PrintWriter out) {
        Map<String, List<Row>> groups = new TreeMap<>();
        for (Row row : rows) {
            out.println(detail(row));
            groups.computeIfAbsent(row.picture().how.body() + " " + row.picture().grade, k -> new ArrayList<>())
                    .add(row);
            groups.computeIfAbsent(row.picture().how.body() + " all", k -> new ArrayList<>())
                    .add(row);
        }
        groups.forEach((name, group) -> out.println(line(name, group)));
        out.println(line("all", rows));
        for (Row row : rows) {
            if (row.found() && row.fit().trust() == Trust.TRUSTED && row.worst() > 5) {
                out.println("TRUSTED AND WRONG: " + detail(row));
            }
        }
        out.flush();
    }

    @SuppressWarnings("SystemOut") // a report run by hand
    public static void main(String[] words) {
        int most = words.length > 0 ? Integer.parseInt(words[0]) : 0;
        boolean hinted = words.length < 2 || !words[1].equals("none");
        List<StudioPicture> set = StudioPicture.set();
        StudioScore score = new StudioScore();
        List<Row> rows = set.parallelStream()
                .limit(most == 0 ? set.size() : most)
                .map(p -> score.score(p, hinted))
                .toList();
        report(rows, new PrintWriter(System.out, true, StandardCharsets.UTF_8));
    }
}
