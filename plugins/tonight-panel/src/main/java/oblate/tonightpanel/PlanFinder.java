/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.function.Consumer;
import oblate.base.Progress;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.Planner;
import oblate.sky.GroundSky;
import oblate.sky.Sky;

/** Makes plans; to be asked off the event thread. Safe for many threads. */
final class PlanFinder {
    private final Sky sky;
    private final Followed followed;
    private final Clock clock;
    private final Planner planner = new Planner();

    PlanFinder(Sky sky, Followed followed, Clock clock) {
        this.sky = sky;
        this.followed = followed;
        this.clock = clock;
    }

    /** One night with all that its drawing needs. */
    NightSheet night(Asked asked) {
        GroundSky ground = ground(asked);
        LocalDate evening =
                asked.date().orElseGet(() -> Planner.comingNight(ground, clock.instant(), asked.sunBelowDeg()));
        Plan plan = planner.plan(asked.night(ground, evening), followed.of(asked.planet()));
        return NightSheet.of(plan, asked.place());
    }

    /**
     * All nights of a month; stopped, those done so far.
     *
     * @param whenNight gets each night as soon as it is planned, on this thread
     */
    Plan month(Asked asked, YearMonth month, Progress progress, Consumer<PlanNight> whenNight) {
        return planner.plan(asked.month(ground(asked), month), followed.of(asked.planet()), progress, whenNight);
    }

    private GroundSky ground(Asked asked) {
        return GroundSky.over(sky, asked.place().site());
    }
}
