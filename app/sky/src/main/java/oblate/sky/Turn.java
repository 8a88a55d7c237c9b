/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** A turn of the axes, given by where the new axes point in the old frame. */
record Turn(Vec3 xAxis, Vec3 yAxis, Vec3 zAxis) {
    static final Turn NONE = new Turn(new Vec3(1, 0, 0), new Vec3(0, 1, 0), new Vec3(0, 0, 1));

    /** Then about the new x axis by an angle (rad). */
    Turn thenX(double rad) {
        double sin = Math.sin(rad);
        double cos = Math.cos(rad);
        return new Turn(
                xAxis, yAxis.times(cos).plus(sin, zAxis), zAxis.times(cos).plus(-sin, yAxis));
    }

    /** Then about the new z axis by an angle (rad). */
    Turn thenZ(double rad) {
        double sin = Math.sin(rad);
        double cos = Math.cos(rad);
        return new Turn(xAxis.times(cos).plus(sin, yAxis), yAxis.times(cos).plus(-sin, xAxis), zAxis);
    }

    /** Coordinates in the new frame of a vector given in the old one. */
    Vec3 apply(Vec3 v) {
        return new Vec3(xAxis.dot(v), yAxis.dot(v), zAxis.dot(v));
    }

    /** Coordinates in the old frame of a vector given in the new one. */
    Vec3 undo(Vec3 v) {
        return xAxis.times(v.x()).plus(v.y(), yAxis).plus(v.z(), zAxis);
    }
}
