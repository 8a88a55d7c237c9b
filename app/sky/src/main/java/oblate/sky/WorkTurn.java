/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** A turn of the axes that is changed in place; see {@link Turn}. Belongs to one thread. */
final class WorkTurn {
    final WorkVec3 xAxis = new WorkVec3();
    final WorkVec3 yAxis = new WorkVec3();
    final WorkVec3 zAxis = new WorkVec3();

    /** Room for {@link EarthAxis}: cosines and sines of multiples of its arguments, and nutation in obliquity. */
    final double[] cosines = new double[EarthAxis.ANGLES];

    final double[] sines = new double[EarthAxis.ANGLES];
    double obliquityNutationRad;

    void reset() {
        xAxis.set(1, 0, 0);
        yAxis.set(0, 1, 0);
        zAxis.set(0, 0, 1);
    }

    /** Then about the new x axis by an angle (rad). */
    void thenX(double rad) {
        mix(yAxis, zAxis, rad);
    }

    /** Then about the new z axis by an angle (rad). */
    void thenZ(double rad) {
        mix(xAxis, yAxis, rad);
    }

    private static void mix(WorkVec3 first, WorkVec3 second, double rad) {
        double sin = Math.sin(rad);
        double cos = Math.cos(rad);
        double x = first.x;
        double y = first.y;
        double z = first.z;
        first.scale(cos).add(sin, second);
        second.scale(cos);
        second.set(second.x - sin * x, second.y - sin * y, second.z - sin * z);
    }

    /** Coordinates in the new frame of a vector given in the old one. */
    void apply(WorkVec3 v) {
        v.set(xAxis.dot(v), yAxis.dot(v), zAxis.dot(v));
    }

    Turn frozen() {
        return new Turn(xAxis.frozen(), yAxis.frozen(), zAxis.frozen());
    }
}
