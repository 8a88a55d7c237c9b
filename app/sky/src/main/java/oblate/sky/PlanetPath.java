/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;

/**
 * A planet's centre as it moves about the time its light leaves for the Earth.
 *
 * <p>The ephemeris has the barycentres of the outer planets' systems. The planet's centre stands off by −Σ (mass share × moon), up to 220 km for
 * Jupiter; over the minutes of interest that offset is as good as fixed.
 *
 * @param ephemeris where the barycentre stands
 * @param body number of the body there
 * @param offsetKm centre minus barycentre (km)
 */
record PlanetPath(Ephemeris ephemeris, int body, Vec3 offsetKm) {

    /** About the light that reaches a place at a moment. */
    static PlanetPath seenFrom(Vec3 placeKm, double tdbDays, PlanetModel planet, Ephemeris ephemeris) {
        int body = planet.globe().deBody();
        Vec3 way = LightPath.seen(placeKm, tdbDays, when -> ephemeris.bodyKm(body, when));
        double emitted = tdbDays - way.norm() / Starlight.C_KM_PER_DAY;
        return new PlanetPath(ephemeris, body, offsetKm(planet.moons(), emitted));
    }

    private static Vec3 offsetKm(List<MoonFacts> moons, double tdbDays) {
        Vec3 offset = new Vec3(0, 0, 0);
        for (MoonFacts moon : moons) {
            MoonMotion motion = moon.motion();
            if (moon.massShare() > 0 && tdbDays >= motion.firstTdbDay() && tdbDays <= motion.lastTdbDay()) {
                offset = offset.plus(-moon.massShare(), motion.fromPlanetKm(tdbDays));
            }
        }
        return offset;
    }

    /** The planet's centre (km, barycentric) at a moment near. */
    Vec3 centreKm(double tdbDays) {
        return ephemeris.bodyKm(body, tdbDays).plus(offsetKm);
    }
}
