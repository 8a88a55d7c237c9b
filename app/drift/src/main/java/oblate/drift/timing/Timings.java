/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.List;
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
        return brief().stream()
                .filter(Timing::hasTime)
                .filter(t -> t.method() == Timing.Method.COMBINED || !isCombined(t))
                .toList();
    }

    /** Without the repetitions: an event timed by places has one O−P for all its moments, and only one of these, the middle if it can be, is here. */
    public List<Timing> brief() {
        return events.stream()
                .filter(t -> t.method() != Timing.Method.PLACES && t.method() != Timing.Method.PLACE
                        || t.point() == oneOf(t))
                .toList();
    }

    /** The first moment listed of an event timed by places: all its moments have the same O−P. */
    private TimedPoint oneOf(Timing timing) {
        return events.stream()
                .filter(t -> isSameEvent(t, timing) && t.method() == timing.method())
                .map(Timing::point)
                .filter(p -> p == TimedPoint.MID || p == TimedPoint.PLACE)
                .findFirst()
                .orElseGet(() -> events.stream()
                        .filter(t -> isSameEvent(t, timing) && t.method() == timing.method())
                        .map(Timing::point)
                        .findFirst()
                        .orElseThrow());
    }

    private boolean isCombined(Timing timing) {
        return events.stream().anyMatch(t -> t.method() == Timing.Method.COMBINED && isSameEvent(t, timing));
    }

    private static boolean isSameEvent(Timing a, Timing b) {
        return a.night().equals(b.night())
                && a.observer().equals(b.observer())
                && a.moon().id().equals(b.moon().id())
                && a.phenomenon() == b.phenomenon();
    }
}
