/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * A place in a picture.
 *
 * @param xPx right from the centre of the top-left pixel (px)
 * @param yPx down from there (px)
 */
public record PixelPoint(double xPx, double yPx) {}
