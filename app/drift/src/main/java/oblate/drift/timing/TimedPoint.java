/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Locale;
import java.util.Optional;
import oblate.sky.event.ContactKind;

/** The moment of an event that a time belongs to. */
public enum TimedPoint {
    /** Outer touch, coming. */
    T1,
    /** Centre on the edge, coming. */
    INGRESS_CENTRE,
    /** Inner touch, coming. */
    T2,
    /** Least distance of the centres. */
    MID,
    /** Inner touch, leaving. */
    T3,
    /** Centre on the edge, leaving. */
    EGRESS_CENTRE,
    /** Outer touch, leaving. */
    T4,
    /** A place on the moon's way that is no such moment. */
    PLACE;

    /** Lower-case word as tables have it. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The contact it is; empty for the middle and a place. */
    public Optional<ContactKind> contact() {
        return this == MID || this == PLACE ? Optional.empty() : Optional.of(ContactKind.valueOf(name()));
    }

    boolean coming() {
        return compareTo(MID) < 0;
    }
}
