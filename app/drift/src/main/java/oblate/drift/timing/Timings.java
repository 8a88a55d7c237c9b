/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import oblate.sky.PlanetModel;

/**
 * All timings of some marks and states.
 *
 * @param planet their planet
 * @param events one or more per event, or per moon and night beside the disc, in order of time: contacts, middles
 * @param singles one per marked picture
 * @param nights what they say about the clock, in order of time
 * @param remarks what could not be used, one sentence each
 */
public record Timings(
        PlanetModel planet, List<Timing> events, List<Timing> singles, List<NightClock> nights, List<String> remarks) {

    /** Copies the lists. */
    public Timings {
        events = List.copyOf(events);
        singles = List.copyOf(singles);
        nights = List.copyOf(nights);
        remarks = List.copyOf(remarks);
    }

    /** The timings a chart shows: those of {@link #brief} with a time; where contacts and places were put together, only that. */
    public List<Timing> best() {
        Set<Event> combined = events.stream()
                .filter(t -> t.method() == Timing.Method.COMBINED)
                .map(Event::of)
                .collect(Collectors.toSet());
        return brief().stream()
                .filter(Timing::hasTime)
                .filter(t -> t.method() == Timing.Method.COMBINED || !combined.contains(Event.of(t)))
                .toList();
    }

    /** Without the repetitions: an event timed by places has one O−P for all its moments, and only one of these, the middle if it can be, is here. */
    public List<Timing> brief() {
        Map<Event, Timing> oneOfPlaces = new HashMap<>();
        for (Timing t : events) {
            boolean middle = t.point() == TimedPoint.MID || t.point() == TimedPoint.PLACE;
            if (isByPlaces(t)) {
                oneOfPlaces.merge(Event.of(t), t, (before, now) -> middle ? now : before);
            }
        }
        return events.stream()
                .filter(t -> !isByPlaces(t) || oneOfPlaces.get(Event.of(t)) == t || !t.hasTime())
                .toList();
    }

    private static boolean isByPlaces(Timing t) {
        return t.method() == Timing.Method.PLACES || t.method() == Timing.Method.PLACE;
    }

    /** What an event is told by: no moon does the same thing twice in a night. */
    private record Event(LocalDate night, String observer, String moon, Phenomenon phenomenon) {
        static Event of(Timing t) {
            return new Event(t.night(), t.observer(), t.moon().id(), t.phenomenon());
        }
    }
}
