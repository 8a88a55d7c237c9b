/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import oblate.sky.GroundSky;
import oblate.sky.Sky;
import oblate.sky.Standpoint;

/** Where moons were looked at from: the place of a picture, or the Earth's centre where that is not known. Belongs to one thread. */
final class Standpoints {
    /**
     * Standard error (km) of one coordinate of a place that may be anywhere on the half of the Earth turned to the planet, seen from there: the radius over the root of
     * three.
     */
    private static final double ANYWHERE_KM = 6378.1366 / Math.sqrt(3);

    private static final double AU_KM = 149_597_870.7;

    private final Sky sky;
    private final Map<ShotSite, GroundSky> known = new HashMap<>();

    Standpoints(Sky sky) {
        this.sky = sky;
    }

    Sky sky() {
        return sky;
    }

    Standpoint of(Optional<ShotSite> site) {
        return site.isPresent() ? known.computeIfAbsent(site.get(), s -> GroundSky.over(sky, s.ground())) : sky;
    }

    /**
     * How far (any length, as a standard error along one direction) a moon that stands so far before or behind its planet's centre may be seen aside of where it is
     * foretold; 0 with a known place.
     *
     * @param depth before the centre (any length), negative behind it
     */
    static double unknownShift(Optional<ShotSite> site, double depth, double planetAu) {
        return site.isPresent() ? 0 : ANYWHERE_KM * depth / (planetAu * AU_KM);
    }
}
