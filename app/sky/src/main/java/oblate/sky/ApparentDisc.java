/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Optional;

/**
 * What the sky says a planet looks like from the Earth's centre at an instant. Immutable.
 *
 * @param planet the planet
 * @param time instant of observation, UTC
 * @param ttMinusUtcS TT − UTC used (s)
 * @param ephemeris name of the planetary ephemeris used, e.g. "DE405"
 * @param raApparentDeg right ascension (deg, 0…360), true equator and equinox of date, with light time, aberration, deflection
 * @param decApparentDeg declination (deg), same frame
 * @param distanceAu distance Earth's centre to planet's centre (au), light time removed
 * @param lightTimeS light time (s)
 * @param sunDistanceAu distance of the planet from the Sun (au)
 * @param elongationDeg angle Sun–Earth–planet between the places all three have at the instant, light time left out (deg, 0…180)
 * @param diameterEquatorialArcsec 2 asin(a / distance) (arcsec)
 * @param diameterPolarArcsec short axis of the outline as seen (arcsec)
 * @param phaseAngleDeg angle Sun–planet–Earth (deg, 0…180)
 * @param illuminatedFraction lit share of the disc (0…1)
 * @param subEarth point under the Earth; its longitudes are the central meridians, geometric, no phase correction
 * @param subSolar point under the Sun
 * @param northPolePaDeg position angle of the north pole from true north of date through east (deg, 0…360)
 * @param northPolePaIcrfDeg the same from ICRF north (deg, 0…360)
 * @param brightLimbPaDeg position angle of the middle of the sunlit limb, of date (deg, 0…360)
 * @param rings aspect of the rings, where the planet has some
 */
public record ApparentDisc(
        PlanetModel planet,
        UtcTime time,
        double ttMinusUtcS,
        String ephemeris,
        double raApparentDeg,
        double decApparentDeg,
        double distanceAu,
        double lightTimeS,
        double sunDistanceAu,
        double elongationDeg,
        double diameterEquatorialArcsec,
        double diameterPolarArcsec,
        double phaseAngleDeg,
        double illuminatedFraction,
        SubPoint subEarth,
        SubPoint subSolar,
        double northPolePaDeg,
        double northPolePaIcrfDeg,
        double brightLimbPaDeg,
        Optional<RingAspect> rings) {

    /** Position angle of the greatest defect of illumination, opposite to the bright limb (deg, 0…360). */
    public double defectPaDeg() {
        return (brightLimbPaDeg + 180) % 360;
    }

    /**
     * The same disc as it would look under a Sun over another longitude; for pictures whose light is not as the sky has it at their stated time.
     * Places, sizes and position angles stay as they are.
     *
     * @param eastDeg how far planetary east of the sub-Earth point the Sun is to stand (deg, −180…180)
     */
    public ApparentDisc litFrom(double eastDeg) {
        int sign = planet.globe().longitudePositive() == LongitudeSense.EAST ? 1 : -1;
        SubPoint sun = new SubPoint(
                subSolar.globe(),
                subEarth.lonDeg().stream()
                        .map(lon -> Angles.wrapDeg(lon + sign * eastDeg))
                        .toList(),
                subSolar.latCentricDeg(),
                subSolar.latGraphicDeg());
        double earthLat = Math.toRadians(subEarth.latCentricDeg());
        double sunLat = Math.toRadians(sun.latCentricDeg());
        double phaseCosine = Math.sin(earthLat) * Math.sin(sunLat)
                + Math.cos(earthLat) * Math.cos(sunLat) * Math.cos(Math.toRadians(eastDeg));
        double phaseRad = Math.acos(Math.max(-1, Math.min(1, phaseCosine)));
        return new ApparentDisc(
                planet,
                time,
                ttMinusUtcS,
                ephemeris,
                raApparentDeg,
                decApparentDeg,
                distanceAu,
                lightTimeS,
                sunDistanceAu,
                elongationDeg,
                diameterEquatorialArcsec,
                diameterPolarArcsec,
                Math.toDegrees(phaseRad),
                (1 + Math.cos(phaseRad)) / 2,
                subEarth,
                sun,
                northPolePaDeg,
                northPolePaIcrfDeg,
                brightLimbPaDeg,
                rings);
    }

    /** Central meridian (deg, 0…360) in a system. */
    public double centralMeridianDeg(RotationSystem system) {
        return subEarth.lonDeg(system);
    }

    /** Longitude (deg, 0…360) in another system of a point given in one; exact at this disc's instant. */
    public double convertLonDeg(double lonDeg, RotationSystem from, RotationSystem to) {
        return Angles.wrapDeg(lonDeg + subEarth.lonDeg(to) - subEarth.lonDeg(from));
    }
}
