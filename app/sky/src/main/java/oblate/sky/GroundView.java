/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * Where a planet stands in the sky of a place. Good to 0.005 deg: UT1 is taken for UTC, which it follows within 0.9 s.
 *
 * @param altitudeDeg altitude of the planet's centre (deg), without refraction
 * @param azimuthDeg azimuth from north through east (deg, 0…360)
 * @param parallacticAngleDeg position angle of the zenith at the planet (deg, −180…180, from true north through east; positive west of the meridian)
 * @param sunAltitudeDeg altitude of the Sun's centre (deg), without refraction
 * @param air the air over the place
 */
public record GroundView(
        double altitudeDeg, double azimuthDeg, double parallacticAngleDeg, double sunAltitudeDeg, Air air) {

    /** Altitude lifted by refraction in green light (deg); equals {@link #altitudeDeg()} below 5 deg, where no simple formula holds. */
    public double refractedAltitudeDeg() {
        return altitudeDeg + air.refractionArcsec(altitudeDeg, Air.GREEN_NM).orElse(0) / 3600;
    }

    /**
     * How much higher a short wavelength (nm) is seen than a long one (arcsec), in the vertical; NaN below 5 deg of altitude.
     *
     * @param shortNm 300…1100
     * @param longNm 300…1100
     */
    public double dispersionArcsec(double shortNm, double longNm) {
        return air.refractionArcsec(altitudeDeg, shortNm).orElse(Double.NaN)
                - air.refractionArcsec(altitudeDeg, longNm).orElse(Double.NaN);
    }
}
