/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.neptune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class NeptuneTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Neptune();
    }

    /** In hours; Karkoschka 2011, Icarus 215, 439, from memory. */
    @Test
    @Tag("truth")
    void rotationPeriod() {
        double turns = planet().globe().iauSystem().degPerDay() / 360;
        assertThat(24 / turns).isCloseTo(15.9663, within(0.00005));
    }
}
