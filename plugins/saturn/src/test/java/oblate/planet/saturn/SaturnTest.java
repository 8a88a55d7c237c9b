/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.saturn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.sky.ApparentDisc;
import oblate.sky.Globe;
import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;
import oblate.sky.RingAspect;
import oblate.sky.RotationSystem;
import oblate.sky.UtcTime;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class SaturnTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Saturn();
    }

    /**
     * Meeus, Astronomical Algorithms, 2nd ed., example 45.a (Saturn's ring, 1992-12-16 0h TT), handbook's figures from memory. Its ring plane differs
     * from the IAU pole by up to 0.03 deg, and its outer edge is 375.35 arcsec at 1 au, 136 115 km against 136 775 km.
     */
    @Test
    @Tag("truth")
    void handbookExampleOfTheRingDiffersOnlyByItsPlaneAndRadius() {
        ApparentDisc disc = sky().disc(planet(), UtcTime.parse("1992-12-15T23:59:00.8Z"));
        RingAspect rings = disc.rings().orElseThrow();
        assertThat(rings.openingEarthDeg()).isCloseTo(16.442, within(0.006)).isCloseTo(16.4380, within(0.001));
        assertThat(rings.openingSunDeg()).isCloseTo(14.679, within(0.006)).isCloseTo(14.6762, within(0.001));
        assertThat(disc.northPolePaDeg()).isCloseTo(6.741, within(0.03)).isCloseTo(6.7159, within(0.01));
        double scale = 375.35 / 2 / 3600 / 180 * Math.PI * 149597870.7 / 136775;
        assertThat(2 * rings.outerSemiMajorArcsec()).isCloseTo(36.0424, within(0.001));
        assertThat(2 * rings.outerSemiMajorArcsec() * scale).isCloseTo(35.87, within(0.006));
        assertThat(2 * rings.outerSemiMinorArcsec()).isCloseTo(10.1992, within(0.001));
        assertThat(2 * rings.outerSemiMinorArcsec() * scale).isCloseTo(10.15, within(0.006));
    }

    /** Periods of common practice, from memory, and of the IAU's rate. */
    @Test
    @Tag("truth")
    void rotationPeriods() {
        assertThat(periodS("1")).isCloseTo(10 * 3600 + 14 * 60, within(0.02));
        assertThat(periodS("2")).isCloseTo(10 * 3600 + 38 * 60 + 25.4, within(0.05));
        assertThat(periodS("3")).isCloseTo(10 * 3600 + 39 * 60 + 22.4, within(0.001));
    }

    private double periodS(String id) {
        return 360 / planet().globe().system(id).orElseThrow().degPerDay() * 86400;
    }

    /** The outline is never as flat as b/a: trade practice, computed from the IAU radii: 0.902 edge-on, 0.923 at 26.7 deg. */
    @Test
    @Tag("truth")
    void outlineIsRounderWhenTheRingsAreOpen() {
        Globe globe = planet().globe();
        assertThat(globe.figure().apparentAxisRatio(0)).isCloseTo(0.902, within(0.0005));
        assertThat(globe.figure().apparentAxisRatio(26.7)).isCloseTo(0.923, within(0.0005));
    }

    @Test
    void equatorialZoneIsInSystemOneTheRestInThree() {
        RotationSystem equatorial = planet().customarySystem(5);
        assertThat(equatorial.id()).isEqualTo("1");
        assertThat(planet().customarySystem(-40.8).id()).isEqualTo("3");
    }
}
