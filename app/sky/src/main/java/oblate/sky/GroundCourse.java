/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;
import java.util.Optional;

/**
 * The course of one body over a place in a stretch of time.
 *
 * @param span the stretch
 * @param events what happens, in order of time
 * @param upAtStart whether the body is up when the stretch begins
 */
public record GroundCourse(TimeSpan span, List<GroundEvent> events, boolean upAtStart) {

    /** Copies the list. */
    public GroundCourse {
        events = List.copyOf(events);
    }

    /** The first event of a kind. */
    public Optional<GroundEvent> first(GroundEvent.Kind kind) {
        return events.stream().filter(e -> e.kind() == kind).findFirst();
    }

    /** Whether the body stays below the horizon all the time. */
    public boolean neverUp() {
        return !upAtStart && first(GroundEvent.Kind.RISE).isEmpty();
    }

    /** Whether the body stays over the horizon all the time. */
    public boolean alwaysUp() {
        return upAtStart && first(GroundEvent.Kind.SET).isEmpty();
    }
}
