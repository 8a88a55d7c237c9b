/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.sky.DarkWindow;
import oblate.sky.GroundCourse;
import oblate.sky.GroundView;
import oblate.sky.TimeSpan;

/**
 * One night of a plan.
 *
 * @param date date of the evening
 * @param span noon to noon by the site's longitude
 * @param sun the Sun's course: sets, dusks, dawns
 * @param course the planet's: rises, crosses the meridian, sets
 * @param windows stretches in which it is dark and the planet high; none, one or two
 * @param best where the planet stands highest in them; empty without one
 * @param bestHour the hour about it, or what there is of one; empty without a window
 * @param longestCaptureS longest capture for the smear wanted (s), at the best moment; empty without a window or when the smear is never reached
 * @param items what happens, in order of time, also what cannot be observed
 */
public record PlanNight(
        LocalDate date,
        TimeSpan span,
        GroundCourse sun,
        GroundCourse course,
        List<DarkWindow> windows,
        Optional<GroundView> best,
        Optional<TimeSpan> bestHour,
        OptionalDouble longestCaptureS,
        List<PlanItem> items) {

    /** Copies the lists. */
    public PlanNight {
        windows = List.copyOf(windows);
        items = List.copyOf(items);
    }

    /** What can be observed, in order of time. */
    public List<PlanItem> observable() {
        return items.stream().filter(PlanItem::isObservable).toList();
    }

    /** Hours of all windows together (h). */
    public double windowHours() {
        return windows.stream().mapToDouble(w -> w.span().clockSeconds()).sum() / 3600;
    }
}
