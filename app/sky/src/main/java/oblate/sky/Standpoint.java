/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;

/**
 * Where moons are looked at from: the Earth's centre ({@link Sky}) or a place on the ground ({@link GroundSky}). Seen
 * from the ground a moon that stands {@code z} before or behind its planet's centre shifts against it by up to {@code z} times the Earth's radius over the
 * planet's distance: 5 km for Io, 20 km for Callisto.
 */
public interface Standpoint {

    /**
     * The planet's moons and their shadows, in the order the planet lists them.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#NO_MOONS} for a planet without, {@link SkyProblem#OUTSIDE_MOONS} outside the span of
     *     their motion, {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    List<MoonPlace> moons(PlanetModel planet, UtcTime time);

    /** A planet with the Sun and this place as points that move. */
    PlanetSystem system(PlanetModel planet);
}
