/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.util.Optional;
import oblate.sky.GroundView;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.sky.event.Passage;

/**
 * One thing to see.
 *
 * @param kind what sort of thing
 * @param subject the feature's or moon's name
 * @param what what happens, to be read after nothing: "Oval on the meridian", "Io's shadow comes onto the disc"
 * @param time when, as seen from the Earth's centre
 * @param sigmaS standard error of the time (s)
 * @param span from first to last touch of a moon's disc; of a crossing its time give or take its error
 * @param view where planet and Sun stand then
 * @param expected of a feature, where it is expected
 * @param passage of a moon, the whole passage that this begins or ends
 * @param whyNot what hinders; blank for what can be observed
 * @param note what else to know; may be blank
 * @param key names the thing within its night in a way that a newer plan of the same night keeps
 */
public record PlanItem(
        Kind kind,
        String subject,
        String what,
        UtcTime time,
        double sigmaS,
        TimeSpan span,
        GroundView view,
        Optional<Expected> expected,
        Optional<Passage> passage,
        String whyNot,
        String note,
        String key) {

    /** Sorts of things. */
    public enum Kind {
        /** A feature crosses the central meridian. */
        CROSSING,
        /** A moon or its shadow does something. */
        MOON
    }

    /** Whether planet and Sun allow to observe it. */
    public boolean isObservable() {
        return whyNot.isEmpty();
    }

    /** Standard error of the time (min). */
    public double sigmaMin() {
        return sigmaS / 60;
    }
}
