/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import oblate.sky.ApparentDisc;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.GroundView;
import oblate.sky.MoonPlace;
import oblate.sky.UtcTime;
import oblate.sky.event.ContactKind;
import oblate.sky.event.EventKind;
import oblate.sky.event.EventSearch;
import oblate.sky.event.MoonEvents;
import oblate.sky.event.Passage;
import org.junit.jupiter.api.Test;

/** What the observer's place on the Earth does to a time. Where the moons stand for a place is checked against Orekit in the tests of Jupiter. */
class GroundTimingTest {
    private static final GroundSite WEST = new GroundSite(-33.9, 18.5, 15);
    private static final ShotSite PLACE = new ShotSite("coast", WEST);
    private static final UtcTime NIGHT = UtcTime.parse("2027-02-05T18:40:00Z");

    private static MoonPlace of(List<MoonPlace> all, String moon) {
        return all.stream().filter(m -> m.id().equals(moon)).findFirst().orElseThrow();
    }

    private static PlaceTiming timed(GroundSky ground, String moon, UtcTime time, Optional<ShotSite> predictedFor) {
        MoonPlace seen = of(ground.moons(Bench.JUPITER, time), moon);
        Bench.Seen where = new Bench.Seen(
                "a",
                new MoonSubject(seen.moon(), false),
                Bench.JUPITER,
                time.toInstant(),
                0,
                seen.xWestRadii(),
                seen.yNorthRadii());
        PlaceMark mark = Bench.mark(new Random(3), where, new Bench.Quality(1e-5, 0, 0, 0));
        PlaceMark there = new PlaceMark(
                Shot.look("a", time.toInstant(), 0, "", predictedFor),
                mark.subject(),
                mark.placement(),
                mark.covariance(),
                mark.pixel(),
                mark.pickSigmaPx(),
                mark.caution());
        Standpoints standpoints = new Standpoints(Bench.SKY);
        return new PlaceTimer(Bench.SKY, standpoints.of(predictedFor), Bench.JUPITER).time(there);
    }

    /**
     * By geometry: the planet's parallax, its direction from the place less that from the Earth's centre, times its distance is how far the place stands aside; a moon
     * before or behind the planet by z seems to stand aside of it by z over the distance of that, and by what of that lies along its way, over its speed, it is
     * late. Light comes to the place up to 0.02 s sooner.
     */
    private static double lateS(GroundSky ground, String moon, UtcTime time) {
        GroundView there = ground.view(Bench.JUPITER, time);
        ApparentDisc here = Bench.SKY.disc(Bench.JUPITER, time);
        double dec = Math.toRadians(here.decApparentDeg());
        double east = Math.toRadians(Math.IEEEremainder(there.raDeg() - here.raApparentDeg(), 360)) * Math.cos(dec);
        double north = Math.toRadians(there.decDeg() - here.decApparentDeg());
        // The direction from the place has the turning Earth's aberration in it, which shifts no moon against its
        // planet: 0.3192″ cos φ (cos H, sin H sin δ),
        // Explanatory Supplement to the Astronomical Almanac, ch. 7, from memory.
        double turning = Math.toRadians(0.3192 / 3600)
                * Math.cos(Math.toRadians(ground.site().latDeg()));
        double hour = Math.toRadians(there.hourAngleDeg());
        east -= turning * Math.cos(hour);
        north -= turning * Math.sin(hour) * Math.sin(dec);
        double pole = Math.toRadians(here.northPolePaDeg());
        double west = -east * Math.cos(pole) + north * Math.sin(pole);
        double up = east * Math.sin(pole) + north * Math.cos(pole);
        MoonPlace before = of(Bench.SKY.moons(Bench.JUPITER, time.plusClockSeconds(-30)), moon);
        MoonPlace after = of(Bench.SKY.moons(Bench.JUPITER, time.plusClockSeconds(30)), moon);
        double speedX = (after.xWestRadii() - before.xWestRadii()) / 60;
        double speedY = (after.yNorthRadii() - before.yNorthRadii()) / 60;
        double z = (before.zTowardEarthRadii() + after.zTowardEarthRadii()) / 2;
        double nearerS = (here.distanceAu() - there.distanceAu()) * 499.005;
        return -nearerS - z * (west * speedX + up * speedY) / (speedX * speedX + speedY * speedY);
    }

    @Test
    void aMarkIsTimedForItsPictureSite() {
        GroundSky ground = GroundSky.over(Bench.SKY, WEST);
        double most = 0;
        for (String moon : List.of("io", "europa", "ganymede", "callisto")) {
            for (int hours = 0; hours < 30; hours += 6) {
                UtcTime time = NIGHT.plusClockSeconds(hours * 3600.0);
                PlaceTiming with = timed(ground, moon, time, Optional.of(PLACE));
                if (!with.hasTime() || with.errors().totalS() > 20) {
                    continue; // near its elongation a moon tells no time
                }
                assertThat(with.oMinusPS()).isCloseTo(0, within(0.02));
                assertThat(with.errors().partS(ErrorParts.SITE)).isZero();
                PlaceTiming without = timed(ground, moon, time, Optional.empty());
                double late = lateS(ground, moon, time);
                // 0.06″ of aberration by the turning Earth is in the parallax as seen, and the way is not quite along
                // the equator
                assertThat(without.oMinusPS())
                        .as("%s at %s", moon, time)
                        .isCloseTo(late, within(0.01 + 0.02 * Math.abs(late)));
                assertThat(without.errors().partS(ErrorParts.SITE)).isGreaterThan(Math.abs(late) / 1.9);
                most = Math.max(most, Math.abs(without.oMinusPS()));
            }
        }
        assertThat(most).isGreaterThan(0.4);
    }

    /** Places drawn all over the half of the Earth from which the planet is up: the error given for a place that is not known is that of the times. */
    @Test
    void theErrorOfAnUnknownPlaceIsHonest() {
        Random random = new Random(11);
        List<Double> sigmas = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            double lat = Math.toDegrees(Math.asin(2 * random.nextDouble() - 1));
            GroundSky ground = GroundSky.over(Bench.SKY, new GroundSite(lat, 360 * random.nextDouble() - 180, 0));
            UtcTime time = NIGHT.plusClockSeconds(86_400 * 20 * random.nextDouble());
            if (ground.view(Bench.JUPITER, time).altitudeDeg() < 0) {
                continue;
            }
            PlaceTiming timing = timed(ground, random.nextBoolean() ? "io" : "callisto", time, Optional.empty());
            if (timing.hasTime() && timing.errors().totalS() < 60) {
                sigmas.add(timing.oMinusPS() / timing.errors().partS(ErrorParts.SITE));
            }
        }
        assertThat(sigmas).hasSizeGreaterThan(80);
        double rms = Math.sqrt(sigmas.stream().mapToDouble(s -> s * s).average().orElseThrow());
        assertThat(rms).isBetween(0.85, 1.15);
        assertThat(sigmas.stream().mapToDouble(Math::abs).max().orElseThrow()).isLessThan(1.75);
    }

    private static List<StateSaid> about(Passage passage, Instant contact, Optional<ShotSite> site) {
        List<StateSaid> states = new ArrayList<>();
        for (int s = -600; s <= 600; s += 1) {
            Instant at = Bench.plus(contact, s + 0.5);
            MoonState state = at.isBefore(contact) ? MoonState.CLEAR : MoonState.ON_LIMB;
            states.add(new StateSaid(
                    Shot.look(at.toString(), at, 0.1, "", site),
                    passage.moon(),
                    Optional.of(Phenomenon.TRANSIT),
                    state,
                    false));
        }
        return states;
    }

    @Test
    void aContactIsForetoldForItsPictureSite() {
        GroundSky ground = GroundSky.over(Bench.SKY, WEST);
        EventSearch search = EventSearch.between(
                        UtcTime.parse("2027-01-20T00:00:00Z"), UtcTime.parse("2027-03-20T00:00:00Z"))
                .ofMoons(Set.of("callisto", "ganymede"))
                .ofKinds(Set.of(EventKind.TRANSIT));
        double most = 0;
        int contacts = 0;
        for (Passage passage : MoonEvents.of(ground, Bench.JUPITER).passages(search)) {
            Optional<Instant> first =
                    passage.contact(ContactKind.T1).map(c -> c.time().toInstant());
            if (first.isEmpty() || passage.phaseDelayS().orElse(0.0) > 1) {
                continue;
            }
            Timing with = Bench.work(Bench.JUPITER, List.of(), about(passage, first.get(), Optional.of(PLACE)))
                    .events()
                    .get(0);
            Timing without = Bench.work(Bench.JUPITER, List.of(), about(passage, first.get(), Optional.empty()))
                    .events()
                    .get(0);
            assertThat(with.site()).contains("coast");
            assertThat(with.oMinusPS()).isCloseTo(0, within(0.51));
            assertThat(with.errors().siteS()).isZero();
            assertThat(without.site()).isEmpty();
            assertThat(without.errors().siteS()).isBetween(0.3, 3.0);
            assertThat(Math.abs(without.oMinusPS()))
                    .isLessThan(1.75 * without.errors().siteS() + 0.5);
            most = Math.max(most, Math.abs(without.oMinusPS()));
            contacts++;
        }
        assertThat(contacts).isGreaterThan(4);
        assertThat(most).isGreaterThan(1);
    }

    /** One observer at two places in a night: two events, each foretold for its own. */
    @Test
    void picturesFromTwoSitesAreNotPutTogether() {
        EventSearch search = EventSearch.between(
                        UtcTime.parse("2027-02-01T00:00:00Z"), UtcTime.parse("2027-02-08T00:00:00Z"))
                .ofMoons(Set.of("io"))
                .ofKinds(Set.of(EventKind.TRANSIT));
        Passage passage =
                MoonEvents.of(Bench.SKY, Bench.JUPITER).passages(search).get(0);
        Instant t1 = passage.contact(ContactKind.T1).orElseThrow().time().toInstant();
        List<StateSaid> states = new ArrayList<>(about(passage, t1, Optional.of(PLACE)));
        states.addAll(about(passage, t1, Optional.of(new ShotSite("hill", new GroundSite(48, 16, 300)))));
        List<Timing> events = Bench.work(Bench.JUPITER, List.of(), states).events();
        assertThat(events)
                .extracting(Timing::site)
                .containsExactlyInAnyOrder(Optional.of("coast"), Optional.of("hill"));
        assertThat(events.get(0).predictedUtc()).isNotEqualTo(events.get(1).predictedUtc());
    }
}
