/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import oblate.archive.Site;
import oblate.sky.GroundSite;
import oblate.sky.GroundSky;
import oblate.sky.Sky;
import oblate.sky.Standpoint;

/** The sky over each site that was looked at, made once. Safe for many threads. */
final class Grounds {
    private final Sky sky;
    private final Map<Site, GroundSky> known = new ConcurrentHashMap<>();

    Grounds(Sky sky) {
        this.sky = sky;
    }

    Sky sky() {
        return sky;
    }

    /** The sky over a site; none without one. */
    Optional<GroundSky> over(Optional<Site> site) {
        return site.map(s -> known.computeIfAbsent(
                s, k -> GroundSky.over(sky, new GroundSite(k.latDeg(), k.lonDeg(), k.heightM()))));
    }

    /** Where moons are looked at from: the site, or the Earth's centre without one. */
    Standpoint from(Optional<Site> site) {
        Optional<GroundSky> ground = over(site);
        return ground.isPresent() ? ground.get() : sky;
    }
}
