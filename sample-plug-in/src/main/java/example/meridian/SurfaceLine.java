/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import java.util.ArrayList;
import java.util.List;
import oblate.sky.Spheroid;

/**
 * The shortest way between two places on an ellipsoid of revolution.
 *
 * @param km its length (km)
 * @param deg angle between the two places seen from the planet's centre (deg)
 */
public record SurfaceLine(double km, double deg) {
    private static final int MOST_STEPS = 200;
    private static final double CLOSE_RAD = 1e-12;

    /**
     * Finds it by T. Vincenty's inverse formula (Survey Review XXIII, 176, 1975). Its series in the flattening leave out terms of the fourth order: at
     * Saturn's flattening below one part in ten thousand.
     *
     * @param eastDeg difference of the longitudes, either sense (deg)
     * @throws IllegalArgumentException when the places are so nearly opposite that the formula does not settle
     */
    public static SurfaceLine between(Spheroid figure, double latA, double latB, double eastDeg) {
        double f = figure.flattening();
        double u1 = Math.atan((1 - f) * Math.tan(Math.toRadians(latA)));
        double u2 = Math.atan((1 - f) * Math.tan(Math.toRadians(latB)));
        double l = Math.toRadians(Math.IEEEremainder(eastDeg, 360));
        double lambda = l;
        for (int i = 0; i < MOST_STEPS; i++) {
            double[] sphere = sphere(u1, u2, lambda);
            double sigma = sphere[0];
            if (sigma == 0) {
                return new SurfaceLine(0, 0);
            }
            double sinAlpha = Math.cos(u1) * Math.cos(u2) * Math.sin(lambda) / Math.sin(sigma);
            double cos2 = 1 - sinAlpha * sinAlpha;
            double mid = cos2 < 1e-15 ? 0 : Math.cos(sigma) - 2 * Math.sin(u1) * Math.sin(u2) / cos2;
            double c = f / 16 * cos2 * (4 + f * (4 - 3 * cos2));
            double next = l
                    + (1 - c)
                            * f
                            * sinAlpha
                            * (sigma
                                    + c * Math.sin(sigma) * (mid + c * Math.cos(sigma) * (2 * mid * mid - 1)));
            if (Math.abs(next - lambda) < CLOSE_RAD) {
                return new SurfaceLine(length(figure, sigma, cos2, mid), centralAngleDeg(figure, latA, latB, eastDeg));
            }
            lambda = next;
        }
        throw new IllegalArgumentException("the two places are nearly opposite");
    }

    private static double[] sphere(double u1, double u2, double lambda) {
        double x = Math.cos(u2) * Math.sin(lambda);
        double y = Math.cos(u1) * Math.sin(u2) - Math.sin(u1) * Math.cos(u2) * Math.cos(lambda);
        double z = Math.sin(u1) * Math.sin(u2) + Math.cos(u1) * Math.cos(u2) * Math.cos(lambda);
        return new double[] {Math.atan2(Math.hypot(x, y), z)};
    }

    private static double length(Spheroid figure, double sigma, double cos2, double mid) {
        double a = figure.equatorialRadiusKm();
        double b = figure.polarRadiusKm();
        double u = cos2 * (a * a - b * b) / (b * b);
        double bigA = 1 + u / 16384 * (4096 + u * (-768 + u * (320 - 175 * u)));
        double bigB = u / 1024 * (256 + u * (-128 + u * (74 - 47 * u)));
        double sin = Math.sin(sigma);
        double cos = Math.cos(sigma);
        double less = bigB
                * sin
                * (mid
                        + bigB
                                / 4
                                * (cos * (2 * mid * mid - 1)
                                        - bigB / 6 * mid * (4 * sin * sin - 3) * (4 * mid * mid - 3)));
        return b * bigA * (sigma - less);
    }

    private static double centralAngleDeg(Spheroid figure, double latA, double latB, double eastDeg) {
        double[] a = direction(figure, latA, 0);
        double[] b = direction(figure, latB, eastDeg);
        double dot = a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        double crossX = a[1] * b[2] - a[2] * b[1];
        double crossY = a[2] * b[0] - a[0] * b[2];
        double crossZ = a[0] * b[1] - a[1] * b[0];
        return Math.toDegrees(Math.atan2(Math.sqrt(crossX * crossX + crossY * crossY + crossZ * crossZ), dot));
    }

    private static double[] direction(Spheroid figure, double latGraphicDeg, double lonDeg) {
        double lat = Math.toRadians(figure.centricFromGraphicDeg(latGraphicDeg));
        double lon = Math.toRadians(lonDeg);
        return new double[] {Math.cos(lat) * Math.cos(lon), Math.cos(lat) * Math.sin(lon), Math.sin(lat)};
    }

    /** Places along the great circle between two directions from the centre: pairs of planetographic latitude and difference of longitude (deg). */
    public static List<double[]> along(Spheroid figure, double latA, double latB, double eastDeg, int pieces) {
        double[] a = direction(figure, latA, 0);
        double[] b = direction(figure, latB, eastDeg);
        List<double[]> places = new ArrayList<>();
        double angle = Math.toRadians(centralAngleDeg(figure, latA, latB, eastDeg));
        for (int i = 0; i <= pieces && angle > 0; i++) {
            double s = Math.sin((1 - i / (double) pieces) * angle) / Math.sin(angle);
            double t = Math.sin(i / (double) pieces * angle) / Math.sin(angle);
            double x = s * a[0] + t * b[0];
            double y = s * a[1] + t * b[1];
            double z = s * a[2] + t * b[2];
            double centric = Math.toDegrees(Math.atan2(z, Math.hypot(x, y)));
            places.add(new double[] {figure.graphicFromCentricDeg(centric), Math.toDegrees(Math.atan2(y, x))});
        }
        return places;
    }
}
