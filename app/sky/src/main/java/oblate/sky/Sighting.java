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
record Sighting(EarthView earth, PlanetPath path, double emittedTdbDays, Vec3 toPlanetKm, Vec3 planetToSunKm) {}
