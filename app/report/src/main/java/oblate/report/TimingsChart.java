/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.List;
import oblate.drift.timing.NightClock;
import oblate.drift.timing.Timing;
import oblate.sky.PlanetModel;

/**
 * A chart of observed minus predicted times of moon events over the season.
 *
 * @param planet the planet
 * @param timings at least one, each with a time
 * @param nights what each night says of its clock; may be empty
 */
public record TimingsChart(PlanetModel planet, List<Timing> timings, List<NightClock> nights) implements ChartContent {

    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException without timings, or with one that has no time
     */
    public TimingsChart {
        timings = List.copyOf(timings);
        nights = List.copyOf(nights);
        if (timings.isEmpty() || !timings.stream().allMatch(Timing::hasTime)) {
            throw new IllegalArgumentException(timings.size() + " timings");
        }
    }
}
