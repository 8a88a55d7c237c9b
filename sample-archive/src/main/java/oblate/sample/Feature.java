/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import java.util.Optional;

/**
 * A feature of the season: where it is, how it moves, how it looks. Longitudes are planetographic, west-positive.
 *
 * @param name what it is called
 * @param kind what it looks like, words
 * @param tone brighter or darker than what is round it
 * @param systemId "1", "2" or "3"
 * @param lonDeg longitude in that system at the season's epoch (deg, 0…360)
 * @param rateDegPerDay drift in that system (deg/day), until the change if there is one
 * @param change a change of rate, if it has one
 * @param latGraphicDeg planetographic latitude (deg)
 * @param semiLonDeg half its length (deg of longitude)
 * @param semiLatDeg half its width (deg of latitude)
 * @param look colour and strength
 */
public record Feature(
        String name,
        String kind,
        Tone tone,
        String systemId,
        double lonDeg,
        double rateDegPerDay,
        Optional<Change> change,
        double latGraphicDeg,
        double semiLonDeg,
        double semiLatDeg,
        Look look) {

    /** How it stands out. */
    public enum Tone {
        /** Brighter than its surroundings. */
        BRIGHT,
        /** Darker than its surroundings. */
        DARK
    }

    /**
     * A change of rate.
     *
     * @param day when, in days after the epoch
     * @param rateAfterDegPerDay drift from then on (deg/day)
     */
    public record Change(double day, double rateAfterDegPerDay) {}

    /**
     * How it looks.
     *
     * @param red brightness 0…1
     * @param green brightness
     * @param blue brightness
     * @param strength how much of the ground it covers, 0…1
     * @param words the colour in words
     */
    public record Look(double red, double green, double blue, double strength, String words) {}

    /** Longitude (deg, 0…360) in its system, so many days after the epoch. */
    public double lonAtDeg(double day) {
        double lon = lonDeg + rateDegPerDay * day;
        if (change.isPresent()) {
            Change c = change.get();
            double past = day - c.day();
            // The longitude at the epoch is given; the bend may lie before or after it.
            double atEpoch = Math.max(0, -c.day());
            lon += (c.rateAfterDegPerDay() - rateDegPerDay) * (Math.max(0, past) - atEpoch);
        }
        double wrapped = lon % 360;
        return wrapped < 0 ? wrapped + 360 : wrapped;
    }

    /** Place of its system among the planet's, 0…2. */
    int systemIndex() {
        return Integer.parseInt(systemId) - 1;
    }
}
