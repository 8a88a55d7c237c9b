/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Optional;

/** Where a straight line meets a planet's ellipsoid. */
final class GlobeHit {
    private GlobeHit() {}

    /**
     * First point (km from the centre, ICRF axes) of a line on the ellipsoid, when it runs into it.
     *
     * @param fromKm start of the line, from the planet's centre (km), outside the globe
     * @param along unit vector of its direction
     * @param pole the planet's pole
     * @param figure its shape
     */
    static Optional<Vec3> first(Vec3 fromKm, Vec3 along, Vec3 pole, Spheroid figure) {
        Vec3 o = stretched(fromKm, pole, figure);
        Vec3 d = stretched(along, pole, figure);
        double a = d.dot(d);
        double b = o.dot(d);
        double c = o.dot(o) - figure.equatorialRadiusKm() * figure.equatorialRadiusKm();
        double root = b * b - a * c;
        if (root < 0 || b >= 0) {
            return Optional.empty();
        }
        return Optional.of(fromKm.plus((-b - Math.sqrt(root)) / a, along));
    }

    /** Outward normal (any length) at a point of the ellipsoid. */
    static Vec3 normal(Vec3 pointKm, Vec3 pole, Spheroid figure) {
        return stretched(stretched(pointKm, pole, figure), pole, figure);
    }

    /** The space in which the ellipsoid is a sphere: lengths along the pole times a/b. */
    private static Vec3 stretched(Vec3 v, Vec3 pole, Spheroid figure) {
        return v.plus((1 / figure.polarRatio() - 1) * v.dot(pole), pole);
    }
}
