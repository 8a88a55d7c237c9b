/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A moon as its planet's plug-in declares it.
 *
 * @param id lower-case English name, e.g. "io"
 * @param name as written, e.g. "Io"
 * @param radiusKm mean radius (km)
 * @param massShare its mass as a share of the whole system's (0…1); moves the planet's centre off the system's barycentre
 * @param motion where it stands
 * @param sigmaKm standard error of that place from the planet's centre, along any one direction (km): the series against the orbits it was
 *     fitted to, and those orbits against the moon itself; positive
 * @param source where radius, mass and standard error are from
 */
public record MoonFacts(
        String id, String name, double radiusKm, double massShare, MoonMotion motion, double sigmaKm, String source) {}
