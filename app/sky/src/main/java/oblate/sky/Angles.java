/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** Turning of angles into the ranges this stage promises. */
final class Angles {
    /** Arc seconds in a radian. */
    static final double ARCSEC_PER_RAD = 648000 / Math.PI;

    private Angles() {}

    /** The same angle in 0…360 (deg), 360 itself excluded. */
    static double wrapDeg(double deg) {
        double wrapped = deg % 360;
        if (wrapped < 0) {
            wrapped += 360;
        }
        // a tiny negative angle rounds up to the full turn
        return wrapped >= 360 ? 0 : wrapped;
    }

    /** Position angle (deg, 0…360, from north through east) of a direction as seen at a place on the sky; both in one equatorial frame. */
    static double positionAngleDeg(Vec3 place, Vec3 direction) {
        Vec3 east = new Vec3(-place.y(), place.x(), 0).unit();
        Vec3 north = place.unit().cross(east);
        return wrapDeg(Math.toDegrees(Math.atan2(direction.dot(east), direction.dot(north))));
    }
}
