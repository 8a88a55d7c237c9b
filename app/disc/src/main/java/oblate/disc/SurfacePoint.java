/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import oblate.sky.ApparentDisc;
import oblate.sky.RotationSystem;

/**
 * A place on the globe as seen in one picture.
 *
 * @param lonIauDeg planetographic longitude in the IAU's system, counted as the planet's sense says (deg, 0…360)
 * @param latGraphicDeg planetographic latitude (deg, −90…90)
 * @param latCentricDeg planetocentric latitude (deg, −90…90)
 * @param emissionDeg angle between the local vertical and the line of sight (deg, 0…90)
 * @param incidenceDeg angle between the local vertical and the Sun (deg, 0…180; above 90 unlit)
 * @param fromMeridianDeg longitude minus central meridian, positive when the longitude is the larger (deg, −180…180)
 */
public record SurfacePoint(
        double lonIauDeg,
        double latGraphicDeg,
        double latCentricDeg,
        double emissionDeg,
        double incidenceDeg,
        double fromMeridianDeg) {

    /** Longitude (deg, 0…360) in a system, at the instant of a disc. */
    public double lonDeg(ApparentDisc disc, RotationSystem system) {
        return disc.convertLonDeg(lonIauDeg, disc.planet().globe().iauSystem(), system);
    }
}
