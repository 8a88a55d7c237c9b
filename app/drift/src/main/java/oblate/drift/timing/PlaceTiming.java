/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * What one marked moon or shadow says about the time.
 *
 * @param mark the mark
 * @param oMinusPS time of the picture less the time foretold for that place on the moon's way (s); NaN when none can be told
 * @param errors its error in parts
 * @param besideArcsec distance of the mark from the foretold way, to the left of the motion as the sky shows it with north up (arcsec); NaN likewise
 * @param besideErrors its error in parts (arcsec)
 * @param doubts why it may be wrong, one phrase each; empty when nothing speaks against it
 * @param usable whether it may go into a mean
 * @param recallable whether it may not only because it also fits something else at the stated time; others of the night that are off by as much speak for it
 */
record PlaceTiming(
        PlaceMark mark,
        double oMinusPS,
        ErrorParts errors,
        double besideArcsec,
        ErrorParts besideErrors,
        List<String> doubts,
        boolean usable,
        boolean recallable) {

    PlaceTiming {
        doubts = List.copyOf(doubts);
    }

    static PlaceTiming none(PlaceMark mark, String why) {
        return new PlaceTiming(
                mark,
                Double.NaN,
                new ErrorParts(0, Map.of()),
                Double.NaN,
                new ErrorParts(0, Map.of()),
                List.of(why),
                false,
                false);
    }

    Instant predictedUtc() {
        return mark.shot().midUtc().minusNanos(Math.round(oMinusPS * 1e9));
    }

    /** The same, fit for a mean. */
    PlaceTiming recalled() {
        return new PlaceTiming(mark, oMinusPS, errors, besideArcsec, besideErrors, doubts, true, false);
    }

    /** Whether another moon or shadow of the same clock is off by as much. */
    boolean agreesWith(PlaceTiming other) {
        double apart = Math.hypot(value().apartS(), other.value().apartS());
        return other.hasTime()
                && !other.mark().subject().equals(mark.subject())
                && other.mark().shot().clock().equals(mark.shot().clock())
                && Math.abs(oMinusPS - other.oMinusPS()) < PlaceTimer.DOUBTFUL * apart;
    }

    boolean hasTime() {
        return Double.isFinite(oMinusPS);
    }

    Pool.Value beside() {
        return new Pool.Value(besideArcsec, besideErrors);
    }

    Pool.Value value() {
        return new Pool.Value(oMinusPS, errors);
    }
}
