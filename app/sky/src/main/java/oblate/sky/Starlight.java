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
     * Turns the vector from the Earth to a body into its direction after bending by the Sun: p + w p × (e × q).
     *
     * @param body Earth to body (km), set to a unit vector
     * @param toSunKm Earth to Sun
     * @param sunToBody work space
     */
    static void bend(WorkVec3 body, WorkVec3 toSunKm, WorkVec3 sunToBody) {
        sunToBody.set(body).subtract(toSunKm);
        double sunDistance = toSunKm.norm();
        double perLengths = 1 / (sunDistance * sunToBody.norm());
        body.scale(1 / body.norm());
        double closeness = Math.max(1 - sunToBody.dot(toSunKm) * perLengths, DEFLECTION_LIMIT);
        double weight = SUN_SCHWARZSCHILD_AU * AU_KM / sunDistance / closeness * perLengths;
        double alongBody = body.dot(sunToBody);
        double alongSun = body.dot(toSunKm);
        body.add(-weight * alongBody, toSunKm).add(weight * alongSun, sunToBody);
        body.scale(1 / body.norm());
    }

    /**
     * Turns a direction into that seen by the moving Earth.
     *
     * @param natural unit vector to the planet, stays one
     * @param velocityC Earth's velocity about the barycentre in units of the speed of light
     * @param sunDistanceKm distance of the Earth from the Sun (km)
     */
    static void aberrate(WorkVec3 natural, WorkVec3 velocityC, double sunDistanceKm) {
        double pdv = natural.dot(velocityC);
        double shrink = Math.sqrt(1 - velocityC.dot(velocityC));
        double w1 = 1 + pdv / (1 + shrink);
        double w2 = SUN_SCHWARZSCHILD_AU * AU_KM / sunDistanceKm;
        natural.scale(shrink - w2 * pdv).add(w1 + w2, velocityC);
        natural.scale(1 / natural.norm());
    }
}
