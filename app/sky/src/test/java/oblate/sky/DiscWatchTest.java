/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;

/** The work space behind discs: it remembers nothing, agrees with plain arithmetic on vectors, and threads do not disturb one another. */
class DiscWatchTest {
    private static final Sky SKY = Sky.bundled();
    private static final Ephemeris EPHEMERIS = Ephemeris.bundled();

    private static PlanetModel invented(int deBody, String id) {
        RotationElements elements = new RotationElements(
                40, 0.1, 60, -0.2, List.of(PeriodicTerm.sine(0.3, 20, 700)), List.of(), List.of(), "invented");
        Globe globe = new Globe(
                deBody,
                new Spheroid(60268, 54364, "invented"),
                elements,
                List.of(
                        new RotationSystem("1", "System I", 12, 870.5, "invented"),
                        new RotationSystem("2", "System II", 77, 810.1, "invented")),
                "1",
                LongitudeSense.WEST);
        return new PlanetModel() {
            @Override
            public String id() {
                return id;
            }

            @Override
            public String label() {
                return id;
            }

            @Override
            public Globe globe() {
                return globe;
            }

            @Override
            public Optional<Rings> rings() {
                return Optional.of(new Rings(70000, 140000, "invented"));
            }

            @Override
            public Appearance appearance() {
                return new Appearance(0.9, 0x808080);
            }

            @Override
            public RotationSystem customarySystem(double latGraphicDeg) {
                return globe.iauSystem();
            }
        };
    }

    private static List<UtcTime> times(int count) {
        Random random = new Random(41);
        List<UtcTime> times = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            times.add(new UtcTime(-3600 + random.nextInt(36000), random.nextDouble() * 86400));
        }
        return times;
    }

    @Test
    void aWatchRemembersNothing() {
        PlanetModel planet = invented(6, "ringed");
        DiscWatch watch = SKY.watch(planet);
        for (UtcTime time : times(200)) {
            ApparentDisc kept = watch.look(time).disc();
            assertThat(kept).isEqualTo(SKY.disc(planet, time));
            assertThat(kept).isEqualTo(SKY.watch(planet).look(time).disc());
            assertThat(watch.diameterPolarArcsec()).isEqualTo(kept.diameterPolarArcsec());
            assertThat(watch.subSolarLonDeg(1))
                    .isEqualTo(kept.subSolar().lonDeg().get(1));
            assertThat(watch.ringOuterSemiMinorArcsec())
                    .isEqualTo(kept.rings().orElseThrow().outerSemiMinorArcsec());
        }
    }

    @Test
    void manyThreadsGetTheSameDiscs() throws InterruptedException, ExecutionException {
        List<PlanetModel> planets = List.of(invented(4, "near"), invented(6, "far"));
        List<UtcTime> times = times(300);
        List<ApparentDisc> expected = discs(planets, times);
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Future<List<ApparentDisc>>> runs = new ArrayList<>();
            for (int i = 0; i < 16; i++) {
                runs.add(threads.submit(() -> discs(planets, times)));
            }
            for (Future<List<ApparentDisc>> run : runs) {
                assertThat(run.get()).isEqualTo(expected);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    /** Single looks, which share a spare work space, and watches of the thread's own, by turns. */
    private static List<ApparentDisc> discs(List<PlanetModel> planets, List<UtcTime> times) {
        List<DiscWatch> watches = planets.stream().map(SKY::watch).toList();
        List<ApparentDisc> discs = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            discs.add(SKY.disc(planets.get(i % 2), times.get(i)));
            discs.add(watches.get(i % 2).look(times.get(i)).disc());
        }
        return discs;
    }

    @Test
    void aRefusedInstantLeavesTheLookBefore() {
        PlanetModel planet = invented(6, "ringed");
        UtcTime good = UtcTime.parse("2024-05-01T00:00:00Z");
        DiscWatch watch = SKY.watch(planet).look(good);
        ApparentDisc before = watch.disc();
        assertThatThrownBy(() -> watch.look(UtcTime.parse("2100-01-01T00:00:00Z")))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.OUTSIDE_EPHEMERIS));
        assertThat(watch.disc()).isEqualTo(before);
    }

    /** Light time by plain iteration on positions only, against Newton's two steps with velocities. */
    @Test
    void lightTimesAreThoseOfPlainIteration() {
        for (int body : new int[] {1, 2, 4, 6, 8}) {
            PlanetModel planet = invented(body, "body" + body);
            for (UtcTime time : times(100)) {
                Sighting seen = SKY.sighting(planet, time);
                double t = seen.earth().moment().tdbDays();
                Vec3 earth = EPHEMERIS.earthKm(t);
                Vec3 way = LightPath.seen(earth, t, when -> EPHEMERIS.bodyKm(body, when));
                // half a metre; the clock's own steps in days since J2000 make 0.03 m
                assertThat(seen.toPlanetKm().minus(way).norm()).isLessThan(5e-4);
                double emitted = t - way.norm() / Starlight.C_KM_PER_DAY;
                Vec3 toSun = LightPath.seen(earth.plus(way), emitted, when -> EPHEMERIS.bodyKm(Ephemeris.SUN, when));
                assertThat(seen.planetToSunKm().minus(toSun).norm()).isLessThan(5e-4);
                Vec3 sunNow = LightPath.seen(earth, t, when -> EPHEMERIS.bodyKm(Ephemeris.SUN, when));
                assertThat(seen.earth().toSunKm().minus(sunNow).norm()).isLessThan(5e-4);
            }
        }
    }

    @Property
    void velocityIsTheSlopeOfThePlace(@ForAll @DoubleRange(min = -14600, max = 21900) double tdbDays) {
        WorkVec3 place = new WorkVec3();
        WorkVec3 velocity = new WorkVec3();
        double h = 0.01;
        // away from the joints of the file's records, where the third derivative jumps
        double middle = Math.floor(tdbDays) + 0.3;
        for (int body = 2; body <= 11; body++) {
            EPHEMERIS.body(body, middle, place, velocity);
            Vec3 slope = EPHEMERIS
                    .bodyKm(body, middle + h)
                    .minus(EPHEMERIS.bodyKm(body, middle - h))
                    .times(1 / (2 * h));
            assertThat(velocity.frozen().minus(slope).norm())
                    .as("body %d", body)
                    .isLessThan(2e-6 * slope.norm() + 1e-3);
        }
    }

    @Property
    void fastCosineIsTheCosine(@ForAll @DoubleRange(min = -1e5, max = 1e5) double turns) {
        double whole = Math.IEEEremainder(turns, 1);
        assertThat(Turns.cos(turns)).isCloseTo(Math.cos(2 * Math.PI * whole), within(1e-13));
    }
}
