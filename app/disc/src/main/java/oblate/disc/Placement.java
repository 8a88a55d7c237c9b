/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Where a disc lies in a picture.
 *
 * <p>The direction of the north pole in pixels is (−sin a, −cos a) for pole angle a, whether mirrored or not. With north up and not mirrored
 * (sky sense) celestial west is on the right: towards (cos a, −sin a); mirrored, the opposite.
 *
 * @param centreXPx centre of the whole globe, not of its lit part (px)
 * @param centreYPx the same, down (px)
 * @param equatorialRadiusPx equatorial radius (px), positive
 * @param poleAngleDeg direction of the IAU north pole from straight up, counter-clockwise as displayed (deg, −180…180)
 * @param mirrored whether the picture is a mirror image of the sky
 */
public record Placement(
        double centreXPx, double centreYPx, double equatorialRadiusPx, double poleAngleDeg, boolean mirrored) {

    /**
     * Brings the angle into range.
     *
     * @throws IllegalArgumentException when a number is not finite or the radius not positive
     */
    public Placement {
        if (!Double.isFinite(centreXPx + centreYPx + poleAngleDeg) || !(equatorialRadiusPx > 0)) {
            throw new IllegalArgumentException(
                    centreXPx + " " + centreYPx + " " + equatorialRadiusPx + " " + poleAngleDeg);
        }
        poleAngleDeg = Math.IEEEremainder(poleAngleDeg, 360);
    }
}
