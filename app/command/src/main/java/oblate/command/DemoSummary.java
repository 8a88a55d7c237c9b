/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Locale;
import oblate.drift.Drift;
import oblate.sample.Feature;
import oblate.sample.SampleTruth;

/** Prints what the demo found beside what is true. */
final class DemoSummary {
    private static final double WITHIN_SIGMAS = 3;

    private final Console console;
    private final SampleTruth truth;

    DemoSummary(Console console, SampleTruth truth) {
        this.console = console;
        this.truth = truth;
    }

    /** 0 when every feature's drift lies within three of its own standard errors of the truth, else 1. */
    int print(DemoFiling.Tally filed, DemoFits.Tally fits, DemoMarks.Tally marks, List<Drift> drifts) {
        line("");
        line("The sample season is invented: pictures, features, sites, kits.");
        line(
                "Filed     %d pictures now, %d were there already, %d without a time filed as undated",
                filed.filed(), filed.known(), filed.undated());
        filed.remarks().forEach(r -> line("          %s", r));
        printFits(fits);
        line(
                "Marked    %d features and %d moons and shadows at their true pixels plus a pick error of %.1f px (1 sigma);",
                marks.made(), marks.moons(), DemoMarks.PICK_SIGMA_PX);
        line(
                "          longitudes come from the fits. %d pictures had been marked before, %d marks refused.",
                marks.known(), marks.refused().size());
        printClocks(drifts);
        return printDrifts(drifts);
    }

    private void printFits(DemoFits.Tally fits) {
        line(
                "Fitted    %d trusted, %d doubtful, %d refused",
                fits.trusted(), fits.doubtful(), fits.refused().size());
        fits.refused().forEach(r -> line("          %s", r));
        if (!fits.centreErrorPx().isEmpty()) {
            line(
                    "          against the truth, median and worst tenth: centre %.2f, %.2f px; pole angle %.2f, %.2f deg; radius, median %+.2f %%",
                    at(fits.centreErrorPx(), 0.5),
                    at(fits.centreErrorPx(), 0.9),
                    at(fits.angleErrorDeg(), 0.5),
                    at(fits.angleErrorDeg(), 0.9),
                    at(fits.radiusErrorPercent(), 0.5));
        }
    }

    private void printClocks(List<Drift> drifts) {
        List<ClockSuspicion> suspicions = ClockSuspicion.among(drifts);
        for (ClockSuspicion c : suspicions) {
            line(
                    "Clock     the picture of %s: its %d marks stand off together by %+.1f deg, so its clock was %.1f +- %.1f min %s",
                    c.midUtc(),
                    c.marks(),
                    c.meanDeg(),
                    Math.abs(c.fastMinutes()),
                    c.sigmaMinutes(),
                    c.fastMinutes() > 0 ? "fast" : "slow");
        }
        for (SampleTruth.Picture p : truth.wrongClocks()) {
            boolean found = suspicions.stream()
                    .anyMatch(c -> c.midUtc().equals(p.stated().orElse(p.mid())));
            line(
                    "          true: %s, %s (%s)",
                    p.file(), p.wrongClock(), found ? "found" : "not found: too few marks on it");
        }
    }

    private int printDrifts(List<Drift> drifts) {
        line("");
        line(
                "%-22s %-6s %5s %4s %22s %12s %8s %16s %14s",
                "feature", "system", "marks", "out", "drift, deg/30 d", "true", "off by", "period", "speed, m/s");
        int good = 0;
        for (Drift drift : drifts) {
            Feature feature = truth.feature(drift.series().feature()).orElseThrow();
            double sigmas = (drift.rateDegPerDay() - feature.rateDegPerDay()) / drift.sigmaRateDegPerDay();
            good += Math.abs(sigmas) <= WITHIN_SIGMAS ? 1 : 0;
            line(
                    "%-22s %-6s %5d %4d %22s %12.3f %7.1fs %16s %14s",
                    feature.name(),
                    drift.series().system().id(),
                    drift.states().size(),
                    drift.rejected(),
                    plusMinus(drift.rateDegPer30Days(), 30 * drift.sigmaRateDegPerDay(), 3),
                    30 * feature.rateDegPerDay(),
                    sigmas,
                    period(drift.periodS()),
                    drift.speedMS().isPresent()
                            ? plusMinus(
                                    drift.speedMS().getAsDouble(),
                                    drift.sigmaSpeedMS().orElse(0),
                                    2)
                            : "");
        }
        int features = truth.features().size();
        line("");
        line(
                good == features
                        ? "All %d drifts lie within %.0f of their own standard errors of the truth."
                        : "Of %d drifts not all lie within %.0f of their own standard errors of the truth: " + good
                                + " do.",
                features,
                WITHIN_SIGMAS);
        return good == features ? 0 : 1;
    }

    private static String plusMinus(double value, double sigma, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f +- %." + decimals + "f", value, sigma);
    }

    private static String period(double seconds) {
        long hours = (long) (seconds / 3600);
        long minutes = (long) (seconds / 60) % 60;
        return String.format(Locale.ROOT, "%dh%02dm%05.2fs", hours, minutes, seconds % 60);
    }

    private static double at(List<Double> sorted, double share) {
        return sorted.get((int) Math.min(sorted.size() - 1, Math.floor(share * sorted.size())));
    }

    private void line(String format, Object... values) {
        console.out().println(String.format(Locale.ROOT, format, values));
    }
}
