/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.drift.plan.Plan;
import oblate.drift.plan.PlanItem;
import oblate.drift.plan.PlanNight;
import oblate.drift.plan.PlanWish;
import oblate.sky.GroundEvent;
import oblate.sky.GroundView;
import oblate.sky.TimeSpan;
import oblate.sky.Twilight;
import oblate.sky.UtcTime;

/**
 * One night ready to be drawn. Immutable.
 *
 * @param plan the plan, of one night
 * @param place where from
 * @param shown from before sunset to after sunrise; noon to noon where the Sun does not do both
 * @param track the planet's way through it, at even steps, both ends included
 * @param lights how light it is, stretch by stretch, in order of time
 * @param rows what happens, a row for each feature and moon
 */
record NightSheet(
        Plan plan, Place place, TimeSpan shown, List<GroundView> track, List<Light> lights, List<NightRow> rows) {
    private static final double STEP_S = 300;
    private static final double MARGIN_S = 1_200;

    NightSheet {
        track = List.copyOf(track);
        lights = List.copyOf(lights);
        rows = List.copyOf(rows);
    }

    static NightSheet of(Plan plan, Place place) {
        PlanNight night = plan.nights().get(0);
        TimeSpan shown = shown(night);
        return new NightSheet(
                plan,
                place,
                shown,
                track(plan.wish(), shown),
                lights(night, plan.wish(), shown),
                NightRow.of(night, plan.wish(), shown));
    }

    /**
     * A stretch of one kind of light.
     *
     * @param span the stretch
     * @param twilight how light it is
     */
    record Light(TimeSpan span, Twilight twilight) {}

    /** Crossings of features that have no row, because all theirs lie outside what is shown; in order of time. */
    List<PlanItem> outside() {
        List<String> drawn = rows.stream()
                .filter(r -> r.kind() == PlanItem.Kind.CROSSING)
                .map(NightRow::name)
                .toList();
        return night().items().stream()
                .filter(i -> i.kind() == PlanItem.Kind.CROSSING && !drawn.contains(i.subject()))
                .toList();
    }

    PlanNight night() {
        return plan.nights().get(0);
    }

    PlanWish wish() {
        return plan.wish();
    }

    private static TimeSpan shown(PlanNight night) {
        Optional<UtcTime> sunset = time(night, GroundEvent.Kind.SET);
        Optional<UtcTime> sunrise = time(night, GroundEvent.Kind.RISE);
        if (sunset.isEmpty() || sunrise.isEmpty() || sunrise.get().compareTo(sunset.get()) <= 0) {
            return night.span();
        }
        return new TimeSpan(
                sunset.get().plusClockSeconds(-MARGIN_S), sunrise.get().plusClockSeconds(MARGIN_S));
    }

    private static Optional<UtcTime> time(PlanNight night, GroundEvent.Kind kind) {
        return night.sun().first(kind).map(GroundEvent::time);
    }

    private static List<Light> lights(PlanNight night, PlanWish wish, TimeSpan shown) {
        List<UtcTime> edges = new ArrayList<>();
        edges.add(shown.from());
        night.sun().events().stream()
                .filter(e -> e.kind() != GroundEvent.Kind.UPPER_TRANSIT && e.kind() != GroundEvent.Kind.LOWER_TRANSIT)
                .map(GroundEvent::time)
                .filter(t -> t.compareTo(shown.from()) > 0 && t.compareTo(shown.to()) < 0)
                .forEach(edges::add);
        edges.add(shown.to());
        List<Light> lights = new ArrayList<>();
        for (int i = 1; i < edges.size(); i++) {
            TimeSpan span = new TimeSpan(edges.get(i - 1), edges.get(i));
            UtcTime middle = span.from().plusClockSeconds(span.clockSeconds() / 2);
            lights.add(new Light(span, Twilight.of(wish.ground().sunAltitudeDeg(middle))));
        }
        return lights;
    }

    private static List<GroundView> track(PlanWish wish, TimeSpan shown) {
        int steps = (int) Math.ceil(shown.clockSeconds() / STEP_S);
        List<GroundView> track = new ArrayList<>(steps + 1);
        for (int i = 0; i <= steps; i++) {
            track.add(
                    wish.ground().view(wish.planet(), shown.from().plusClockSeconds(shown.clockSeconds() * i / steps)));
        }
        return track;
    }
}
