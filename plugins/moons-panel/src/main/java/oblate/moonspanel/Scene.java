/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import java.util.Optional;
import oblate.archive.Site;
import oblate.sky.ApparentDisc;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
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

    /** @param site where the moons are looked at from; none for the Earth's centre */
    static Scene at(Grounds grounds, Optional<Site> site, PlanetModel planet, UtcTime time) {
        return new Scene(grounds.sky().disc(planet, time), grounds.from(site).moons(planet, time));
    }

    /** How far the outermost moon stands from the centre as seen (equatorial radii), at least 3. */
    double reachRadii() {
        return moons.stream()
                .mapToDouble(m -> Math.hypot(m.xWestRadii(), m.yNorthRadii()))
                .reduce(3, Math::max);
    }
}
