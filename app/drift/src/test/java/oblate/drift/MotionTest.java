/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static oblate.drift.Sets.JUPITER;
import static oblate.drift.Sets.NEPTUNE;
import static oblate.drift.Sets.SATURN;
import static oblate.drift.Sets.URANUS;
import static oblate.drift.Sets.VENUS;
import static oblate.drift.Sets.system;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.sky.Globe;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MotionTest {
    private static final Globe GLOBE = JUPITER.globe();

    /** Rows printed to the whole second in an apparition report of the Royal Astronomical Society of Canada, 1960: drift per 30 days in System I, period. */
    @Tag("truth")
    @ParameterizedTest
    @CsvSource({"2.6, 34", "-9.0, 18", "-9.4, 17", "-2.8, 26"})
    void printedPeriodsOfTheEquatorialCurrent(double driftPer30Days, int secondsAfter9h50m) {
        double period = Motion.periodS(GLOBE, system(JUPITER, "1"), driftPer30Days / 30);
        assertThat(Math.round(period)).isEqualTo(9 * 3600 + 50 * 60 + secondsAfter9h50m);
    }

    /** Definitions of the systems: IAU rates; periods as an Oxford reference work prints them. */
    @Tag("truth")
    @ParameterizedTest
    @CsvSource({"1, 35430.003", "2, 35740.632", "3, 35729.711"})
    void periodsOfTheSystemsThemselves(String id, double periodS) {
        assertThat(Motion.periodS(GLOBE, system(JUPITER, id), 0)).isCloseTo(periodS, within(0.0006));
    }

    /**
     * The Great Red Spot between the System III drifts of 0.26 (1980s) and 0.36 deg per day (2017) of Simon et al. 2018, which are −0.2 and +2.8 deg per 30 days in
     * System II.
     */
    @Tag("truth")
    @Test
    void redSpotDriftsFromSystemThreeToTwo() {
        double slow = Motion.driftInSystem(GLOBE, 0.26, system(JUPITER, "3"), system(JUPITER, "2"));
        double fast = Motion.driftInSystem(GLOBE, 0.36, system(JUPITER, "3"), system(JUPITER, "2"));
        assertThat(30 * slow).isCloseTo(-0.18, within(1e-9));
        assertThat(30 * fast).isCloseTo(2.82, within(1e-9));
        // Westward at 22.5 S, by 1163.5 km per degree (trade table): 0.36 deg/d are 4.85 m/s against the rotation.
        assertThat(Motion.speedMS(GLOBE, 0.36, -22.5)).isCloseTo(-0.36 * 1163.5e3 / 86400, within(0.001));
        // 9 h 55 min 40.6 s for a feature at rest in System II; +1.4 deg per 30 days (early 2015) is 2 s longer.
        assertThat(Motion.periodS(GLOBE, system(JUPITER, "2"), 1.4 / 30)).isCloseTo(35742.55, within(0.01));
    }

    /** One degree per 30 days at planetographic latitudes, and one degree per day at the equator (trade table, computed elsewhere). */
    @Tag("truth")
    @ParameterizedTest
    @CsvSource({"0, 0.481", "7, 0.478", "16, 0.465", "22.5, 0.449", "24, 0.444", "33, 0.412", "41, 0.373", "60, 0.253"})
    void speedsOfADegreePer30DaysOnJupiter(double lat, double speed) {
        assertThat(Motion.speedMS(GLOBE, -1 / 30.0, lat)).isCloseTo(speed, within(0.0006));
        assertThat(Motion.speedMS(GLOBE, -1 / 30.0, -lat)).isCloseTo(speed, within(0.0006));
    }

    /**
     * Saturn's storm of 2010 (Sanchez-Lavega et al. 2012): 2.793 deg per day in System III at 40.8 N is printed as −27.9 m/s. The exact distance from the axis on
     * the ellipsoid gives −26.8; the printed figure is that of a · cos(planetocentric latitude), which is not a distance from the axis.
     */
    @Tag("truth")
    @Test
    void saturnStormOf2010ByTheExactFormula() {
        assertThat(Motion.speedMS(SATURN.globe(), 2.793, 40.8)).isCloseTo(-26.8, within(0.05));
        double centric = SATURN.globe().figure().centricFromGraphicDeg(40.8);
        double printed = -2.793 * Math.toRadians(1) * 60268e3 * Math.cos(Math.toRadians(centric)) / 86400;
        assertThat(printed).isCloseTo(-27.8, within(0.05));
    }

    /** Saturn's equatorial spot of 2014–18: 444 to 452 m/s (Hueso et al. 2020) is about 37 deg per day in System III. */
    @Tag("truth")
    @Test
    void saturnEquatorialSpot() {
        assertThat(Motion.speedMS(SATURN.globe(), -37, 0)).isBetween(444.0, 452.0);
        // Equatorial spots of 1994–96: 10 h 20 min 52 s to 21 min 50 s are +9.3 to +10.6 deg per day in System I (BAA 1997; computed in the trade notes).
        assertThat(Motion.driftOfPeriod(SATURN.globe(), system(SATURN, "1"), 37252)).isCloseTo(9.3, within(0.1));
        assertThat(Motion.driftOfPeriod(SATURN.globe(), system(SATURN, "1"), 37310)).isCloseTo(10.6, within(0.1));
    }

    /** Neptune's equatorial spot of 2017: 47.5 deg per day (BAA 2017) is 238 m/s at the equator, against the rotation as longitudes grow. */
    @Tag("truth")
    @Test
    void neptuneSpotOf2017() {
        assertThat(Motion.speedMS(NEPTUNE.globe(), 47.5, 0)).isCloseTo(-238, within(0.5));
    }

    /** Venus' ultraviolet clouds go round in 4.50 d sidereal, ahead of a surface that turns backward in 243.018 d (planetary patrol, 1970 images). */
    @Tag("truth")
    @Test
    void cloudsOfVenusRunAheadWithFallingLongitude() {
        double drift = Motion.driftOfPeriod(VENUS.globe(), VENUS.globe().iauSystem(), 4.50 * 86400);
        assertThat(drift).isCloseTo(-360 / 4.50 + 360 / 243.018, within(1e-3));
        assertThat(Motion.periodS(VENUS.globe(), VENUS.globe().iauSystem(), drift) / 86400).isCloseTo(4.50, within(1e-9));
        // Synodic, against the Sun: 1/4.50 + 1/224.701 per day is 4.41 d, as the same study prints.
        assertThat(1 / (1 / 4.50 + 1 / 224.701)).isCloseTo(4.41, within(0.005));
        assertThat(Motion.speedMS(VENUS.globe(), drift, 0)).isPositive();
    }

    /** Uranus turns backward and counts longitude eastward: a feature with a falling longitude runs ahead and has the shorter period. */
    @Test
    void onUranusAFallingLongitudeRunsAhead() {
        RotationSystem iau = URANUS.globe().iauSystem();
        double still = Motion.periodS(URANUS.globe(), iau, 0);
        assertThat(still).isCloseTo(17 * 3600 + 14 * 60 + 24, within(0.01));
        // −17.2 deg per day, the storm of 2014 (BAA 2014): 360 / 518.36 d.
        assertThat(Motion.periodS(URANUS.globe(), iau, -17.2)).isCloseTo(360 / 518.3600928 * 86400, within(1e-6));
        assertThat(Motion.speedMS(URANUS.globe(), -17.2, 30)).isPositive();
    }

    @Property(seed = "40")
    void ratesAndPeriodsConvertAndComeBack(
            @ForAll @DoubleRange(min = -100, max = 100) double drift, @ForAll("planets") PlanetModel planet) {
        Globe globe = planet.globe();
        for (RotationSystem from : globe.systems()) {
            for (RotationSystem to : globe.systems()) {
                double there = Motion.driftInSystem(globe, drift, from, to);
                assertThat(Motion.driftInSystem(globe, there, to, from)).isCloseTo(drift, within(1e-11));
                assertThat(Motion.periodS(globe, to, there))
                        .isCloseTo(Motion.periodS(globe, from, drift), within(1e-6 * Motion.periodS(globe, from, drift)));
            }
        }
    }

    @net.jqwik.api.Provide
    net.jqwik.api.Arbitrary<PlanetModel> planets() {
        return net.jqwik.api.Arbitraries.of(JUPITER, SATURN, URANUS, NEPTUNE);
    }
}
