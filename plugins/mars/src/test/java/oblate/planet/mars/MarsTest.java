/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.mars;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.sky.ApparentDisc;
import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class MarsTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Mars();
    }

    /**
     * Meeus, Astronomical Algorithms, 2nd ed., example 42.a (Mars, 1992-11-09 0h UT), handbook's figures from memory. Its rotation elements are
     * older than the IAU's of 2015 by 0.02 deg of longitude; its diameter is 9.36 arcsec at 1 au.
     */
    @Test
    @Tag("truth")
    void handbookExampleDiffersOnlyByItsOlderElements() {
        ApparentDisc disc = sky().disc(planet(), UtcTime.parse("1992-11-08T23:59:59.8Z"));
        assertThat(disc.subEarth().latCentricDeg()).isCloseTo(12.44, within(0.005));
        assertThat(disc.subSolar().latCentricDeg()).isCloseTo(-2.76, within(0.005));
        assertThat(111.55 - disc.subEarth().iauLonDeg()).isCloseTo(0.02, within(0.005));
        assertThat(disc.northPolePaDeg()).isCloseTo(347.64, within(0.005));
        assertThat(disc.defectPaDeg()).isCloseTo(279.91, within(0.005));
        assertThat(9.36 / disc.distanceAu()).isCloseTo(10.75, within(0.005));
        assertThat(disc.diameterEquatorialArcsec()).isCloseTo(10.7588, within(0.0002));
        assertThat(disc.illuminatedFraction()).isCloseTo(0.9012, within(0.00006));
    }

    /** In hours, 24 h 37 min 22.66 s; published value, from memory. */
    @Test
    @Tag("truth")
    void rotationPeriod() {
        double turns = planet().globe().iauSystem().degPerDay() / 360;
        assertThat(24 / turns).isCloseTo(24.622962, within(0.0000005));
    }
}
