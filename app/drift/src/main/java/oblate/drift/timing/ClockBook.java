/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Gathers what all timings of a night say about its clock. */
final class ClockBook {
    private final Map<String, Night> nights = new TreeMap<>();

    /** What is known of one clock. */
    private static final class Night {
        final Shot any;
        double statedS;
        final List<Pool.Value> values = new ArrayList<>();
        final List<String> names = new ArrayList<>();
        final Set<String> moons = new LinkedHashSet<>();

        Night(Shot any) {
            this.any = any;
        }

        void add(Shot shot, String moon, String name, Pool.Value value) {
            statedS = Math.max(statedS, shot.sigmaS());
            values.add(new Pool.Value(value.valueS(), value.errors().without(ErrorParts.CLOCK)));
            names.add(name);
            moons.add(moon);
        }
    }

    void add(EventTimings event) {
        for (PlaceTiming place : event.usablePlaces()) {
            Shot shot = place.mark().shot();
            night(shot)
                    .add(
                            shot,
                            place.mark().subject().moon().name(),
                            place.mark().subject().words() + " in " + shot.name(),
                            place.value());
        }
        for (BracketTiming bracket : event.usableBrackets()) {
            Shot shot = bracket.before().orElseThrow();
            night(shot)
                    .add(
                            shot,
                            bracket.passage().moon().name(),
                            bracket.passage().moon().name() + ", "
                                    + bracket.point().id().replace('_', ' '),
                            bracket.value());
        }
    }

    private Night night(Shot shot) {
        return nights.computeIfAbsent(shot.clock(), k -> new Night(shot));
    }

    List<NightClock> nights() {
        return nights.values().stream().map(ClockBook::clock).toList();
    }

    private static NightClock clock(Night night) {
        Pool pool = Pool.of(night.values);
        List<String> doubts = pool.outlying().stream()
                .map(i -> night.names.get(i) + " stands off the others")
                .toList();
        return new NightClock(
                night.any.night(),
                night.any.observer(),
                pool.meanS(),
                pool.errors().totalS(),
                night.statedS,
                night.values.size(),
                List.copyOf(night.moons),
                doubts);
    }
}
