/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.uranus;

import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;

class UranusTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Uranus();
    }
}
