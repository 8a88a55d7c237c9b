/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.neptune;

import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;

class NeptuneTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Neptune();
    }
}
