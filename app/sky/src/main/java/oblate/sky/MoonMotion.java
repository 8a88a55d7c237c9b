/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/** Where a moon stands about its planet, for a limited span of time. Implementations are immutable and safe for many threads. */
public interface MoonMotion {

    /**
     * The moon from its planet's centre (km, ICRF axes, geometric) at the moon's own time.
     *
     * @param tdbDays days of TDB from J2000 (JD 2451545.0), inside the span
     */
    Vec3 fromPlanetKm(double tdbDays);

    /** Start of the span, days of TDB from J2000. */
    double firstTdbDay();

    /** End of the span, days of TDB from J2000. */
    double lastTdbDay();
}
