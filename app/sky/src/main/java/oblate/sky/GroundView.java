/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * Where a planet stands in the sky of a place. Good to 0.005 deg in altitude and azimuth: UT1 is taken for UTC, which it follows within 0.9 s.
 *
 * @param time when
 * @param raDeg right ascension (deg, 0…360), true equator and equinox of date, apparent, with parallax and the turning Earth's aberration
 * @param decDeg declination (deg), same frame
 * @param hourAngleDeg angle west of the meridian (deg, −180…180)
 * @param distanceAu distance from the place (au), light time removed
 * @param altitudeDeg altitude of the planet's centre (deg), without refraction
 * @param azimuthDeg azimuth from north through east (deg, 0…360)
 * @param parallacticAngleDeg position angle of the zenith at the planet (deg, −180…180, from true north through east; positive west of the meridian)
 * @param sunAltitudeDeg altitude of the Sun's centre (deg), without refraction
 * @param sunSeparationDeg angle between planet and Sun as seen (deg, 0…180)
 * @param air the air over the place
 */
public record GroundView(
        UtcTime time,
        double raDeg,
        double decDeg,
        double hourAngleDeg,
        double distanceAu,
        double altitudeDeg,
        double azimuthDeg,
        double parallacticAngleDeg,
        double sunAltitudeDeg,
        double sunSeparationDeg,
        Air air) {
    /** Nearer than this the Sun may get into an unfiltered telescope or its finder (deg). */
    private static final double SUN_DANGER_DEG = 30;

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

    /**
     * How much air the light comes through, 1 from the zenith; NaN below the horizon. Formula: Pickering 2002 (DIO 12, 20), from the altitude as seen; 38 at the
     * horizon.
     */
    public double airMass() {
        double h = refractedAltitudeDeg();
        return h < 0 ? Double.NaN : 1 / Math.sin(Math.toRadians(h + 244 / (165 + 47 * Math.pow(h, 1.1))));
    }

    /** How light it is. */
    public Twilight twilight() {
        return Twilight.of(sunAltitudeDeg);
    }

    /** Whether to warn of the Sun: it is up, or about to rise, and within 30 deg of the planet. */
    public boolean isSunDangerous() {
        return sunSeparationDeg < SUN_DANGER_DEG && sunAltitudeDeg > -3;
    }
}
