/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Optional;
import oblate.base.ProblemException;

/**
 * Looks at one planet at instant after instant and makes no garbage: the figures of the last look are read from here, each as {@link ApparentDisc} has it.
 *
 * <p>It works in place, so it belongs to one thread; every thread asks {@link Sky#watch} for its own. {@link Sky#disc} is a single look through one.
 */
public final class DiscWatch {
    private final Sky sky;
    private final PlanetModel planet;
    private final String ephemeris;
    private final WorkEarth earth;
    private final WorkSighting seen;
    private final WorkOrientation orientation;
    private final WorkSubPoint subEarth;
    private final WorkSubPoint subSolar;
    private final double equatorialRadiusKm;
    private final double ringRadiusKm;
    private final WorkVec3 toEarth = new WorkVec3();
    private final WorkVec3 ofDate = new WorkVec3();
    private final WorkVec3 direction = new WorkVec3();

    private double raApparentDeg;
    private double decApparentDeg;
    private double distanceKm;
    private double sunDistanceKm;
    private double elongationDeg;
    private double phaseAngleDeg;
    private double illuminatedFraction;
    private double northPolePaDeg;
    private double northPolePaIcrfDeg;
    private double brightLimbPaDeg;

    DiscWatch(Sky sky, PlanetModel planet, WorkSighting seen, String ephemeris) {
        this.sky = sky;
        this.planet = planet;
        this.seen = seen;
        this.ephemeris = ephemeris;
        earth = seen.earth;
        Globe globe = planet.globe();
        orientation = new WorkOrientation(globe);
        subEarth = new WorkSubPoint(globe);
        subSolar = new WorkSubPoint(globe);
        equatorialRadiusKm = globe.figure().equatorialRadiusKm();
        Optional<Rings> rings = planet.rings();
        ringRadiusKm = rings.isPresent() ? rings.get().outerRadiusKm() : Double.NaN;
    }

    /**
     * Looks at an instant; all other methods then tell of it.
     *
     * @return this
     * @throws ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span; the look before stays
     */
    public DiscWatch look(UtcTime time) {
        sky.checkSpan(planet.label(), time);
        seen.look(time);
        orientation.turn(seen.emittedTdbDays);
        toEarth.set(seen.toPlanetKm).scale(-1);
        distanceKm = toEarth.norm();
        sunDistanceKm = seen.planetToSunKm.norm();
        subEarth.under(toEarth, orientation);
        subSolar.under(seen.planetToSunKm, orientation);
        direction.set(earth.sunKm).subtract(earth.placeKm);
        elongationDeg = Math.toDegrees(direction.angleRad(seen.toPlanetNowKm));
        phaseAngleDeg = Math.toDegrees(toEarth.angleRad(seen.planetToSunKm));
        illuminatedFraction = (1 + toEarth.dot(seen.planetToSunKm) / (distanceKm * sunDistanceKm)) / 2;
        northPolePaIcrfDeg = Angles.positionAngleDeg(seen.toPlanetKm, orientation.pole);
        lookOfDate();
        return this;
    }

    private void lookOfDate() {
        ofDate.set(seen.toPlanetKm);
        earth.turnApparent(ofDate);
        earth.toDate.apply(ofDate);
        raApparentDeg = Angles.wrapDeg(Math.toDegrees(Math.atan2(ofDate.y, ofDate.x)));
        decApparentDeg = Math.toDegrees(Math.atan2(ofDate.z, Math.sqrt(ofDate.x * ofDate.x + ofDate.y * ofDate.y)));
        direction.set(orientation.pole);
        earth.toDate.apply(direction);
        northPolePaDeg = Angles.positionAngleDeg(ofDate, direction);
        direction.set(seen.planetToSunKm);
        earth.toDate.apply(direction);
        brightLimbPaDeg = Angles.positionAngleDeg(ofDate, direction);
    }

    /** The last look as a record that stays. */
    public ApparentDisc disc() {
        return new ApparentDisc(
                planet,
                time(),
                ttMinusUtcS(),
                ephemeris,
                raApparentDeg,
                decApparentDeg,
                distanceAu(),
                lightTimeS(),
                sunDistanceAu(),
                elongationDeg,
                diameterEquatorialArcsec(),
                diameterPolarArcsec(),
                phaseAngleDeg,
                illuminatedFraction,
                subEarth.frozen(),
                subSolar.frozen(),
                northPolePaDeg,
                northPolePaIcrfDeg,
                brightLimbPaDeg,
                ringAspect());
    }

    private Optional<RingAspect> ringAspect() {
        return Double.isNaN(ringRadiusKm)
                ? Optional.empty()
                : Optional.of(new RingAspect(
                        subEarth.latCentricDeg,
                        subSolar.latCentricDeg,
                        ringOuterSemiMajorArcsec(),
                        ringOuterSemiMinorArcsec()));
    }

    /** The planet looked at. */
    public PlanetModel planet() {
        return planet;
    }

    /** Instant of the last look; null before the first. */
    public UtcTime time() {
        return earth.utc;
    }

    /** TT − UTC (s). */
    public double ttMinusUtcS() {
        return earth.ttMinusUtcS;
    }

    /** Apparent right ascension of date (deg, 0…360). */
    public double raApparentDeg() {
        return raApparentDeg;
    }

    /** Apparent declination of date (deg). */
    public double decApparentDeg() {
        return decApparentDeg;
    }

    /** Distance from the Earth's centre (au), light time removed. */
    public double distanceAu() {
        return distanceKm / Starlight.AU_KM;
    }

    /** Light time (s). */
    public double lightTimeS() {
        return distanceKm / Starlight.C_KM_PER_DAY * 86400;
    }

    /** Distance of the planet from the Sun (au). */
    public double sunDistanceAu() {
        return sunDistanceKm / Starlight.AU_KM;
    }

    /** Angle Sun–Earth–planet (deg, 0…180), light time left out. */
    public double elongationDeg() {
        return elongationDeg;
    }

    /** Equatorial diameter (arcsec). */
    public double diameterEquatorialArcsec() {
        return 2 * arcsecUnder(equatorialRadiusKm);
    }

    /** Short axis of the outline as seen (arcsec). */
    public double diameterPolarArcsec() {
        return 2 * arcsecUnder(equatorialRadiusKm * subEarth.axisRatio);
    }

    /** Angle Sun–planet–Earth (deg, 0…180). */
    public double phaseAngleDeg() {
        return phaseAngleDeg;
    }

    /** Lit share of the disc (0…1). */
    public double illuminatedFraction() {
        return illuminatedFraction;
    }

    /** Central meridian (deg, 0…360) in the system at a place of {@code globe().systems()}. */
    public double subEarthLonDeg(int system) {
        return subEarth.lonDeg[system];
    }

    /** Planetocentric latitude of the point under the Earth (deg). */
    public double subEarthLatCentricDeg() {
        return subEarth.latCentricDeg;
    }

    /** Planetographic latitude of the point under the Earth (deg). */
    public double subEarthLatGraphicDeg() {
        return subEarth.latGraphicDeg;
    }

    /** Longitude (deg, 0…360) of the point under the Sun in the system at a place of {@code globe().systems()}. */
    public double subSolarLonDeg(int system) {
        return subSolar.lonDeg[system];
    }

    /** Planetocentric latitude of the point under the Sun (deg). */
    public double subSolarLatCentricDeg() {
        return subSolar.latCentricDeg;
    }

    /** Planetographic latitude of the point under the Sun (deg). */
    public double subSolarLatGraphicDeg() {
        return subSolar.latGraphicDeg;
    }

    /** Position angle of the north pole from true north of date (deg, 0…360). */
    public double northPolePaDeg() {
        return northPolePaDeg;
    }

    /** Position angle of the north pole from ICRF north (deg, 0…360). */
    public double northPolePaIcrfDeg() {
        return northPolePaIcrfDeg;
    }

    /** Position angle of the middle of the sunlit limb, of date (deg, 0…360). */
    public double brightLimbPaDeg() {
        return brightLimbPaDeg;
    }

    /** Semi-major axis of the rings' outer edge (arcsec); NaN for a planet without. */
    public double ringOuterSemiMajorArcsec() {
        return arcsecUnder(ringRadiusKm);
    }

    /** Semi-minor axis of the rings' outer edge (arcsec, not negative); NaN for a planet without. */
    public double ringOuterSemiMinorArcsec() {
        return arcsecUnder(ringRadiusKm * Math.abs(subEarth.sinLat));
    }

    private double arcsecUnder(double lengthKm) {
        return Math.asin(lengthKm / distanceKm) * Angles.ARCSEC_PER_RAD;
    }
}
