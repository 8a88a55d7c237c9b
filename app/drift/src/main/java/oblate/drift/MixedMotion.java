/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.List;

/**
 * Where a feature is by all kinds of motion together: the mean of their longitudes by weight, with the weighted variance of each kind plus that between the kinds (Burnham &
 * Anderson 2002, Model Selection and Multimodel Inference, 2nd edition, section 4.3). Away from the marks the standard error never falls: that kinds of motion happen to cross
 * there tells nothing. Immutable.
 *
 * @param kinds the kinds compared, the chosen first
 * @param firstUtc first mark used
 * @param lastUtc last mark used
 */
record MixedMotion(List<Alternative> kinds, Instant firstUtc, Instant lastUtc) {
    /** What no fit can know: reached after {@link #FLOOR_DAYS} beyond the marks. */
    private static final double FLOOR_DEG = 0.05;

    private static final double FLOOR_DAYS = 2;
    private static final double FLOOR_DEG_PER_DAY = 0.003;

    /** A runner-up counts for no more than half a turn: farther off there is nothing on a globe. */
    private static final double MOST_DEG = 180;

    private static final double LONGEST_STEP_DAYS = 1;
    private static final double LEAST_STEP_DAYS = 1e-3;
    private static final double STEPS_PER_ARC = 32;
    private static final double STEP_SHARE = 0.05;

    Prediction at(Instant time) {
        double before = Drift.daysBetween(time, firstUtc);
        double after = Drift.daysBetween(lastUtc, time);
        double beyond = Math.max(0, Math.max(before, after));
        double day = day(time);
        double lon = lonDegAt(day);
        if (beyond == 0) {
            return new Prediction(time, lon, sigmaAt(day), 0);
        }
        double sigma = before > 0 ? sigmaBeyond(day(firstUtc), -beyond) : sigmaBeyond(day(lastUtc), beyond);
        double floor = Math.hypot(FLOOR_DEG * Math.min(1, beyond / FLOOR_DAYS), FLOOR_DEG_PER_DAY * beyond);
        return new Prediction(time, lon, Math.hypot(sigma, floor), beyond);
    }

    /** Days from the zero all curves of a drift have in common. */
    private double day(Instant time) {
        return kinds.get(0).curve().dayAt(time);
    }

    private double lonDegAt(double day) {
        double chosen = kinds.get(0).curve().lonDegAtDay(day);
        double lon = chosen;
        for (Alternative each : kinds) {
            lon += each.weight() * limited(each.curve().lonDegAtDay(day) - chosen);
        }
        return lon;
    }

    /** Standard error (deg) about the longitude of the mixture, as the kinds have it on that day. */
    private double sigmaAt(double day) {
        double lon = lonDegAt(day);
        double variance = 0;
        for (Alternative each : kinds) {
            double own = each.curve().sigmaLonDegAtDay(day);
            double between = each.curve().lonDegAtDay(day) - lon;
            if (each != kinds.get(0)) {
                own = limited(own);
                between = limited(between);
            }
            variance += each.weight() * (own * own + between * between);
        }
        return Math.sqrt(variance);
    }

    private static double limited(double deg) {
        return Math.max(-MOST_DEG, Math.min(MOST_DEG, deg));
    }

    /** The largest standard error (deg) on the way from an end of the marks, looked at in fixed steps that widen with the distance, straight between them. */
    private double sigmaBeyond(double endDay, double beyondDays) {
        double distance = Math.abs(beyondDays);
        double way = Math.signum(beyondDays);
        if (kinds.size() == 1 && kinds.get(0).curve().kind() == CurveKind.RATE) {
            return sigmaAt(endDay + beyondDays);
        }
        double arc = Drift.daysBetween(firstUtc, lastUtc);
        double step = Math.max(LEAST_STEP_DAYS, Math.min(LONGEST_STEP_DAYS, arc / STEPS_PER_ARC));
        double from = 0;
        double atFrom = sigmaAt(endDay);
        while (true) {
            double to = from + Math.max(step, STEP_SHARE * from);
            double atTo = Math.max(atFrom, sigmaAt(endDay + way * to));
            if (to >= distance) {
                return atFrom + (atTo - atFrom) * (distance - from) / (to - from);
            }
            from = to;
            atFrom = atTo;
        }
    }
}
