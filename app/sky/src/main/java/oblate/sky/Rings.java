/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * Rings in the planet's equator, for drawing and aspects.
 *
 * @param innerRadiusKm inner edge of what is drawn (km)
 * @param outerRadiusKm outer edge of the bright rings (km)
 * @param source where the radii are from
 */
public record Rings(double innerRadiusKm, double outerRadiusKm, String source) {}
