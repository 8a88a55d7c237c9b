/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import oblate.base.ProblemException;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import oblate.sky.event.Passage;

/** The foretold events about some instants. */
final class EventBook {
    /** Instants farther apart are looked up apart. */
    private static final Duration GAP = Duration.ofDays(12);
    /** The middle of an event a picture belongs to lies no farther from it: half of the longest (Titan's, 6 h) and what a picture may stand off. */
    private static final Duration MARGIN = Duration.ofHours(12);

    /** How far beside an event a picture may be for a place. */
    static final Duration NEAR = Duration.ofMinutes(45);

    /** How far beside an event a picture may be whose state was said. */
    static final Duration SAID = Duration.ofHours(6);

    private final List<Passage> passages = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();

    EventBook(Sky sky, PlanetModel planet, Collection<Instant> instants, Set<MoonFacts> moons) {
        List<Instant> sorted = instants.stream().sorted().toList();
        Set<String> ids = moons.stream().map(MoonFacts::id).collect(Collectors.toSet());
        MoonEvents events = MoonEvents.of(sky, planet);
        int start = 0;
        for (int i = 0; i < sorted.size(); i++) {
            boolean last = i + 1 == sorted.size();
            if (last || Duration.between(sorted.get(i), sorted.get(i + 1)).compareTo(GAP) > 0) {
                EventSearch search = EventSearch.between(
                                UtcTime.of(sorted.get(start).minus(MARGIN)),
                                UtcTime.of(sorted.get(i).plus(MARGIN)))
                        .ofMoons(ids);
                try {
                    passages.addAll(events.passages(search));
                } catch (ProblemException e) {
                    // Near the ends of the moons' span: places can still be told there, events not.
                    problems.add(e.getMessage());
                }
                start = i + 1;
            }
        }
    }

    /** What could not be looked up, one sentence each. */
    List<String> problems() {
        return problems;
    }

    /** The nearest event of a moon of some kinds, no farther from an instant than {@code reach}. */
    Optional<Passage> nearest(MoonFacts moon, Set<EventKind> kinds, Instant time, Duration reach) {
        return passages.stream()
                .filter(p -> p.moon().id().equals(moon.id()) && kinds.contains(p.kind()))
                .filter(p -> away(p, time).compareTo(reach) <= 0)
                .min(Comparator.comparing((Passage p) -> away(p, time)));
    }

    private static Duration away(Passage p, Instant time) {
        Instant from = p.contact(ContactKind.T1).orElse(p.mid()).time().toInstant();
        Instant to = p.contact(ContactKind.T4).orElse(p.mid()).time().toInstant();
        if (time.isBefore(from)) {
            return Duration.between(time, from);
        }
        return time.isAfter(to) ? Duration.between(to, time) : Duration.ZERO;
    }
}
