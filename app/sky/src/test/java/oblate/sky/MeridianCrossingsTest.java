/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeridianCrossingsTest {
    private static final Sky SKY = Sky.bundled();

    /** The rates of rotation are those of the IAU's report of 2015; poles and meridians are invented, near to the true ones. */
    private static PlanetModel turning(int deBody, double degPerDay) {
        RotationElements elements =
                new RotationElements(deBody * 30, 0, 70, 0, List.of(), List.of(), List.of(), "invented");
        Globe globe = new Globe(
                deBody,
                new Spheroid(71492, 66854, "invented"),
                elements,
                List.of(new RotationSystem("iau", "IAU", 12.3, degPerDay, "invented")),
                "iau",
                degPerDay > 0 ? LongitudeSense.WEST : LongitudeSense.EAST);
        return new PlanetModel() {
            @Override
            public String id() {
                return "body";
            }

            @Override
            public String label() {
                return "Body";
            }

            @Override
            public Globe globe() {
                return globe;
            }
        };
    }

    private static List<MeridianCrossing> crossings(PlanetModel planet, MovingLongitude lon, String from, String to) {
        return new MeridianCrossings(SKY, planet, planet.globe().iauSystem())
                .between(lon, new TimeSpan(UtcTime.parse(from), UtcTime.parse(to)));
    }

    /** All planets, the retrograde ones among them: at each time found the meridian is the longitude, and none is missed between. */
    @ParameterizedTest
    @CsvSource({
        "1, 6.1385108, 1500",
        "2, -1.4813688, 4000",
        "4, 350.891982443297, 40",
        "5, 870.2700000, 12",
        "6, 810.7939024, 12",
        "7, -501.1600928, 20",
        "8, 541.1397757, 20"
    })
    void theLongitudeIsOnTheMeridianAndNoneIsMissed(int body, double degPerDay, int days) {
        PlanetModel planet = turning(body, degPerDay);
        UtcTime from = UtcTime.parse("2023-03-01T05:00:00Z");
        TimeSpan span = new TimeSpan(from, from.plusClockSeconds(days * 86400.0));
        RotationSystem system = planet.globe().iauSystem();
        List<MeridianCrossing> found =
                new MeridianCrossings(SKY, planet, system).between(MovingLongitude.fixed(123.4, 2), span);
        double wound = 0;
        double before = SKY.disc(planet, from).centralMeridianDeg(system);
        double start = Angles.wrapDeg(before - 123.4);
        int steps = (int) Math.ceil(days * Math.abs(degPerDay) / 15);
        for (int i = 1; i <= steps; i++) {
            double now = SKY.disc(planet, from.plusClockSeconds(days * 86400.0 * i / steps))
                    .centralMeridianDeg(system);
            double moved = Math.IEEEremainder(now - before, 360);
            assertThat(moved).as("the meridian always moves forward").isPositive();
            wound += moved;
            before = now;
        }
        int expected = (int) Math.floor((start + wound) / 360);
        assertThat(found).hasSize(expected).hasSizeGreaterThan(5);
        for (MeridianCrossing crossing : found) {
            double off = Math.IEEEremainder(SKY.disc(planet, crossing.time()).centralMeridianDeg(system) - 123.4, 360);
            // to a second of time
            assertThat(Math.abs(off) / crossing.degPerMin() * 60).isLessThan(0.05);
            assertThat(crossing.degPerMin()).isPositive();
            assertThat(crossing.sigmaMin()).isCloseTo(2 / crossing.degPerMin(), within(1e-9));
        }
        assertThat(found).isSortedAccordingTo((a, b) -> a.time().compareTo(b.time()));
    }

    /** System II: a period of 9 h 55 m 40.632 s (a handbook's figure), seen from the Earth within a second or two. */
    @Test
    @Tag("truth")
    void crossingsOfSystemTwoFollowItsPeriod() {
        List<MeridianCrossing> found = crossings(
                turning(5, 870.27), MovingLongitude.fixed(42, 0), "2024-12-07T00:00:00Z", "2024-12-17T00:00:00Z");
        double mean = found.get(found.size() - 1)
                        .time()
                        .clockSecondsSince(found.get(0).time())
                / (found.size() - 1);
        assertThat(mean).isCloseTo(9 * 3600 + 55 * 60 + 40.632, within(6.0));
        // one degree of longitude is 1.65 minutes
        assertThat(1 / found.get(0).degPerMin()).isCloseTo(1.6547, within(0.001));
    }

    @Test
    void aDriftingLongitudeComesLaterOrEarlierByItsDrift() {
        PlanetModel planet = turning(5, 870.27);
        UtcTime epoch = UtcTime.parse("2024-12-01T00:00:00Z");
        MovingLongitude standing = MovingLongitude.fixed(100, 1);
        MovingLongitude drifting = new MovingLongitude(100, 0.5, epoch, 1, 0.1);
        List<MeridianCrossing> still = crossings(planet, standing, "2024-12-11T00:00:00Z", "2024-12-12T00:00:00Z");
        List<MeridianCrossing> moved = crossings(planet, drifting, "2024-12-11T00:00:00Z", "2024-12-12T00:00:00Z");
        double days = moved.get(0).time().clockSecondsSince(epoch) / 86400;
        assertThat(moved.get(0).lonDeg()).isCloseTo(100 + 0.5 * days, within(1e-9));
        assertThat(moved.get(0).time().clockSecondsSince(still.get(0).time()) / 60)
                .isCloseTo(0.5 * days / still.get(0).degPerMin(), within(0.02));
        assertThat(moved.get(0).sigmaLonDeg()).isCloseTo(Math.hypot(1, 0.1 * days), within(1e-9));
    }

    @Test
    void absurdRangesAndDriftsAreRefused() {
        PlanetModel planet = turning(5, 870.27);
        assertThatThrownBy(() ->
                        crossings(planet, MovingLongitude.fixed(1, 0), "1970-01-01T00:00:00Z", "2050-01-01T00:00:00Z"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.TOO_MANY_CROSSINGS));
        assertThatThrownBy(() -> crossings(
                        planet,
                        new MovingLongitude(1, 400, UtcTime.parse("2024-01-01T00:00:00Z"), 0, 0),
                        "2024-01-01T00:00:00Z",
                        "2024-01-02T00:00:00Z"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.DRIFT_TOO_FAST));
        assertThatThrownBy(() ->
                        crossings(planet, MovingLongitude.fixed(1, 0), "2059-12-01T00:00:00Z", "2060-12-01T00:00:00Z"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.OUTSIDE_EPHEMERIS));
    }

    /** The motion on the sky by the vectors: a point that faces the Earth is carried along by spin × place. */
    @ParameterizedTest
    @CsvSource({"5, 870.27", "2, -1.4813688", "7, -501.1600928", "4, 350.89"})
    void smearPointsWhereTheSurfaceGoes(int body, double degPerDay) {
        PlanetModel planet = turning(body, degPerDay);
        UtcTime time = UtcTime.parse("2024-12-07T20:00:00Z");
        RotationSmear smear = RotationSmear.at(SKY, planet, planet.globe().iauSystem(), time, 0);
        Sighting seen = SKY.sighting(planet, time);
        Orientation orientation = Orientation.at(planet.globe(), seen.emittedTdbDays());
        Vec3 spin = orientation.pole().times(Math.signum(degPerDay));
        Vec3 moving = spin.cross(seen.toPlanetKm().times(-1));
        Vec3 apparent = seen.earth().apparent(seen.toPlanetKm());
        double expected =
                Angles.positionAngleDeg(apparent, seen.earth().toDate().apply(moving));
        assertThat(Math.IEEEremainder(smear.motionPaDeg() - expected, 360)).isCloseTo(0, within(0.05));
    }

    /** Trade handbook: 120 s smear Jupiter by 1.209 deg; on a disc of 45 arcsec by 0.237 arcsec a minute, 754 km a minute at the equator. */
    @Test
    @Tag("truth")
    void smearOfJupiter() {
        PlanetModel planet = turning(5, 870.536);
        UtcTime time = UtcTime.parse("2024-12-07T20:00:00Z");
        RotationSmear smear = RotationSmear.at(SKY, planet, planet.globe().iauSystem(), time, 0);
        assertThat(smear.turnedDeg(120)).isCloseTo(1.209, within(0.001));
        assertThat(smear.lengthKm(60)).isCloseTo(754, within(1.0));
        double perMinute = smear.lengthArcsec(60);
        assertThat(perMinute * 45 / smear.disc().diameterEquatorialArcsec()).isCloseTo(0.237, within(0.001));
        assertThat(smear.secondsForArcsec(0.1) * smear.disc().diameterEquatorialArcsec() / 45)
                .isCloseTo(25.3, within(0.5));
        assertThat(smear.secondsForDeg(1.209)).isCloseTo(120, within(0.1));
    }

    @Test
    void smearAndItsLongestTimeAreInverse() {
        PlanetModel planet = turning(5, 870.536);
        UtcTime time = UtcTime.parse("2024-12-07T20:00:00Z");
        for (double lat : new double[] {-60, 0, 22.5, 60}) {
            RotationSmear smear = RotationSmear.at(SKY, planet, planet.globe().iauSystem(), time, lat);
            for (double arcsec : new double[] {0.05, 0.5, 3}) {
                assertThat(smear.lengthArcsec(smear.secondsForArcsec(arcsec))).isCloseTo(arcsec, within(1e-9));
            }
            assertThat(smear.secondsForArcsec(60)).isInfinite();
        }
        assertThatThrownBy(() -> RotationSmear.at(
                        SKY, turning(7, -501.16), turning(7, -501.16).globe().iauSystem(), time, -89.9))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.LATITUDE_HIDDEN));
    }
}
