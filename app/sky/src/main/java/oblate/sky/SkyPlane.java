/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * The plane through a planet's centre across the line of sight, in units of the equatorial radius.
 *
 * @param toCentreKm Earth to the planet's centre
 * @param toward unit vector along it
 * @param west unit vector to celestial west along the planet's equator as seen
 * @param north unit vector across it, to the planet's north
 * @param radiusKm unit of length
 */
record SkyPlane(Vec3 toCentreKm, Vec3 toward, Vec3 west, Vec3 north, double radiusKm) {

    static SkyPlane of(Vec3 toCentreKm, Vec3 pole, double radiusKm) {
        Vec3 toward = toCentreKm.unit();
        Vec3 north = pole.plus(-pole.dot(toward), toward).unit();
        return new SkyPlane(toCentreKm, toward, toward.cross(north), north, radiusKm);
    }

    /** x west, y north, z toward the Earth (radii) of what stands at a vector from the Earth (km); x and y with perspective. */
    Vec3 place(Vec3 fromEarthKm) {
        double depth = fromEarthKm.dot(toward);
        double distance = toCentreKm.norm();
        Vec3 inPlane = fromEarthKm.times(distance / depth);
        return new Vec3(inPlane.dot(west) / radiusKm, inPlane.dot(north) / radiusKm, (distance - depth) / radiusKm);
    }
}
