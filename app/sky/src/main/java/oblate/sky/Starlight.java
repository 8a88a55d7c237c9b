/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * From the geometric direction of a planet to its apparent one: the Sun's bending of light, then aberration.
 *
 * <p>Formulas: Explanatory Supplement to the Astronomical Almanac, 3rd ed., ch. 7, in the form of the IAU SOFA routines "ld" and "ab".
 */
final class Starlight {
    static final double C_KM_PER_DAY = 299792.458 * 86400;
    static final double AU_KM = 149597870.7;

    /** Schwarzschild radius of the Sun (au). */
    private static final double SUN_SCHWARZSCHILD_AU = 1.97412574336e-8;

    /** Keeps the formula finite for lines of sight through the Sun itself. */
    private static final double DEFLECTION_LIMIT = 1e-6;

    private Starlight() {}

    /**
     * Direction (unit vector) after bending by the Sun.
     *
     * @param toPlanet unit vector Earth to planet
     * @param sunToPlanet vector Sun to planet, any length
     * @param sunToEarthKm vector Sun to Earth (km)
     */
    static Vec3 bent(Vec3 toPlanet, Vec3 sunToPlanet, Vec3 sunToEarthKm) {
        Vec3 q = sunToPlanet.unit();
        Vec3 e = sunToEarthKm.unit();
        double closeness = Math.max(q.dot(q.plus(e)), DEFLECTION_LIMIT);
        double weight = SUN_SCHWARZSCHILD_AU * AU_KM / sunToEarthKm.norm() / closeness;
        return toPlanet.plus(weight, toPlanet.cross(e.cross(q))).unit();
    }

    /**
     * Direction (unit vector) as seen by the moving Earth.
     *
     * @param natural unit vector to the planet
     * @param velocityC Earth's velocity about the barycentre in units of the speed of light
     * @param sunDistanceKm distance of the Earth from the Sun (km)
     */
    static Vec3 aberrated(Vec3 natural, Vec3 velocityC, double sunDistanceKm) {
        double pdv = natural.dot(velocityC);
        double shrink = Math.sqrt(1 - velocityC.dot(velocityC));
        double w1 = 1 + pdv / (1 + shrink);
        double w2 = SUN_SCHWARZSCHILD_AU * AU_KM / sunDistanceKm;
        return natural.times(shrink)
                .plus(w1, velocityC)
                .plus(w2, velocityC.plus(-pdv, natural))
                .unit();
    }
}
