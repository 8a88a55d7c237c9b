/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Optional;

/**
 * A moon as seen at an instant from a {@link Standpoint}: the Earth's centre or a place on the ground.
 *
 * @param moon the moon
 * @param dRaCosDecArcsec apparent right ascension minus the planet's, times cos of the planet's declination (arcsec, of date)
 * @param dDecArcsec apparent declination minus the planet's (arcsec, of date)
 * @param xWestRadii along the planet's equator as seen, to celestial west (equatorial radii), in the plane through the planet's centre
 * @param yNorthRadii across it, to the planet's north (equatorial radii)
 * @param zTowardEarthRadii toward the Earth (equatorial radii); positive on the near side
 * @param distanceAu distance from there (au), at the moon's own light time
 * @param planetRadiusArcsec equatorial radius of the planet as seen (arcsec)
 * @param diameterArcsec the moon's diameter (arcsec)
 * @param inTransit whether the moon's centre stands in front of the planet's outline
 * @param occulted whether the moon's centre stands behind the planet's outline
 * @param eclipsed whether the planet hides the Sun's centre from the moon's
 * @param shadow where its shadow falls on the side of the globe that the Earth sees
 */
public record MoonPlace(
        MoonFacts moon,
        double dRaCosDecArcsec,
        double dDecArcsec,
        double xWestRadii,
        double yNorthRadii,
        double zTowardEarthRadii,
        double distanceAu,
        double planetRadiusArcsec,
        double diameterArcsec,
        boolean inTransit,
        boolean occulted,
        boolean eclipsed,
        Optional<ShadowPlace> shadow) {

    /** Lower-case English name of the moon. */
    public String id() {
        return moon.id();
    }

    /** Name of the moon as written. */
    public String name() {
        return moon.name();
    }

    /** Standard error of the moon's offset from its planet, along any one direction on the sky (arcsec); see {@link MoonFacts#sigmaKm}. */
    public double offsetSigmaArcsec() {
        return moon.sigmaKm() / (distanceAu * Starlight.AU_KM) * Angles.ARCSEC_PER_RAD;
    }
}
