/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * Three coordinates; whoever hands one out says in which unit and frame.
 *
 * @param x first
 * @param y second
 * @param z third
 */
public record Vec3(double x, double y, double z) {

    /** Unit vector toward a longitude (rad) and latitude (rad). */
    static Vec3 toward(double lonRad, double latRad) {
        double cos = Math.cos(latRad);
        return new Vec3(cos * Math.cos(lonRad), cos * Math.sin(lonRad), Math.sin(latRad));
    }

    /** Sum. */
    public Vec3 plus(Vec3 o) {
        return new Vec3(x + o.x, y + o.y, z + o.z);
    }

    /** Sum with another vector times a factor. */
    public Vec3 plus(double factor, Vec3 o) {
        return new Vec3(x + factor * o.x, y + factor * o.y, z + factor * o.z);
    }

    /** Difference. */
    public Vec3 minus(Vec3 o) {
        return new Vec3(x - o.x, y - o.y, z - o.z);
    }

    /** Multiple. */
    public Vec3 times(double factor) {
        return new Vec3(x * factor, y * factor, z * factor);
    }

    /** Scalar product. */
    public double dot(Vec3 o) {
        return x * o.x + y * o.y + z * o.z;
    }

    /** Vector product. */
    public Vec3 cross(Vec3 o) {
        return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
    }

    /** Length. */
    public double norm() {
        return Math.sqrt(dot(this));
    }

    /** The vector of length 1 in the same direction. */
    public Vec3 unit() {
        return times(1 / norm());
    }

    /** Angle to another vector (rad, 0…π), accurate for small ones too. */
    double angleRad(Vec3 o) {
        return Math.atan2(cross(o).norm(), dot(o));
    }

    /** Longitude (deg, 0…360) = right ascension when the frame is equatorial. */
    double lonDeg() {
        return Angles.wrapDeg(Math.toDegrees(Math.atan2(y, x)));
    }

    /** Latitude (deg) = declination when the frame is equatorial. */
    double latDeg() {
        return Math.toDegrees(Math.atan2(z, Math.hypot(x, y)));
    }
}
