/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.jupiter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import oblate.sky.MoonFacts;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.PlanetSystem;
import oblate.sky.Sky;
import oblate.sky.UtcTime;
import oblate.sky.Vec3;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import oblate.sky.event.MutualContact;
import oblate.sky.event.MutualEvent;
import oblate.sky.event.Passage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * Every event found twice: by the search, and by looking at the moons' places at every step of some days. What stands before, behind or in the dark
 * at a look comes from another computation, made for one instant at a time, that knows nothing of roots or conjunctions.
 */
class JovianEventsBruteForceTest {
    private static final PlanetModel JUPITER = new Jupiter();
    private static final Sky SKY = Sky.bundled();
    private static final MoonEvents EVENTS = MoonEvents.of(SKY, JUPITER);

    /** A stretch of looks in which something went on; ends are the last look before and the first after. */
    private record Stretch(String what, double beginsAfter, double beginsBy, double endsAfter, double endsBy) {}

    /** A stretch as the search has it, in seconds from the start. */
    private record Found(String what, double begins, double ends) {}

    @Test
    void tenSecondStepsThroughSomeDays() {
        compare("2029-05-10T00:00:00Z", 1.6, 10);
    }

    @Test
    void halfMinuteStepsThroughDaysWithCallisto() {
        compare("2021-04-19T00:00:00Z", 3, 30);
        compare("2032-12-29T00:00:00Z", 3, 30);
    }

    @Test
    void mutualOccultationsOfAWeek() {
        compareMutual("2015-02-01T00:00:00Z", 5, 30);
    }

    /** Minutes of work: six months of a decade at 10 s, with Callisto's passages before, within and after its seasons of missing. */
    @Test
    @Tag("large")
    void tenSecondStepsThroughMonthsOfADecade(TestReporter reporter) {
        int found = 0;
        for (String from : List.of(
                "2021-03-01T00:00:00Z",
                "2022-11-01T00:00:00Z",
                "2024-07-01T00:00:00Z",
                "2026-02-01T00:00:00Z",
                "2028-05-01T00:00:00Z",
                "2030-09-01T00:00:00Z")) {
            found += compare(from, 30, 10);
        }
        int decade = EVENTS.passages(EventSearch.between(
                        UtcTime.parse("2021-01-01T00:00:00Z"), UtcTime.parse("2031-01-01T00:00:00Z")))
                .size();
        reporter.publishEntry(found + " events of 180 days found twice; the decade has " + decade);
        assertThat(found).isGreaterThan(500);
        assertThat(decade).isGreaterThan(10_000);
    }

    private static int compare(String from, double days, double stepS) {
        UtcTime start = UtcTime.parse(from);
        List<Stretch> seen = new ArrayList<>();
        Map<String, double[]> open = new HashMap<>();
        int looks = (int) (days * 86400 / stepS);
        for (int i = 0; i <= looks; i++) {
            double now = i * stepS;
            for (MoonPlace moon : SKY.moons(JUPITER, after(start, now))) {
                look(seen, open, moon.id() + " " + EventKind.TRANSIT, moon.inTransit(), now, stepS);
                look(seen, open, moon.id() + " " + EventKind.OCCULTATION, moon.occulted(), now, stepS);
                look(seen, open, moon.id() + " " + EventKind.ECLIPSE, moon.eclipsed(), now, stepS);
                look(
                        seen,
                        open,
                        moon.id() + " " + EventKind.SHADOW_TRANSIT,
                        moon.shadow().isPresent(),
                        now,
                        stepS);
            }
        }
        List<Found> found = new ArrayList<>();
        for (Passage p :
                EVENTS.passages(EventSearch.between(after(start, -86400), after(start, days * 86400 + 86400)))) {
            boolean shadow = p.kind() == EventKind.SHADOW_TRANSIT;
            ContactKind in = shadow ? ContactKind.SEEN_INGRESS : ContactKind.INGRESS_CENTRE;
            ContactKind out = shadow ? ContactKind.SEEN_EGRESS : ContactKind.EGRESS_CENTRE;
            p.contact(in)
                    .ifPresent(c -> found.add(new Found(
                            p.moon().id() + " " + p.kind(),
                            since(start, c.time()),
                            since(start, p.contact(out).orElseThrow().time()))));
        }
        same(seen, found, looks * stepS);
        return seen.size();
    }

    /** Discs that overlap, by their offsets and diameters on the sky, both before or behind each other or not. */
    private static void compareMutual(String from, double days, double stepS) {
        UtcTime start = UtcTime.parse(from);
        List<Stretch> seen = new ArrayList<>();
        Map<String, double[]> open = new HashMap<>();
        int looks = (int) (days * 86400 / stepS);
        for (int i = 0; i <= looks; i++) {
            List<MoonPlace> moons = SKY.moons(JUPITER, after(start, i * stepS));
            for (MoonPlace front : moons) {
                for (MoonPlace back : moons) {
                    if (front.distanceAu() < back.distanceAu()) {
                        double apart = Math.hypot(
                                front.dRaCosDecArcsec() - back.dRaCosDecArcsec(),
                                front.dDecArcsec() - back.dDecArcsec());
                        boolean touch = apart < (front.diameterArcsec() + back.diameterArcsec()) / 2;
                        look(seen, open, front.id() + " " + back.id(), touch, i * stepS, stepS);
                    }
                }
            }
        }
        List<Found> found = new ArrayList<>();
        for (MutualEvent e :
                EVENTS.mutual(EventSearch.between(after(start, -86400), after(start, days * 86400 + 86400)))) {
            if (e.kind() == EventKind.OCCULTATION) {
                found.add(new Found(
                        e.front().id() + " " + e.back().id(),
                        since(start, e.contact(MutualContact.T1).orElseThrow().time()),
                        since(start, e.contact(MutualContact.T4).orElseThrow().time())));
            }
        }
        same(seen, found, looks * stepS);
    }

    @Test
    void mutualEclipsesOfAWeek() {
        UtcTime start = UtcTime.parse("2015-02-01T00:00:00Z");
        double stepS = 30;
        double days = 5;
        List<Stretch> seen = new ArrayList<>();
        Map<String, double[]> open = new HashMap<>();
        int looks = (int) (days * 86400 / stepS);
        for (int i = 0; i <= looks; i++) {
            double day = SKY.system(JUPITER).tdbDays(after(start, i * stepS));
            for (MoonFacts back : JUPITER.moons()) {
                double atBack = day;
                for (int k = 0; k < 3; k++) {
                    atBack = day
                            - lightDays(
                                    placeKm(back, atBack), SKY.system(JUPITER).earthKm(day));
                }
                for (MoonFacts front : JUPITER.moons()) {
                    boolean on = front != back && isInHalfShadow(front, back, atBack);
                    look(seen, open, front.id() + " " + back.id(), on, i * stepS, stepS);
                }
            }
        }
        List<Found> found = new ArrayList<>();
        for (MutualEvent e :
                EVENTS.mutual(EventSearch.between(after(start, -86400), after(start, days * 86400 + 86400)))) {
            if (e.kind() == EventKind.ECLIPSE) {
                found.add(new Found(
                        e.front().id() + " " + e.back().id(),
                        since(
                                start,
                                e.contact(MutualContact.PENUMBRA_T1)
                                        .orElseThrow()
                                        .time()),
                        since(
                                start,
                                e.contact(MutualContact.PENUMBRA_T4)
                                        .orElseThrow()
                                        .time())));
            }
        }
        same(seen, found, looks * stepS);
    }

    /** Whether any of the back moon's disc lies in the cone round the front moon that narrows toward the Sun's far limb. */
    private static boolean isInHalfShadow(MoonFacts front, MoonFacts back, double atBack) {
        PlanetSystem system = SKY.system(JUPITER);
        Vec3 backKm = placeKm(back, atBack);
        double atFront = atBack - lightDays(placeKm(front, atBack), backKm);
        Vec3 frontKm = placeKm(front, atFront);
        Vec3 sunKm = system.sunKm(atBack - lightDays(system.sunKm(atBack), backKm));
        Vec3 ray = backKm.minus(sunKm);
        double far = ray.norm();
        double along = frontKm.minus(sunKm).dot(ray) / far;
        if (along >= far) {
            return false;
        }
        double off = frontKm.minus(sunKm).plus(-along / far, ray).norm() * far / along;
        return off < back.radiusKm() + front.radiusKm() * far / along + 695_700 * (far - along) / along;
    }

    private static double lightDays(Vec3 fromKm, Vec3 toKm) {
        return fromKm.minus(toKm).norm() / PlanetSystem.C_KM_PER_DAY;
    }

    /** A moon (km, barycentric), straight from its series. */
    private static Vec3 placeKm(MoonFacts moon, double day) {
        Vec3 place = SKY.system(JUPITER).barycentreKm(day).plus(moon.motion().fromPlanetKm(day));
        for (MoonFacts m : JUPITER.moons()) {
            place = place.plus(-m.massShare(), m.motion().fromPlanetKm(day));
        }
        return place;
    }

    private static void look(
            List<Stretch> seen, Map<String, double[]> open, String what, boolean on, double now, double stepS) {
        double[] began = open.get(what);
        if (on && began == null) {
            open.put(what, new double[] {now - stepS, now});
        } else if (!on && began != null) {
            open.remove(what);
            seen.add(new Stretch(what, began[0], began[1], now - stepS, now));
        }
    }

    /** The same set, each end between the two looks that saw it; what is cut by the span's ends is left to other tests. */
    private static void same(List<Stretch> seen, List<Found> found, double lengthS) {
        List<Stretch> whole = seen.stream().filter(s -> s.beginsAfter() >= 0).toList();
        List<Found> wholeFound =
                found.stream().filter(f -> f.begins() > 0 && f.ends() < lengthS).toList();
        assertThat(wholeFound).hasSizeGreaterThan(5);
        assertThat(wholeFound).hasSameSizeAs(whole);
        for (Stretch stretch : whole) {
            // The places of shadows take one light time for the whole globe, up to 0.24 s more than the limb's own.
            double slack = stretch.what().endsWith(EventKind.SHADOW_TRANSIT.toString()) ? 0.3 : 0.05;
            assertThat(wholeFound)
                    .as("%s", stretch)
                    .anyMatch(f -> f.what().equals(stretch.what())
                            && f.begins() > stretch.beginsAfter() - slack
                            && f.begins() < stretch.beginsBy() + slack
                            && f.ends() > stretch.endsAfter() - slack
                            && f.ends() < stretch.endsBy() + slack);
        }
    }

    private static UtcTime after(UtcTime start, double seconds) {
        double second = start.secondOfDay() + seconds;
        double day = Math.floor(second / 86400);
        return new UtcTime(start.epochDay() + (long) day, second - day * 86400);
    }

    private static double since(UtcTime start, UtcTime time) {
        return (time.epochDay() - start.epochDay()) * 86400.0 + time.secondOfDay() - start.secondOfDay();
    }
}
