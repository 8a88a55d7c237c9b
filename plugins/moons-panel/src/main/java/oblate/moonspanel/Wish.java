/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.Optional;
import oblate.archive.Site;
import oblate.sky.PlanetModel;
import oblate.sky.TimeSpan;

/**
 * What the table is asked for.
 *
 * @param planet a planet with moons
 * @param site the place; none for the Earth's centre
 * @param span the time
 */
record Wish(PlanetModel planet, Optional<Site> site, TimeSpan span) {}
