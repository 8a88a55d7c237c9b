/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.mercury;

import oblate.sky.PlanetContract;
import oblate.sky.PlanetModel;

class MercuryTest extends PlanetContract {
    @Override
    protected PlanetModel planet() {
        return new Mercury();
    }
}
