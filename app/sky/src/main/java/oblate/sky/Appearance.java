/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * How a planet looks, for starts of fits and for drawing; never a measured result.
 *
 * @param limbDarkening exponent k of brightness ∝ (cos incidence)^k (cos emission)^(k−1) to start from, 0.5…1
 * @param drawingRgb colour to draw the planet with, 0xRRGGBB
 */
public record Appearance(double limbDarkening, int drawingRgb) {}
