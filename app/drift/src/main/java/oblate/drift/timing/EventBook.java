/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import oblate.base.ProblemException;
import oblate.sky.MoonFacts;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import oblate.sky.event.Passage;

/** The foretold events about some pictures, each as its place sees it. Belongs to one thread. */
final class EventBook {
    /** Instants farther apart are looked up apart. */
    private static final Duration GAP = Duration.ofDays(12);
    /** The middle of an event a picture belongs to lies no farther from it: half of the longest (Titan's, 6 h) and what a picture may stand off. */
    private static final Duration MARGIN = Duration.ofHours(12);

    /** How far beside an event a picture may be for a place. */
    static final Duration NEAR = Duration.ofMinutes(45);

    /** How far beside an event a picture may be whose state was said. */
    static final Duration SAID = Duration.ofHours(6);

    private final Standpoints standpoints;
    private final PlanetModel planet;
    private final Map<Optional<ShotSite>, List<Passage>> passages = new HashMap<>();
    private final Set<String> problems = new LinkedHashSet<>();

    EventBook(Standpoints standpoints, PlanetModel planet, Collection<Shot> shots, Set<MoonFacts> moons) {
        this.standpoints = standpoints;
        this.planet = planet;
        Set<String> ids = moons.stream().map(MoonFacts::id).collect(Collectors.toSet());
        shots.stream()
                .collect(Collectors.groupingBy(Shot::site))
                .forEach((site, there) -> passages.put(site, found(site, there, ids)));
    }

    private List<Passage> found(Optional<ShotSite> site, List<Shot> shots, Set<String> ids) {
        List<Instant> sorted = shots.stream().map(Shot::midUtc).sorted().toList();
        MoonEvents events = MoonEvents.of(standpoints.of(site), planet);
        List<Passage> found = new ArrayList<>();
        int start = 0;
        for (int i = 0; i < sorted.size(); i++) {
            boolean last = i + 1 == sorted.size();
            if (last || Duration.between(sorted.get(i), sorted.get(i + 1)).compareTo(GAP) > 0) {
                EventSearch search = EventSearch.between(
                                UtcTime.of(sorted.get(start).minus(MARGIN)),
                                UtcTime.of(sorted.get(i).plus(MARGIN)))
                        .ofMoons(ids);
                try {
                    found.addAll(events.passages(search));
                } catch (ProblemException e) {
                    // Near the ends of the moons' span: places can still be told there, events not.
                    problems.add(e.getMessage());
                }
                start = i + 1;
            }
        }
        return found;
    }

    /** What could not be looked up, one sentence each. */
    List<String> problems() {
        return List.copyOf(problems);
    }

    /** The nearest event of a moon of some kinds, no farther from a picture than {@code reach}, as the picture's place sees it. */
    Optional<Foretold> nearest(MoonFacts moon, Set<EventKind> kinds, Shot shot, Duration reach) {
        return passages.getOrDefault(shot.site(), List.of()).stream()
                .filter(p -> p.moon().id().equals(moon.id()) && kinds.contains(p.kind()))
                .filter(p -> away(p, shot.midUtc()).compareTo(reach) <= 0)
                .min(Comparator.comparing((Passage p) -> away(p, shot.midUtc())))
                .map(p -> new Foretold(p, shot.site(), unknownKm(p, shot.site())));
    }

    private double unknownKm(Passage p, Optional<ShotSite> site) {
        if (site.isPresent() || p.kind().fromSun()) {
            return 0;
        }
        MoonPlace place = standpoints.sky().moons(planet, p.mid().time()).stream()
                .filter(m -> m.id().equals(p.moon().id()))
                .findFirst()
                .orElseThrow();
        double depthKm =
                Math.abs(place.zTowardEarthRadii()) * planet.globe().figure().equatorialRadiusKm();
        return Standpoints.unknownShift(site, depthKm, place.distanceAu());
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
