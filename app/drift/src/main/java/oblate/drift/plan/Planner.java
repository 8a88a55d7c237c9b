/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.sky.GroundNight;
import oblate.sky.GroundSky;
import oblate.sky.SkyProblem;
import oblate.sky.UtcTime;

/** Plans nights. Stateless and safe for many threads. */
public final class Planner {
    private static final int SEARCH_STEP_DAYS = 4;
    private static final int SEARCH_DAYS = 800;

    /** Evening of the night that is going on at an instant or comes next: once the Sun is up again, or too high for the darkness wanted, it is the next. */
    public static LocalDate comingNight(GroundSky ground, Instant now, double sunBelowDeg) {
        double eastS = Math.IEEEremainder(ground.site().lonEastDeg(), 360) * 240;
        double sinceNoonS = UtcTime.of(now).clockSecondsSince(new UtcTime(0, 43_200)) + eastS;
        long day = (long) Math.floor(sinceNoonS / 86_400);
        boolean morning = sinceNoonS - day * 86_400.0 > 43_200;
        boolean over = morning && ground.sunAltitudeDeg(UtcTime.of(now)) >= sunBelowDeg;
        return LocalDate.ofEpochDay(over ? day + 1 : day);
    }

    /**
     * The plan.
     *
     * @param features the features followed; none is planned without them but moons and the planet's course
     * @throws ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS} for a night that planet positions do not cover
     */
    public Plan plan(PlanWish wish, FollowedFeatures features) {
        return plan(wish, features, Progress.SILENT);
    }

    /**
     * The same, told night by night. Stopped, it ends with the nights done so far; told nothing of a next window then.
     *
     * @throws ProblemException as {@link #plan(PlanWish, FollowedFeatures)}
     */
    public Plan plan(PlanWish wish, FollowedFeatures features, Progress progress) {
        return plan(wish, features, progress, night -> {});
    }

    /**
     * The same, handing on each night as soon as it is planned.
     *
     * @param whenNight gets the nights in order, on this thread
     * @throws ProblemException as {@link #plan(PlanWish, FollowedFeatures)}
     */
    public Plan plan(PlanWish wish, FollowedFeatures features, Progress progress, Consumer<PlanNight> whenNight) {
        Map<String, String> why = new LinkedHashMap<>();
        features.untimed().forEach(u -> why.put(u.feature(), u.why()));
        List<String> remarks = new ArrayList<>();
        NightPlanner planner = new NightPlanner(wish, features.drifts(), why, remarks);
        List<PlanNight> nights = new ArrayList<>();
        long days = wish.first().until(wish.last(), ChronoUnit.DAYS) + 1;
        for (LocalDate date = wish.first();
                !date.isAfter(wish.last()) && !progress.isCancelled();
                date = date.plusDays(1)) {
            progress.report(nights.size(), days, date.toString());
            PlanNight night = planner.night(date);
            nights.add(night);
            whenNight.accept(night);
        }
        doubts(features, why, remarks);
        boolean dark = nights.stream().anyMatch(n -> !n.windows().isEmpty());
        List<Untimed> untimed = new ArrayList<>();
        why.forEach((feature, reason) -> untimed.add(new Untimed(feature, reason)));
        return new Plan(
                wish,
                nights,
                untimed,
                remarks.stream().distinct().toList(),
                dark || progress.isCancelled() ? Optional.empty() : nextWindow(wish),
                new PlanCautions(wish, nights).sentences());
    }

    private static void doubts(FollowedFeatures features, Map<String, String> why, List<String> remarks) {
        List<String> doubtful = features.drifts().stream()
                .filter(d -> !d.warnings().isEmpty())
                .map(d -> d.series().feature())
                .filter(name -> !why.containsKey(name))
                .toList();
        if (!doubtful.isEmpty()) {
            remarks.add("Times rest on drifts with warnings, which oblate drift tells: " + String.join(", ", doubtful)
                    + ".");
        }
    }

    private static Optional<LocalDate> nextWindow(PlanWish wish) {
        try {
            for (int days = SEARCH_STEP_DAYS; days <= SEARCH_DAYS; days += SEARCH_STEP_DAYS) {
                LocalDate date = wish.last().plusDays(days);
                if (hasWindow(wish, date)) {
                    LocalDate first = date;
                    while (first.minusDays(1).isAfter(wish.last()) && hasWindow(wish, first.minusDays(1))) {
                        first = first.minusDays(1);
                    }
                    return Optional.of(first);
                }
            }
        } catch (ProblemException e) {
            if (e.kind() != SkyProblem.OUTSIDE_EPHEMERIS) {
                throw e;
            }
        }
        return Optional.empty();
    }

    private static boolean hasWindow(PlanWish wish, LocalDate date) {
        return !GroundNight.of(wish.ground(), date)
                .windows(wish.planet(), wish.sunBelowDeg(), wish.minAltitudeDeg(), 720)
                .isEmpty();
    }
}
