/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * What the Earth sees of a planet, as vectors on ICRF axes.
 *
 * @param earth the observer
 * @param path how the planet's centre moves
 * @param emittedTdbDays when the light left the planet, days of TDB from J2000
 * @param toPlanetKm Earth now to planet then
 * @param planetToSunKm planet then to the Sun one light time earlier still
 */
record Sighting(EarthView earth, PlanetPath path, double emittedTdbDays, Vec3 toPlanetKm, Vec3 planetToSunKm) {

    static Sighting of(PlanetModel planet, EarthView earth, Ephemeris ephemeris) {
        double t = earth.moment().tdbDays();
        PlanetPath path = PlanetPath.seenFrom(earth.placeKm(), t, planet, ephemeris);
        Vec3 toPlanet = LightPath.seen(earth.placeKm(), t, path::centreKm);
        double emitted = t - toPlanet.norm() / Starlight.C_KM_PER_DAY;
        Vec3 planetPlace = earth.placeKm().plus(toPlanet);
        Vec3 toSun = LightPath.seen(planetPlace, emitted, when -> ephemeris.bodyKm(Ephemeris.SUN, when));
        return new Sighting(earth, path, emitted, toPlanet, toSun);
    }
}
