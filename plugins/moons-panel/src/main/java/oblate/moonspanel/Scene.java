/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import oblate.sky.ApparentDisc;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import oblate.sky.UtcTime;

/**
 * Planet and moons at an instant. Immutable.
 *
 * @param disc the planet
 * @param moons its moons
 */
record Scene(ApparentDisc disc, List<MoonPlace> moons) {
    Scene {
        moons = List.copyOf(moons);
    }

    static Scene at(Sky sky, PlanetModel planet, UtcTime time) {
        return new Scene(sky.disc(planet, time), sky.moons(planet, time));
    }

    /** How far the outermost moon stands from the centre as seen (equatorial radii), at least 3. */
    double reachRadii() {
        return moons.stream()
                .mapToDouble(m -> Math.hypot(m.xWestRadii(), m.yNorthRadii()))
                .reduce(3, Math::max);
    }
}
