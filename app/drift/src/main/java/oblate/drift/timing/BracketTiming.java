/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.sky.event.Passage;

/**
 * What the states seen in pictures say about one contact: a time between two pictures, a limit on one side, or that they contradict each other.
 *
 * @param passage the event
 * @param point the contact
 * @param before last picture in which it had not happened yet
 * @param after first picture in which it had
 * @param observedUtc its time, when both are there
 * @param predictedUtc when it is foretold to be seen
 * @param oMinusPS observed minus predicted (s); NaN without a time
 * @param errors its error in parts
 * @param doubts why it may be wrong; empty when nothing speaks against it
 * @param usable whether it may go into a mean
 */
record BracketTiming(
        Passage passage,
        TimedPoint point,
        Optional<Shot> before,
        Optional<Shot> after,
        Optional<Instant> observedUtc,
        Optional<Instant> predictedUtc,
        double oMinusPS,
        ErrorParts errors,
        List<String> doubts,
        boolean usable) {

    BracketTiming {
        doubts = List.copyOf(doubts);
    }

    /** A contact of which no time can be told. */
    static BracketTiming untimed(
            Passage passage,
            TimedPoint point,
            Optional<Shot> before,
            Optional<Shot> after,
            Optional<Instant> predictedUtc,
            List<String> doubts) {
        return new BracketTiming(
                passage,
                point,
                before,
                after,
                Optional.empty(),
                predictedUtc,
                Double.NaN,
                new ErrorParts(0, Map.of()),
                doubts,
                false);
    }

    boolean hasTime() {
        return observedUtc.isPresent();
    }

    /** Whether the pictures contradict each other. */
    boolean isContradiction() {
        return !hasTime() && before.isPresent() && after.isPresent();
    }

    Shot anyShot() {
        return before.or(() -> after).orElseThrow();
    }

    Pool.Value value() {
        return new Pool.Value(oMinusPS, errors);
    }
}
