/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * A spot or oval found on the disc, a candidate for a mark.
 *
 * @param place where on the globe
 * @param pixel where in the picture
 * @param bright brighter than its latitude's mean, else darker
 * @param semiLonDeg rough half length along the latitude (deg of longitude)
 * @param semiLatDeg rough half height (deg of latitude)
 * @param contrast difference from its surroundings, as a share of the mean brightness there; negative when dark
 * @param significance how far it stands out, in standard deviations of what the rest of the map does at that scale
 * @param sigmaPx standard error of the pixel in each direction (px)
 */
public record Spot(
        SurfacePoint place,
        PixelPoint pixel,
        boolean bright,
        double semiLonDeg,
        double semiLatDeg,
        double contrast,
        double significance,
        double sigmaPx) {}
