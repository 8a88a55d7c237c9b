/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.uranus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class UranusTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Uranus();
    }

    /** In hours, backwards; published value (Voyager 2 radio, Desch et al. 1986), from memory. */
    @Test
    @Tag("truth")
    void rotationPeriod() {
        double turns = planet().globe().iauSystem().degPerDay() / 360;
        assertThat(-24 / turns).isCloseTo(17.24, within(0.005));
    }
}
