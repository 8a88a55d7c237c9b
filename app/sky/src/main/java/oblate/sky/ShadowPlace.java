/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * Where the axis of a moon's shadow meets its planet's globe, seen from the Earth.
 *
 * @param dRaCosDecArcsec as for a moon (arcsec)
 * @param dDecArcsec as for a moon (arcsec)
 * @param xWestRadii as for a moon (equatorial radii)
 * @param yNorthRadii as for a moon (equatorial radii)
 * @param lonIauDeg planetographic longitude in the IAU's system (deg, 0…360, counted as the planet's)
 * @param latGraphicDeg planetographic latitude (deg)
 */
public record ShadowPlace(
        double dRaCosDecArcsec,
        double dDecArcsec,
        double xWestRadii,
        double yNorthRadii,
        double lonIauDeg,
        double latGraphicDeg) {}
