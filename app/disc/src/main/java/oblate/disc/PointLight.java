/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * A small bright thing beside the disc: a moon, a star, or dirt.
 *
 * @param xPx where, right (px)
 * @param yPx where, down (px)
 * @param sigmaPx standard error in each direction (px)
 * @param peak how far it stands above its surroundings, in units of the picture's bright parts
 * @param widthPx root of its mean square radius (px)
 */
public record PointLight(double xPx, double yPx, double sigmaPx, double peak, double widthPx) {}
