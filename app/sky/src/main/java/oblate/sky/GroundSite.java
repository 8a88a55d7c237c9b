/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import oblate.base.ProblemException;

/**
 * A place on the ground, on the WGS 84 ellipsoid.
 *
 * @param latDeg geodetic latitude (deg, north positive, −90…90)
 * @param lonEastDeg longitude (deg, east positive, −180…360)
 * @param heightM height (m, −500…9000)
 */
public record GroundSite(double latDeg, double lonEastDeg, double heightM) {

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException when a value lies outside
     */
    public GroundSite {
        if (!(Math.abs(latDeg) <= 90)) {
            throw new IllegalArgumentException("latitude must be between -90 and 90 deg");
        }
        if (!(lonEastDeg >= -180 && lonEastDeg <= 360)) {
            throw new IllegalArgumentException("longitude must be between -180 and 360 deg, east positive");
        }
        if (!(heightM >= -500 && heightM <= 9000)) {
            throw new IllegalArgumentException("height must be between -500 and 9000 m");
        }
    }

    /**
     * Reads {@code LAT,LON,HEIGHT}: degrees north, degrees east, metres; the height may be left out and is 0 then.
     *
     * @throws ProblemException {@link SkyProblem#BAD_SITE}
     */
    public static GroundSite parse(String text) {
        String[] parts = text.strip().split("\\s*,\\s*", -1);
        if (parts.length < 2 || parts.length > 3) {
            throw new ProblemException(
                    SkyProblem.BAD_SITE, text, "it has " + parts.length + " parts, not two or three");
        }
        try {
            double heightM = parts.length == 3 ? Double.parseDouble(parts[2]) : 0;
            return new GroundSite(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]), heightM);
        } catch (NumberFormatException e) {
            throw new ProblemException(e, SkyProblem.BAD_SITE, text, "a part of it is not a number");
        } catch (IllegalArgumentException e) {
            throw new ProblemException(e, SkyProblem.BAD_SITE, text, "the " + e.getMessage());
        }
    }
}
