/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.ZoneId;
import java.util.Optional;

/**
 * A place to observe from.
 *
 * @param name unique name
 * @param latDeg geodetic latitude (deg, north positive)
 * @param lonDeg longitude (deg, east positive)
 * @param heightM height (m)
 * @param zone time zone, for saying local dates only
 */
public record Site(String name, double latDeg, double lonDeg, double heightM, Optional<ZoneId> zone) {}
