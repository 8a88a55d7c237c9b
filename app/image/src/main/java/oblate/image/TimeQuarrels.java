/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;

/** Compares what sources say and guesses why they differ. */
final class TimeQuarrels {
    private static final double LEAST_S = 1;
    private static final double DAY_S = 86_400;
    private static final double HOUR_S = 3_600;

    private TimeQuarrels() {}

    /** How far two statements may lie apart before they disagree (s): their last digits, and at least a second. */
    private static double toleranceS(TimeClaim a, TimeClaim b) {
        return Math.max(LEAST_S, 2 * (a.precisionS() + b.precisionS()));
    }

    /**
     * The sentence for two middles that disagree.
     *
     * @param exposureS length of the capture, if known (s)
     * @return empty when they agree
     */
    static Optional<String> compare(
            TimeClaim a, Instant middleA, TimeClaim b, Instant middleB, OptionalDouble exposureS) {
        double differenceS = Math.abs(seconds(middleA, middleB));
        double toleranceS = toleranceS(a, b);
        if (differenceS <= toleranceS) {
            return Optional.empty();
        }
        return Optional.of(b.place() + " and " + a.place() + " differ by " + plain(differenceS) + " s: "
                + cause(differenceS, toleranceS, exposureS));
    }

    /** What a time without a zone would agree with. */
    static String zoneHint(TimeClaim zoneless, Instant middle, TimeClaim used) {
        double differenceS = seconds(middle, zoneless.stated().toInstant(ZoneOffset.UTC));
        double quarters = Math.rint(differenceS / 900);
        boolean fits = Math.abs(differenceS - quarters * 900) <= toleranceS(zoneless, used) && Math.abs(quarters) <= 56;
        if (!fits) {
            return "The time \"" + zoneless.originalText() + "\" in " + zoneless.place() + " agrees with that of "
                    + used.place() + " in no zone.";
        }
        return "The time \"" + zoneless.originalText() + "\" in " + zoneless.place() + " would agree with that of "
                + used.place() + " in the zone "
                + ZoneOffset.ofTotalSeconds((int) (quarters * 900)).toString().replace("Z", "UTC") + ".";
    }

    private static String cause(double differenceS, double toleranceS, OptionalDouble exposureS) {
        if (exposureS.isPresent() && Math.abs(differenceS - exposureS.getAsDouble() / 2) <= toleranceS) {
            return "half the capture's length, likely the start or end of one for the middle of the other";
        }
        if (exposureS.isPresent() && Math.abs(differenceS - exposureS.getAsDouble()) <= toleranceS) {
            return "the capture's whole length, likely the start for the end";
        }
        if (multiple(differenceS, DAY_S, toleranceS)) {
            long days = Math.round(differenceS / DAY_S);
            return (days == 1 ? "one day" : days + " days")
                    + ", likely the date, as when an evening's date is kept past midnight";
        }
        if (multiple(differenceS, HOUR_S, toleranceS) && differenceS < 15 * HOUR_S) {
            long hours = Math.round(differenceS / HOUR_S);
            return (hours == 1 ? "one hour" : hours + " hours") + ", likely a zone"
                    + (hours == 12 ? " or a clock of twelve hours" : hours == 1 ? " or summer time" : "");
        }
        if (multiple(differenceS, HOUR_S / 4, toleranceS) && differenceS < 15 * HOUR_S && differenceS >= HOUR_S) {
            return "hours and a part, likely a zone such as that of half an hour";
        }
        return "no usual reason fits, look at both";
    }

    private static boolean multiple(double value, double unit, double tolerance) {
        double count = Math.rint(value / unit);
        return count >= 1 && Math.abs(value - count * unit) <= tolerance;
    }

    private static double seconds(Instant from, Instant to) {
        Duration duration = Duration.between(from, to);
        return duration.getSeconds() + duration.getNano() * 1e-9;
    }

    /** Seconds to the tenth, without needless zeros. */
    private static String plain(double seconds) {
        return BigDecimal.valueOf(seconds)
                .setScale(1, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
