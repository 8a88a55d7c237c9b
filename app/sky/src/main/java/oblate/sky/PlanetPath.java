/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A planet's centre as it moves about the time its light leaves for the Earth.
 *
 * @param ephemeris where the barycentre of the planet's system stands
 * @param body number of the body there
 * @param offsetKm centre minus barycentre (km), as good as fixed over the minutes of interest
 */
record PlanetPath(Ephemeris ephemeris, int body, Vec3 offsetKm) {

    /** The planet's centre (km, barycentric) at a moment near. */
    Vec3 centreKm(double tdbDays) {
        return ephemeris.bodyKm(body, tdbDays).plus(offsetKm);
    }
}
