/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import oblate.drift.Drift;
import oblate.drift.DriftModel;
import oblate.report.ReportTable;
import oblate.sky.PlanetModel;

/** Drifts for reading: few columns, value and error together, the numbers of a curve in words. */
final class DriftText {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT);

    private DriftText() {}

    static ReportTable of(PlanetModel planet, List<Drift> drifts) {
        return new TableOf<Drift>("Drifts on " + planet.label())
                .fact(
                        "drift",
                        "deg per 30 days in the row's system, negative for what runs ahead of it; mean of the arc where the rate changes")
                .fact(
                        "speed",
                        "m/s relative to " + planet.globe().iauSystem().label() + ", positive in the sense of rotation")
                .fact(
                        "errors",
                        "one standard error; those of drift, period and speed hold what the choice among the kinds of motion leaves open")
                .text("Feature", "", d -> d.series().feature())
                .text("System", "", d -> d.series().system().id())
                .text(
                        "Marks",
                        "",
                        d -> d.states().size() - d.rejected() + "/" + d.states().size())
                .text("From", "", d -> DAY.format(d.firstUtc().atOffset(ZoneOffset.UTC)))
                .text(
                        "Days",
                        "",
                        d -> text(
                                "%.0f",
                                (d.lastUtc().getEpochSecond() - d.firstUtc().getEpochSecond()) / 86400.0))
                .text("Deg/30 d", "", d -> text("%+.2f ± %.2f", d.rateDegPer30Days(), d.sigmaRateDegPer30Days()))
                .text("Period", "", d -> period(d.periodS(), d.sigmaPeriodS()))
                .text("Speed", "", d -> plusMinus(d.speedMS(), d.sigmaSpeedMS(), "%+.2f ± %.2f"))
                .text("Lat", "", d -> plusMinus(d.meanLatDeg(), d.sigmaMeanLatDeg(), "%+.2f ± %.2f"))
                .text("Model", "", Drift::model)
                .text("Its numbers", "", DriftText::numbers)
                .text("Next best", "", DriftText::next)
                .rows(drifts);
    }

    private static String next(Drift drift) {
        return drift.alternatives().stream()
                .skip(1)
                .limit(1)
                .map(a -> text("%s +%.1f", a.curve().modelId(), a.criterion()))
                .collect(Collectors.joining());
    }

    private static String numbers(Drift drift) {
        DriftModel motion = drift.motion();
        if (motion instanceof DriftModel.Acceleration a) {
            return text(
                    "rate gains %+.5f ± %.5f deg/d each day",
                    a.accelerationDegPerDay2(), a.sigmaAccelerationDegPerDay2());
        }
        if (motion instanceof DriftModel.RateChange c) {
            return text(
                    "%s ± %.1f d: %+.2f ± %.2f to %+.2f ± %.2f deg/30 d",
                    DAY.format(c.changeUtc().atOffset(ZoneOffset.UTC)),
                    c.sigmaChangeDays(),
                    30 * c.beforeDegPerDay(),
                    30 * c.sigmaBeforeDegPerDay(),
                    30 * c.afterDegPerDay(),
                    30 * c.sigmaAfterDegPerDay());
        }
        if (motion instanceof DriftModel.Oscillation o) {
            return text(
                    "swings by %.2f ± %.2f deg in %.1f ± %.1f d, zero %s",
                    o.amplitudeDeg(),
                    o.sigmaAmplitudeDeg(),
                    o.periodDays(),
                    o.sigmaPeriodDays(),
                    DAY.format(o.zeroUtc().atOffset(ZoneOffset.UTC)));
        }
        return "";
    }

    /** Hours, minutes, seconds. */
    private static String period(double seconds, double sigma) {
        if (!Double.isFinite(seconds)) {
            return "";
        }
        int decimals = sigma < 0.5 ? 2 : 1;
        double scale = Math.pow(10, decimals);
        double rounded = Math.rint(seconds * scale) / scale;
        long minutes = (long) Math.floor(rounded / 60);
        return text("%dh %02dm ", minutes / 60, minutes % 60)
                + text(
                        "%0" + (3 + decimals) + "." + decimals + "fs ± %." + decimals + "f",
                        rounded - 60 * minutes,
                        sigma);
    }

    private static String plusMinus(OptionalDouble value, OptionalDouble sigma, String pattern) {
        return value.isPresent() ? text(pattern, value.getAsDouble(), sigma.orElse(0)) : "";
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
