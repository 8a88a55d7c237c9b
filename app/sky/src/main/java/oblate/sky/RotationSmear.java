/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import oblate.base.ProblemException;

/**
 * How far a planet's rotation carries a point of its surface across the picture during a capture, for a point that crosses the central meridian in the
 * capture's middle; away from the meridian it is less. What the planet's winds add is left out.
 *
 * @param disc the planet at the middle of the capture
 * @param system the rotation system taken
 * @param latGraphicDeg planetographic latitude of the point (deg)
 * @param degPerMin rotation as seen from the Earth (deg per min), positive on every planet
 * @param axisDistanceKm distance of the point from the spin axis (km)
 * @param motionPaDeg position angle on the sky toward which the point moves (deg, 0…360, from true north of date through east): to celestial west on a
 *     planet that turns directly, to celestial east on Venus and Uranus
 */
public record RotationSmear(
        ApparentDisc disc,
        RotationSystem system,
        double latGraphicDeg,
        double degPerMin,
        double axisDistanceKm,
        double motionPaDeg) {
    private static final double KM_PER_AU = Starlight.AU_KM;

    /**
     * For a point of the surface at a latitude.
     *
     * @param middle middle of the capture
     * @param latGraphicDeg planetographic latitude (deg, −90…90)
     * @throws ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS}, {@link SkyProblem#LATITUDE_HIDDEN} when the point is turned away from the Earth
     */
    public static RotationSmear at(
            Sky sky, PlanetModel planet, RotationSystem system, UtcTime middle, double latGraphicDeg) {
        ApparentDisc disc = sky.disc(planet, middle);
        if (!(Math.abs(latGraphicDeg - disc.subEarth().latCentricDeg()) < 90)) {
            throw new ProblemException(
                    SkyProblem.LATITUDE_HIDDEN,
                    latGraphicDeg,
                    planet.label(),
                    middle,
                    Math.round(disc.subEarth().latCentricDeg()));
        }
        return new RotationSmear(
                disc,
                system,
                latGraphicDeg,
                MeridianSpeed.degPerMin(sky, planet, system, middle),
                planet.globe().figure().axisDistanceKm(latGraphicDeg),
                Angles.wrapDeg(disc.northPolePaDeg() + (system.degPerDay() > 0 ? 270 : 90)));
    }

    /** How far the planet turns in a time (deg). */
    public double turnedDeg(double seconds) {
        return degPerMin * seconds / 60;
    }

    /** The same along the surface (km). */
    public double lengthKm(double seconds) {
        return Math.toRadians(turnedDeg(seconds)) * axisDistanceKm;
    }

    /** The same across the picture (arcsec): the chord, for a time shorter than half a turn. */
    public double lengthArcsec(double seconds) {
        double halfTurnRad = Math.min(Math.toRadians(turnedDeg(seconds)) / 2, Math.PI / 2);
        return 2 * axisDistanceKm * Math.sin(halfTurnRad) / distanceKm() * Angles.ARCSEC_PER_RAD;
    }

    /** Longest time (s) in which the planet turns by no more than an angle (deg). */
    public double secondsForDeg(double deg) {
        return deg / degPerMin * 60;
    }

    /** Longest time (s) in which the point moves no farther than this across the picture (arcsec); infinite when it never does. */
    public double secondsForArcsec(double arcsec) {
        double sine = arcsec / Angles.ARCSEC_PER_RAD * distanceKm() / (2 * axisDistanceKm);
        return sine >= 1 ? Double.POSITIVE_INFINITY : secondsForDeg(Math.toDegrees(2 * Math.asin(sine)));
    }

    private double distanceKm() {
        return disc.distanceAu() * KM_PER_AU;
    }
}
