/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.drift.Drift;
import oblate.drift.Prediction;
import oblate.sky.DarkWindow;
import oblate.sky.GroundCourse;
import oblate.sky.GroundEvent;
import oblate.sky.GroundNight;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.MeridianCrossing;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSmear;
import oblate.sky.Sky;
import oblate.sky.SkyProblem;
import oblate.sky.TimeSpan;
import oblate.sky.Twilight;
import oblate.sky.UtcTime;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;

/** Plans nights. Stateless and safe for many threads. */
public final class Planner {
    private static final double TRACK_STEP_MIN = 10;
    private static final double HALF_HOUR_S = 1800;
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
        Map<String, String> why = new LinkedHashMap<>();
        features.untimed().forEach(u -> why.put(u.feature(), u.why()));
        List<String> remarks = new ArrayList<>();
        List<PlanNight> nights = new ArrayList<>();
        long days = wish.first().until(wish.last(), ChronoUnit.DAYS) + 1;
        for (LocalDate date = wish.first();
                !date.isAfter(wish.last()) && !progress.isCancelled();
                date = date.plusDays(1)) {
            progress.report(nights.size(), days, date.toString());
            nights.add(night(wish, date, features.drifts(), why, remarks));
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

    private PlanNight night(
            PlanWish wish, LocalDate date, List<Drift> drifts, Map<String, String> why, List<String> remarks) {
        PlanetModel planet = wish.planet();
        GroundNight night = GroundNight.of(wish.ground(), date);
        List<DarkWindow> windows = night.windows(planet, wish.sunBelowDeg(), wish.minAltitudeDeg(), TRACK_STEP_MIN);
        GroundCourse course = night.planet(planet);
        Optional<GroundView> best = best(wish, windows, course);
        List<PlanItem> items = new ArrayList<>();
        for (Drift drift : drifts) {
            items.addAll(crossings(wish, night.span(), windows, drift, why));
        }
        items.addAll(moons(wish, night.span(), windows, remarks));
        items.sort(Comparator.comparing(PlanItem::time).thenComparing(PlanItem::what));
        return new PlanNight(
                date,
                night.span(),
                night.sun(),
                course,
                windows,
                best,
                best.map(b -> bestHour(windows, b)),
                best.map(b -> longest(wish, b.time())).orElse(OptionalDouble.empty()),
                items);
    }

    private static Optional<GroundView> best(PlanWish wish, List<DarkWindow> windows, GroundCourse course) {
        List<GroundView> candidates = new ArrayList<>();
        for (DarkWindow window : windows) {
            candidates.add(window.best());
            course.events().stream()
                    .filter(e -> e.kind() == GroundEvent.Kind.UPPER_TRANSIT
                            && window.span().contains(e.time()))
                    .map(e -> wish.ground().view(wish.planet(), e.time()))
                    .forEach(candidates::add);
        }
        return candidates.stream().max(Comparator.comparingDouble(GroundView::altitudeDeg));
    }

    /** An hour about the best moment, pushed into its window. */
    private static TimeSpan bestHour(List<DarkWindow> windows, GroundView best) {
        TimeSpan of = windows.stream()
                .map(DarkWindow::span)
                .filter(s -> s.contains(best.time()))
                .findFirst()
                .orElseThrow();
        double length = of.clockSeconds();
        double at = best.time().clockSecondsSince(of.from());
        double start = Math.max(0, Math.min(at - HALF_HOUR_S, length - 2 * HALF_HOUR_S));
        return new TimeSpan(
                of.from().plusClockSeconds(start),
                of.from().plusClockSeconds(Math.min(length, start + 2 * HALF_HOUR_S)));
    }

    private static OptionalDouble longest(PlanWish wish, UtcTime time) {
        Sky sky = wish.ground().sky();
        double lat = sky.disc(wish.planet(), time).subEarth().latGraphicDeg();
        double seconds = wish.smear()
                .longestS(RotationSmear.at(sky, wish.planet(), wish.planet().customarySystem(lat), time, lat));
        return Double.isFinite(seconds) ? OptionalDouble.of(seconds) : OptionalDouble.empty();
    }

    private static List<PlanItem> crossings(
            PlanWish wish, TimeSpan night, List<DarkWindow> windows, Drift drift, Map<String, String> why) {
        String name = drift.series().feature();
        List<PlanItem> items = new ArrayList<>();
        FeatureCrossings crossings = new FeatureCrossings(wish.ground().sky(), drift);
        if (crossings.isUseless(night.from()) || crossings.isUseless(night.to())) {
            Prediction then = crossings.at(night.to());
            why.putIfAbsent(
                    name,
                    String.format(
                            Locale.ROOT,
                            "by %s its longitude is uncertain by %s, %.0f days from its marks: it may be anywhere",
                            night.to().iso(0).substring(0, 10),
                            then.sigmaLonDeg() < 180 ? Math.round(then.sigmaLonDeg()) + " deg" : "half a turn or more",
                            then.daysBeyondArc()));
            return items;
        }
        try {
            int number = 0;
            for (MeridianCrossing crossing : crossings.in(night)) {
                items.add(crossing(wish, windows, name, crossings, crossing, ++number, drift));
            }
        } catch (ProblemException e) {
            if (e.kind() != SkyProblem.DRIFT_TOO_FAST) {
                throw e;
            }
            why.putIfAbsent(name, e.getMessage());
        }
        return items;
    }

    private static PlanItem crossing(
            PlanWish wish,
            List<DarkWindow> windows,
            String name,
            FeatureCrossings crossings,
            MeridianCrossing crossing,
            int number,
            Drift drift) {
        UtcTime time = crossing.time();
        double sigmaS = 60 * crossing.sigmaMin();
        Expected expected = new Expected(
                crossing.lonDeg(),
                crossing.sigmaLonDeg(),
                drift.series().system(),
                crossings.at(time).daysBeyondArc());
        GroundView view = wish.ground().view(wish.planet(), time);
        return new PlanItem(
                PlanItem.Kind.CROSSING,
                name,
                name + " on the meridian",
                time,
                sigmaS,
                new TimeSpan(time.plusClockSeconds(-sigmaS), time.plusClockSeconds(sigmaS)),
                view,
                Optional.of(expected),
                Optional.empty(),
                whyNot(wish, windows, view),
                "",
                "crossing/" + name + "/" + number);
    }

    private static List<PlanItem> moons(PlanWish wish, TimeSpan night, List<DarkWindow> windows, List<String> remarks) {
        List<PlanItem> items = new ArrayList<>();
        if (wish.planet().moons().isEmpty()) {
            return items;
        }
        try {
            MoonEvents events = MoonEvents.of(wish.ground(), wish.planet());
            Map<String, Integer> numbers = new HashMap<>();
            for (MoonMoments.Moment moment :
                    MoonMoments.of(events.passages(EventSearch.between(night.from(), night.to())))) {
                String key = "moon/" + moment.passage().moon().id() + "/"
                        + moment.passage().kind().id() + "/" + (moment.coming() ? "begins" : "ends");
                GroundView view =
                        wish.ground().view(wish.planet(), moment.contact().time());
                items.add(new PlanItem(
                        PlanItem.Kind.MOON,
                        moment.passage().moon().name(),
                        moment.words(),
                        moment.contact().time(),
                        moment.contact().sigmaS(),
                        moment.span(),
                        view,
                        Optional.empty(),
                        Optional.of(moment.passage()),
                        whyNot(wish, windows, view),
                        moment.note(),
                        key + "/" + numbers.merge(key, 1, Integer::sum)));
            }
        } catch (ProblemException e) {
            remarks.add("No moon events: " + e.getMessage());
        }
        return items;
    }

    /** What hinders at a moment; blank when nothing does. */
    private static String whyNot(PlanWish wish, List<DarkWindow> windows, GroundView view) {
        if (windows.stream().anyMatch(w -> w.span().contains(view.time()))) {
            return "";
        }
        if (view.altitudeDeg() < 0) {
            return "below the horizon";
        }
        if (view.sunAltitudeDeg() >= wish.sunBelowDeg()) {
            return view.twilight() == Twilight.DAY ? "day" : "twilight";
        }
        return "low";
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
