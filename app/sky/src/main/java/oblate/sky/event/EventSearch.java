/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.EnumSet;
import java.util.Set;
import oblate.sky.UtcTime;

/**
 * What to look for. An event belongs to the span that its middle lies in, so spans laid end to end have each event once.
 *
 * @param from start of the span, included
 * @param to its end, not included
 * @param moons ids of the moons; empty for all
 * @param kinds kinds of passages
 * @param misses whether passages that miss the planet are wanted too
 */
public record EventSearch(UtcTime from, UtcTime to, Set<String> moons, Set<EventKind> kinds, boolean misses) {

    /** Copies the sets. */
    public EventSearch {
        moons = Set.copyOf(moons);
        kinds = Set.copyOf(kinds);
    }

    /** All moons and kinds, without misses. */
    public static EventSearch between(UtcTime from, UtcTime to) {
        return new EventSearch(from, to, Set.of(), EnumSet.allOf(EventKind.class), false);
    }

    /** The same for some moons only. */
    public EventSearch ofMoons(Set<String> ids) {
        return new EventSearch(from, to, ids, kinds, misses);
    }

    /** The same for some kinds only. */
    public EventSearch ofKinds(Set<EventKind> wanted) {
        return new EventSearch(from, to, moons, wanted, misses);
    }

    /** The same with the passages that miss. */
    public EventSearch withMisses() {
        return new EventSearch(from, to, moons, kinds, true);
    }
}
