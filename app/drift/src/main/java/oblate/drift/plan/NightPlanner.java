/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.Prediction;
import oblate.sky.DarkWindow;
import oblate.sky.GroundCourse;
import oblate.sky.GroundEvent;
import oblate.sky.GroundNight;
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

/** Plans one night after the other of a wish. Belongs to one thread. */
final class NightPlanner {
    private static final double TRACK_STEP_MIN = 10;
    private static final double HALF_HOUR_S = 1800;

    private final PlanWish wish;
    private final List<Drift> drifts;
    private final Map<String, String> why;
    private final List<String> remarks;

    /**
     * @param wish what is wanted
     * @param drifts of the features followed
     * @param why gets, by feature, why it has no time
     * @param remarks gets sentences about what is left out
     */
    NightPlanner(PlanWish wish, List<Drift> drifts, Map<String, String> why, List<String> remarks) {
        this.wish = wish;
        this.drifts = drifts;
        this.why = why;
        this.remarks = remarks;
    }

    PlanNight night(LocalDate date) {
        PlanetModel planet = wish.planet();
        GroundNight night = GroundNight.of(wish.ground(), date);
        List<DarkWindow> windows = night.windows(planet, wish.sunBelowDeg(), wish.minAltitudeDeg(), TRACK_STEP_MIN);
        GroundCourse course = night.planet(planet);
        Optional<GroundView> best = best(windows, course);
        List<PlanItem> items = new ArrayList<>();
        for (Drift drift : drifts) {
            items.addAll(crossings(night.span(), windows, drift));
        }
        items.addAll(moons(night.span(), windows));
        items.sort(Comparator.comparing(PlanItem::time).thenComparing(PlanItem::what));
        return new PlanNight(
                date,
                night.span(),
                night.sun(),
                course,
                windows,
                best,
                best.map(b -> bestHour(windows, b)),
                best.map(b -> longest(b.time())).orElse(OptionalDouble.empty()),
                items);
    }

    private Optional<GroundView> best(List<DarkWindow> windows, GroundCourse course) {
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

    private OptionalDouble longest(UtcTime time) {
        Sky sky = wish.ground().sky();
        double lat = sky.disc(wish.planet(), time).subEarth().latGraphicDeg();
        double seconds = wish.smear()
                .longestS(RotationSmear.at(sky, wish.planet(), wish.planet().customarySystem(lat), time, lat));
        return Double.isFinite(seconds) ? OptionalDouble.of(seconds) : OptionalDouble.empty();
    }

    private List<PlanItem> crossings(TimeSpan night, List<DarkWindow> windows, Drift drift) {
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
                items.add(crossing(windows, name, crossings, crossing, ++number, drift));
            }
        } catch (ProblemException e) {
            if (e.kind() != SkyProblem.DRIFT_TOO_FAST) {
                throw e;
            }
            why.putIfAbsent(name, e.getMessage());
        }
        return items;
    }

    private PlanItem crossing(
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
                whyNot(windows, view),
                "",
                "crossing/" + name + "/" + number);
    }

    private List<PlanItem> moons(TimeSpan night, List<DarkWindow> windows) {
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
                        whyNot(windows, view),
                        moment.note(),
                        key + "/" + numbers.merge(key, 1, Integer::sum)));
            }
        } catch (ProblemException e) {
            remarks.add("No moon events: " + e.getMessage());
        }
        return items;
    }

    /** What hinders at a moment; blank when nothing does. */
    private String whyNot(List<DarkWindow> windows, GroundView view) {
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
}
