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

    /**
     * As {@link #fromPlanetKm(double)}, into an array of the caller's, for loops over many instants.
     *
     * @param xyzKm set to x, y and z (km)
     */
    default void fromPlanetKm(double tdbDays, double[] xyzKm) {
        Vec3 place = fromPlanetKm(tdbDays);
        xyzKm[0] = place.x();
        xyzKm[1] = place.y();
        xyzKm[2] = place.z();
    }

    /** Start of the span, days of TDB from J2000. */
    double firstTdbDay();

    /** End of the span, days of TDB from J2000. */
    double lastTdbDay();
}
