/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.venus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.sky.ApparentDisc;
import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;
import oblate.sky.UtcTime;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class VenusTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Venus();
    }

    /** Meeus, Astronomical Algorithms, 2nd ed., example 41.a (Venus, 1992-12-20 0h TT), handbook's figures from memory. */
    @Test
    @Tag("truth")
    void handbookExampleOfPhase() {
        ApparentDisc disc = sky().disc(planet(), UtcTime.parse("1992-12-19T23:59:00.8Z"));
        assertThat(disc.illuminatedFraction()).isCloseTo(0.647, within(0.0006));
        assertThat(disc.phaseAngleDeg()).isCloseTo(72.96, within(0.006));
    }

    /** In days, backwards; published value (Magellan radar, in the IAU reports since 1991), from memory. */
    @Test
    @Tag("truth")
    void rotationPeriod() {
        double turns = planet().globe().iauSystem().degPerDay() / 360;
        assertThat(-1 / turns).isCloseTo(243.0185, within(0.00005));
    }
}
