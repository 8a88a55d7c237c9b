/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A moment in the course of a body over a place.
 *
 * @param kind what happens
 * @param time when
 * @param sigmaS standard error (s)
 * @param altitudeDeg altitude of the centre (deg), without refraction
 * @param azimuthDeg azimuth from north through east (deg, 0…360)
 */
public record GroundEvent(Kind kind, UtcTime time, double sigmaS, double altitudeDeg, double azimuthDeg) {

    /** What happens. */
    public enum Kind {
        /** Comes up: −34′ for a planet's centre, −50′ for the Sun's. */
        RISE("rise"),
        /** Crosses the meridian on the side of the zenith. */
        UPPER_TRANSIT("transit"),
        /** Goes down. */
        SET("set"),
        /** Crosses the meridian on the other side. */
        LOWER_TRANSIT("lower transit"),
        /** The Sun's centre goes down through −6 deg. */
        CIVIL_DUSK("civil dusk"),
        /** The Sun's centre goes down through −12 deg. */
        NAUTICAL_DUSK("nautical dusk"),
        /** The Sun's centre goes down through −18 deg. */
        ASTRONOMICAL_DUSK("astronomical dusk"),
        /** The Sun's centre comes up through −18 deg. */
        ASTRONOMICAL_DAWN("astronomical dawn"),
        /** The Sun's centre comes up through −12 deg. */
        NAUTICAL_DAWN("nautical dawn"),
        /** The Sun's centre comes up through −6 deg. */
        CIVIL_DAWN("civil dawn");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** As a person reads it. */
        public String word() {
            return word;
        }
    }
}
