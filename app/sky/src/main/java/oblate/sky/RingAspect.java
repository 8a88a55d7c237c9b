/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * How rings in the planet's equator are seen.
 *
 * @param openingEarthDeg B, planetocentric latitude of the Earth (deg, north positive)
 * @param openingSunDeg B′, that of the Sun (deg)
 * @param outerSemiMajorArcsec semi-major axis of the outer edge as seen (arcsec)
 * @param outerSemiMinorArcsec its semi-minor axis (arcsec, not negative)
 */
public record RingAspect(
        double openingEarthDeg, double openingSunDeg, double outerSemiMajorArcsec, double outerSemiMinorArcsec) {}
