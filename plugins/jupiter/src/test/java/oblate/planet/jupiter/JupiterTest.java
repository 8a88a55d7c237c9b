/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.jupiter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.sky.ApparentDisc;
import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.sky.UtcTime;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class JupiterTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Jupiter();
    }

    /**
     * Meeus, Astronomical Algorithms, 2nd ed., example 43.a (Jupiter, 1992-12-16 0h UT), handbook's figures from memory. The handbook adds the phase
     * correction, 57.3 deg times the square of the sine of half the phase angle, and its System II stands 0.055 deg ahead of the IAU's constants.
     */
    @Test
    @Tag("truth")
    void handbookExampleDiffersOnlyByItsPhaseCorrection() {
        ApparentDisc disc = sky().disc(planet(), UtcTime.parse("1992-12-15T23:59:59.6Z"));
        assertThat(disc.subEarth().latCentricDeg()).isCloseTo(-2.48, within(0.005));
        assertThat(disc.subSolar().latCentricDeg()).isCloseTo(-2.20, within(0.005));
        assertThat(disc.northPolePaDeg()).isCloseTo(24.80, within(0.005));
        double half = Math.sin(Math.toRadians(disc.phaseAngleDeg() / 2));
        double phaseCorrection = Math.toDegrees(half * half);
        assertThat(cm(disc, "1")).isCloseTo(267.6324, within(0.001)).isCloseTo(268.06 - phaseCorrection, within(0.01));
        assertThat(cm(disc, "2"))
                .isCloseTo(72.2517, within(0.001))
                .isCloseTo(72.74 - phaseCorrection - 0.055, within(0.01));
        // The same chapter's low-accuracy method, run in a public library: two hundredths of a degree of latitude, five
        // of longitude.
        assertThat(disc.subEarth().latCentricDeg()).isCloseTo(-2.496, within(0.02));
        assertThat(disc.subSolar().latCentricDeg()).isCloseTo(-2.194, within(0.02));
        assertThat(cm(disc, "1")).isCloseTo(268.12 - phaseCorrection, within(0.06));
        assertThat(cm(disc, "2")).isCloseTo(72.79 - phaseCorrection - 0.055, within(0.06));
    }

    /** An independent numpy computation on DE405: 348.93023 deg, 2.86606 deg, light time 2040.770 s. */
    @Test
    @Tag("truth")
    void independentComputationOnTheSameEphemeris() {
        ApparentDisc disc = sky().disc(planet(), UtcTime.parse("2024-12-07T20:00:00Z"));
        assertThat(cm(disc, "3")).isCloseTo(348.93023, within(0.0002));
        assertThat(disc.subEarth().latCentricDeg()).isCloseTo(2.86606, within(0.0001));
        assertThat(disc.lightTimeS()).isCloseTo(2040.770, within(0.002));
    }

    /** Trade check values, IAU model on ERFA's planet places (two hundredths of a degree) and a published diameter. */
    @Test
    @Tag("truth")
    void tradeCheckValues() {
        ApparentDisc disc = sky().disc(planet(), UtcTime.parse("2023-11-03T00:00:00Z"));
        assertThat(cm(disc, "1")).isCloseTo(102.03, within(0.02));
        assertThat(cm(disc, "2")).isCloseTo(247.80, within(0.02));
        assertThat(cm(disc, "3")).isCloseTo(285.37, within(0.02));
        assertThat(disc.diameterEquatorialArcsec()).isCloseTo(49.5, within(0.05));
        assertThat(disc.phaseAngleDeg()).isCloseTo(0.29, within(0.005));
    }

    private double cm(ApparentDisc disc, String system) {
        return disc.centralMeridianDeg(planet().globe().system(system).orElseThrow());
    }

    /** Definitions of the three systems, periods from memory. */
    @Test
    @Tag("truth")
    void rotationPeriods() {
        assertThat(periodS("1")).isCloseTo(9 * 3600 + 50 * 60 + 30.003, within(0.001));
        assertThat(periodS("2")).isCloseTo(9 * 3600 + 55 * 60 + 40.632, within(0.001));
        assertThat(periodS("3")).isCloseTo(9 * 3600 + 55 * 60 + 29.711, within(0.001));
    }

    private double periodS(String id) {
        return 360 / planet().globe().system(id).orElseThrow().degPerDay() * 86400;
    }

    /** Published values of shape: 22.5 graphic is 19.911 centric, 30 centric is 33.434 graphic, 66 666 km from the axis at 22.5 graphic. */
    @Test
    @Tag("truth")
    void latitudesOfBothKinds() {
        assertThat(planet().globe().figure().centricFromGraphicDeg(22.5)).isCloseTo(19.911, within(0.0006));
        assertThat(planet().globe().figure().graphicFromCentricDeg(30)).isCloseTo(33.434, within(0.0006));
        assertThat(planet().globe().figure().axisDistanceKm(22.5)).isCloseTo(66666, within(1.0));
    }

    @Test
    void equatorialFeaturesAreInSystemOneTheRestInTwo() {
        RotationSystem equatorial = planet().customarySystem(7);
        assertThat(equatorial.label()).isEqualTo("System I");
        assertThat(planet().customarySystem(-22.5).label()).isEqualTo("System II");
        assertThat(planet().globe().iauSystem().label()).isEqualTo("System III");
    }
}
