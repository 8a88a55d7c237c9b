/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.event.EventKind;

/** Works marks and states of a planet's moons into timings. Immutable and safe for many threads. */
public final class MoonTimings {
    private final Sky sky;
    private final PlanetModel planet;

    /**
     * @param sky foretells
     * @param planet a planet whose moons are followed
     */
    public MoonTimings(Sky sky, PlanetModel planet) {
        this.sky = sky;
        this.planet = planet;
    }

    /**
     * The timings of some marks and states; what lies outside the span in which the moons' places are known is remarked upon and left out.
     */
    public Timings of(List<PlaceMark> marks, List<StateSaid> states, Progress progress) {
        List<String> remarks = new ArrayList<>();
        List<Shot> shots = Stream.concat(
                        marks.stream().map(PlaceMark::shot), states.stream().map(StateSaid::shot))
                .toList();
        Set<Shot> outside = outsideSpan(shots, remarks);
        Standpoints standpoints = new Standpoints(sky);
        List<PlaceTiming> places = places(
                standpoints,
                marks.stream().filter(m -> !outside.contains(m.shot())).toList(),
                progress);
        List<StateSaid> inSpan =
                states.stream().filter(s -> !outside.contains(s.shot())).toList();
        Map<Key, Group> groups = grouped(standpoints, places, inSpan, remarks);
        List<Timing> events = new ArrayList<>();
        List<Timing> singles = new ArrayList<>();
        ClockBook clocks = new ClockBook();
        groups.values().forEach(group -> {
            EventTimings worked = new EventTimings(group.phenomenon, group.event, group.places, group.states);
            events.addAll(worked.rows());
            singles.addAll(worked.singles());
            clocks.add(worked);
            if (worked.isEmpty()) {
                remarks.add(group.states.get(0).moon().name() + ", " + group.phenomenon.words() + " of "
                        + group.states.get(0).shot().night()
                        + ": what was said of it is about no contact that is foretold.");
            }
        });
        Comparator<Timing> byTime = Comparator.comparing(MoonTimings::when);
        events.sort(byTime);
        singles.sort(byTime);
        return new Timings(planet, events, singles, clocks.nights(), remarks);
    }

    private List<PlaceTiming> places(Standpoints standpoints, List<PlaceMark> marks, Progress progress) {
        List<PlaceTiming> places = new ArrayList<>();
        Map<Optional<ShotSite>, PlaceTimer> timers = new HashMap<>();
        List<PlaceMark> inOrder = marks.stream()
                .sorted(Comparator.comparing(m -> m.shot().midUtc()))
                .toList();
        int done = 0;
        for (PlaceMark mark : inOrder) {
            if (progress.isCancelled()) {
                break;
            }
            places.add(timers.computeIfAbsent(mark.shot().site(), s -> new PlaceTimer(sky, standpoints.of(s), planet))
                    .time(mark));
            progress.report(++done, inOrder.size(), mark.shot().name());
        }
        return places.stream()
                .map(p -> p.recallable() && places.stream().anyMatch(p::agreesWith) ? p.recalled() : p)
                .toList();
    }

    /** Pictures at whose time, with room for a clock that is hours off, the moons' places are not known. */
    private Set<Shot> outsideSpan(List<Shot> shots, List<String> remarks) {
        Set<Shot> outside = new HashSet<>();
        Comparator<Shot> byTime = Comparator.comparing(Shot::midUtc);
        if (shots.isEmpty()
                || problem(shots.stream().min(byTime).orElseThrow()).isEmpty()
                        && problem(shots.stream().max(byTime).orElseThrow()).isEmpty()) {
            return outside;
        }
        for (Shot shot : new LinkedHashSet<>(shots)) {
            problem(shot).ifPresent(words -> {
                outside.add(shot);
                remarks.add(shot.name() + ": " + words);
            });
        }
        return outside;
    }

    private Optional<String> problem(Shot shot) {
        try {
            sky.moons(planet, UtcTime.of(shot.midUtc().minus(EventBook.SAID)));
            sky.moons(planet, UtcTime.of(shot.midUtc().plus(EventBook.SAID)));
            return Optional.empty();
        } catch (ProblemException e) {
            return Optional.of(e.getMessage());
        }
    }

    private static Instant when(Timing timing) {
        return timing.observedUtc()
                .or(timing::notBeforeUtc)
                .or(timing::notAfterUtc)
                .or(timing::predictedUtc)
                .orElse(Instant.EPOCH);
    }

    /** What belongs together: an event seen by one observer from one place, or a moon beside the disc in one night. */
    private record Key(
            String clock, Optional<ShotSite> site, String moon, Phenomenon phenomenon, Optional<Instant> mid) {}

    /** What was marked and said of it. */
    private static final class Group {
        final Phenomenon phenomenon;
        final Optional<Foretold> event;
        final List<PlaceTiming> places = new ArrayList<>();
        final List<StateSaid> states = new ArrayList<>();

        Group(Phenomenon phenomenon, Optional<Foretold> event) {
            this.phenomenon = phenomenon;
            this.event = event;
        }
    }

    private Map<Key, Group> grouped(
            Standpoints standpoints, List<PlaceTiming> places, List<StateSaid> states, List<String> remarks) {
        List<Shot> shots = new ArrayList<>();
        Set<MoonFacts> moons = new LinkedHashSet<>();
        places.forEach(p -> {
            shots.add(p.mark().shot());
            moons.add(p.mark().subject().moon());
        });
        states.forEach(s -> {
            shots.add(s.shot());
            moons.add(s.moon());
        });
        Map<Key, Group> groups = new LinkedHashMap<>();
        if (shots.isEmpty()) {
            return groups;
        }
        EventBook book = new EventBook(standpoints, planet, shots, moons);
        remarks.addAll(book.problems());
        for (PlaceTiming place : places) {
            MoonSubject subject = place.mark().subject();
            Set<EventKind> kinds = subject.shadow()
                    ? EnumSet.of(EventKind.SHADOW_TRANSIT)
                    : EnumSet.of(EventKind.TRANSIT, EventKind.OCCULTATION);
            Optional<Foretold> event =
                    book.nearest(subject.moon(), kinds, place.mark().shot(), EventBook.NEAR);
            Phenomenon phenomenon = event.map(e -> Phenomenon.of(e.passage().kind()))
                    .orElse(subject.shadow() ? Phenomenon.SHADOW_TRANSIT : Phenomenon.BESIDE);
            group(groups, place.mark().shot(), subject.moon(), phenomenon, event)
                    .places
                    .add(place);
        }
        for (StateSaid said : states) {
            Optional<Foretold> event = book.nearest(said.moon(), kinds(said), said.shot(), EventBook.SAID);
            if (event.isEmpty()) {
                remarks.add(said.shot().name() + ": no "
                        + said.phenomenon().map(Phenomenon::words).orElse("event") + " of "
                        + said.moon().name() + " is foretold within 6 h of it.");
                continue;
            }
            group(
                            groups,
                            said.shot(),
                            said.moon(),
                            Phenomenon.of(event.get().passage().kind()),
                            event)
                    .states
                    .add(said);
        }
        return groups;
    }

    private static Group group(
            Map<Key, Group> groups, Shot shot, MoonFacts moon, Phenomenon phenomenon, Optional<Foretold> event) {
        Key key = new Key(shot.clock(), shot.site(), moon.id(), phenomenon, event.map(e -> e.passage()
                .mid()
                .time()
                .toInstant()));
        return groups.computeIfAbsent(key, k -> new Group(phenomenon, event));
    }

    /** Kinds of events a state can be about. */
    private static Set<EventKind> kinds(StateSaid said) {
        if (said.phenomenon().isPresent()) {
            return EnumSet.of(said.phenomenon().get().kind().orElseThrow());
        }
        if (said.shadow()) {
            return EnumSet.of(EventKind.SHADOW_TRANSIT);
        }
        return switch (said.state()) {
            case ON_DISC -> EnumSet.of(EventKind.TRANSIT);
            case GONE, SEEN, NOT_SEEN -> EnumSet.of(EventKind.OCCULTATION, EventKind.ECLIPSE);
            case CLEAR, ON_LIMB -> EnumSet.of(EventKind.TRANSIT, EventKind.OCCULTATION, EventKind.ECLIPSE);
        };
    }
}
