/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import oblate.disc.studio.Trial.Scored;

/** Says how far off a set of fits is: one line a picture, one a planet and grade, then lists of what must not be and what was doubted. */
final class ScoreSheet {
    /** More stated sigmas off than this a trusted fit must not be. */
    static final double WRONG_SIGMAS = 5;

    private ScoreSheet() {}

    /** Prints the whole sheet. */
    static void print(String title, List<Scored> all, PrintWriter out) {
        out.println("# " + title + ": errors as median, then 90th percentile");
        Map<String, List<Scored>> groups = new TreeMap<>();
        for (Scored s : all) {
            out.println(detail(s));
            groups.computeIfAbsent(s.trial().body() + " " + s.trial().grade(), k -> new ArrayList<>())
                    .add(s);
            groups.computeIfAbsent(s.trial().body() + " all", k -> new ArrayList<>())
                    .add(s);
            groups.computeIfAbsent("~ " + s.trial().grade(), k -> new ArrayList<>())
                    .add(s);
        }
        groups.put("~~ all", all);
        groups.forEach((name, group) -> out.println(line(name, group)));
        list("TRUSTED AND WRONG", all.stream().filter(ScoreSheet::trustedAndWrong), out);
        list("WRONG PARITY", all.stream().filter(Scored::wrongHand), out);
        list("DOUBTED", all.stream().filter(s -> s.found() && !s.trusted()), out);
        list("REFUSED", all.stream().filter(s -> !s.found()), out);
        out.flush();
    }

    static boolean trustedAndWrong(Scored s) {
        return s.trusted() && s.worst() > WRONG_SIGMAS;
    }

    private static void list(String title, java.util.stream.Stream<Scored> some, PrintWriter out) {
        List<Scored> rows = some.toList();
        out.println("# " + title + ": " + rows.size());
        rows.forEach(s -> out.println("  " + detail(s)));
    }

    /** One picture's line. */
    static String detail(Scored s) {
        Trial t = s.trial();
        String head = String.format(
                Locale.ROOT,
                "%-12.12s %-7s %-6s R %5.1f phase %5.1f %4.1f s",
                t.name(),
                t.body(),
                t.grade(),
                t.truth().equatorialRadiusPx(),
                t.disc().phaseAngleDeg(),
                s.seconds());
        if (!s.found()) {
            return head + " REFUSED " + s.refusal();
        }
        return head
                + String.format(
                        Locale.ROOT,
                        " centre %.3f %% (%+.1f %+.1f) radius %+.3f %% (%+.1f) angle %+.3f (%+.1f) %s%s %s",
                        s.centrePercent(),
                        s.sigmas()[0],
                        s.sigmas()[1],
                        s.radiusPercent(),
                        s.sigmas()[2],
                        s.angleDeg(),
                        s.sigmas()[3],
                        s.fit().trust(),
                        s.wrongHand() ? " MIRROR" : "",
                        String.join(" ", s.fit().reasons()));
    }

    /** One group's line. */
    static String line(String group, List<Scored> rows) {
        List<Scored> found = rows.stream().filter(Scored::found).toList();
        String head = String.format(
                Locale.ROOT,
                "%-15s n %2d refused %d trusted %2d",
                group,
                rows.size(),
                rows.size() - found.size(),
                found.stream().filter(Scored::trusted).count());
        if (found.isEmpty()) {
            return head;
        }
        double[] centre = found.stream()
                .flatMapToDouble(s -> DoubleStream.of(s.sigmas()[0], s.sigmas()[1]))
                .toArray();
        double[] lon = spread(found, Scored::lonDeg);
        return head
                + " | centre % " + pair(sorted(found, Scored::centrePercent))
                + " | radius % " + pair(sorted(found, s -> Math.abs(s.radiusPercent())))
                + String.format(Locale.ROOT, " signed %+.3f", quantile(sorted(found, Scored::radiusPercent), 0.5))
                + " | angle " + pair(sorted(found, s -> Math.abs(s.angleDeg())))
                + " | inside 1, 2 sigma: centre " + shares(centre)
                + " radius " + shares(sorted(found, s -> s.sigmas()[2]))
                + " angle " + shares(sorted(found, s -> s.sigmas()[3]))
                + " | longitude " + pair(lon) + " picked " + shares(spread(found, Scored::lonSigmas))
                + " of " + lon.length
                + " | s " + pair(sorted(rows, Scored::seconds));
    }

    private static double[] sorted(List<Scored> rows, ToDoubleFunction<Scored> value) {
        return rows.stream().mapToDouble(value).sorted().toArray();
    }

    private static double[] spread(List<Scored> rows, java.util.function.Function<Scored, List<Double>> values) {
        return rows.stream()
                .flatMap(s -> values.apply(s).stream())
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
    }

    private static String pair(double[] sorted) {
        return sorted.length == 0
                ? "-"
                : String.format(Locale.ROOT, "%.3f/%.3f", quantile(sorted, 0.5), quantile(sorted, 0.9));
    }

    private static String shares(double[] sigmas) {
        return sigmas.length == 0 ? "-" : share(sigmas, 1) + " " + share(sigmas, 2) + " %";
    }

    private static long share(double[] sigmas, double most) {
        return Math.round(
                100.0 * DoubleStream.of(sigmas).filter(s -> Math.abs(s) < most).count() / sigmas.length);
    }

    /** Between the two nearest of sorted values. */
    static double quantile(double[] sorted, double share) {
        double k = share * (sorted.length - 1);
        int i = (int) k;
        return sorted[i] + (k - i) * (sorted[Math.min(i + 1, sorted.length - 1)] - sorted[i]);
    }
}
