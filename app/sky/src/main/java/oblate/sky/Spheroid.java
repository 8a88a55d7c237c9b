/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * Shape of a planet: an ellipsoid of revolution.
 *
 * @param equatorialRadiusKm equatorial radius (km), positive
 * @param polarRadiusKm polar radius (km), positive, not above the equatorial
 * @param source paper the radii are from
 */
public record Spheroid(double equatorialRadiusKm, double polarRadiusKm, String source) {

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException when a radius is not positive, or the polar one is the larger
     */
    public Spheroid {
        if (!(equatorialRadiusKm > 0 && polarRadiusKm > 0 && polarRadiusKm <= equatorialRadiusKm)) {
            throw new IllegalArgumentException("radii " + equatorialRadiusKm + ", " + polarRadiusKm + " km");
        }
    }

    /** Polar over equatorial radius, 0…1. */
    public double polarRatio() {
        return polarRadiusKm / equatorialRadiusKm;
    }

    /** Flattening (a − b)/a, 0…1. */
    public double flattening() {
        return 1 - polarRatio();
    }

    /** Planetographic latitude (deg) of the surface point with a planetocentric latitude (deg, −90…90): tan g = (a/b)² tan c. */
    public double graphicFromCentricDeg(double latCentricDeg) {
        return scaledLatitude(latCentricDeg, 1 / (polarRatio() * polarRatio()));
    }

    /** Planetocentric latitude (deg) of the surface point with a planetographic latitude (deg, −90…90). */
    public double centricFromGraphicDeg(double latGraphicDeg) {
        return scaledLatitude(latGraphicDeg, polarRatio() * polarRatio());
    }

    private static double scaledLatitude(double latDeg, double factor) {
        double lat = Math.toRadians(latDeg);
        return Math.toDegrees(Math.atan2(factor * Math.sin(lat), Math.cos(lat)));
    }

    /** Distance from the spin axis (km) at a planetographic latitude (deg): a cos g / √(1 − e² sin² g). */
    public double axisDistanceKm(double latGraphicDeg) {
        double lat = Math.toRadians(latGraphicDeg);
        double e2 = 1 - polarRatio() * polarRatio();
        double sin = Math.sin(lat);
        return equatorialRadiusKm * Math.cos(lat) / Math.sqrt(1 - e2 * sin * sin);
    }

    /** Short over long axis of the outline seen from a planetocentric latitude (deg): √(sin² B + (b/a)² cos² B). */
    public double apparentAxisRatio(double subObserverLatCentricDeg) {
        double b = Math.toRadians(subObserverLatCentricDeg);
        return Math.hypot(Math.sin(b), polarRatio() * Math.cos(b));
    }
}
