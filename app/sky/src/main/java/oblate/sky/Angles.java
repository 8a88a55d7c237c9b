/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** Turning of angles into the ranges this stage promises. */
final class Angles {
    /** Arc seconds in a radian. */
    static final double ARCSEC_PER_RAD = 648000 / Math.PI;

    private Angles() {}

    /** The same angle in 0…360 (deg), 360 itself excluded. */
    static double wrapDeg(double deg) {
        double wrapped = deg - 360 * Math.floor(deg / 360);
        if (wrapped < 0) {
            wrapped += 360;
        }
        // a tiny negative angle rounds up to the full turn
        return wrapped >= 360 ? 0 : wrapped;
    }

    /** Position angle (deg, 0…360, from north through east) of a direction as seen at a place on the sky; both in one equatorial frame. */
    static double positionAngleDeg(Vec3 place, Vec3 direction) {
        return positionAngleDeg(WorkVec3.of(place), WorkVec3.of(direction));
    }

    /** As {@link #positionAngleDeg(Vec3, Vec3)}. */
    static double positionAngleDeg(WorkVec3 place, WorkVec3 direction) {
        // East is (−y, x, 0), north is place × east, longer by the length of the place.
        double east = (place.x * direction.y - place.y * direction.x) * place.norm();
        double north = (place.x * place.x + place.y * place.y) * direction.z
                - place.z * (place.x * direction.x + place.y * direction.y);
        return wrapDeg(Math.toDegrees(Math.atan2(east, north)));
    }
}
