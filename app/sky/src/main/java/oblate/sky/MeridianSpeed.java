/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** How fast a planet's surface runs over the central meridian as seen from the Earth. */
final class MeridianSpeed {
    private static final double HALF_S = 300;

    private MeridianSpeed() {}

    /** Degrees per minute, positive on every planet, from the meridians five minutes before and after. */
    static double degPerMin(Sky sky, PlanetModel planet, RotationSystem system, UtcTime time) {
        double before = sky.disc(planet, time.plusClockSeconds(-HALF_S)).centralMeridianDeg(system);
        double after = sky.disc(planet, time.plusClockSeconds(HALF_S)).centralMeridianDeg(system);
        return Math.abs(Math.IEEEremainder(after - before, 360)) / (2 * HALF_S / 60);
    }
}
