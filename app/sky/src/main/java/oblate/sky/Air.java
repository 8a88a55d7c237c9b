/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.OptionalDouble;

/**
 * Dry air over a place, as it bends light.
 *
 * <p>Formula of the IAU SOFA routine "refco" for optical wavelengths: two terms in the tangent of the zenith distance, constants after Hohenkerk and
 * Sinclair; good to a few hundredths of an arc second in dispersion above 15 deg and to some arc seconds at 5 deg.
 *
 * @param pressureHpa pressure at the place (hPa)
 * @param temperatureC temperature at the place (°C)
 */
public record Air(double pressureHpa, double temperatureC) {
    static final double GREEN_NM = 550;
    private static final double LOWEST_DEG = 5;

    /** The ICAO standard atmosphere at a height (m): 1013.25 hPa and 15 °C at sea level, 6.5 °C less per kilometre. */
    public static Air standard(double heightM) {
        double cooling = 0.0065 * heightM / 288.15;
        return new Air(1013.25 * Math.pow(1 - cooling, 5.2559), 15 - 0.0065 * heightM);
    }

    /**
     * How far the air lifts a light (arcsec).
     *
     * @param altitudeDeg altitude without refraction (deg)
     * @param wavelengthNm 300…1100
     * @return empty below 5 deg
     */
    public OptionalDouble refractionArcsec(double altitudeDeg, double wavelengthNm) {
        if (!(altitudeDeg >= LOWEST_DEG)) {
            return OptionalDouble.empty();
        }
        double kelvin = temperatureC + 273.15;
        double um2 = wavelengthNm * wavelengthNm * 1e-6;
        double gamma = (77.53484e-6 + (4.39108e-7 + 3.666e-9 / um2) / um2) * pressureHpa / kelvin;
        double beta = 4.4474e-6 * kelvin;
        double a = gamma * (1 - beta);
        double b = -gamma * (beta - gamma / 2);
        double zenithDistance = Math.toRadians(90 - altitudeDeg);
        double lift = 0;
        // the formula takes the zenith distance as seen
        for (int i = 0; i < 4; i++) {
            double tan = Math.tan(zenithDistance - lift);
            lift = tan * (a + b * tan * tan);
        }
        return OptionalDouble.of(lift * Angles.ARCSEC_PER_RAD);
    }
}
