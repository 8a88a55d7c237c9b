/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.mercury;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class MercuryTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Mercury();
    }

    /** In days: Mercury turns three times in two of its years of 87.9691 d, a lock that radar has shown; published value of the year, from memory. */
    @Test
    @Tag("truth")
    void rotationPeriod() {
        double turns = planet().globe().iauSystem().degPerDay() / 360;
        assertThat(1 / turns).isCloseTo(87.9691 * 2 / 3, within(0.0002));
    }
}
