/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Optional;

/**
 * A planet with Sun, Earth and the place it is looked at from as points that move, for those who follow light between them at times of their own choice. Places are km on ICRF
 * axes, barycentric; times are days of TDB from J2000. Immutable and safe for many threads.
 */
public final class PlanetSystem {
    /** Speed of light (km per day). */
    public static final double C_KM_PER_DAY = Starlight.C_KM_PER_DAY;

    private static final Vec3 NOWHERE = new Vec3(0, 0, 0);

    private final PlanetModel planet;
    private final Ephemeris ephemeris;
    private final LeapSeconds leapSeconds;
    private final Optional<Foothold> foothold;

    PlanetSystem(PlanetModel planet, Ephemeris ephemeris, LeapSeconds leapSeconds, Optional<Foothold> foothold) {
        this.planet = planet;
        this.ephemeris = ephemeris;
        this.leapSeconds = leapSeconds;
        this.foothold = foothold;
    }

    /** The planet. */
    public PlanetModel planet() {
        return planet;
    }

    /** The Sun's centre (km). */
    public Vec3 sunKm(double tdbDays) {
        return ephemeris.bodyKm(Ephemeris.SUN, tdbDays);
    }

    /** The Earth's centre (km). */
    public Vec3 earthKm(double tdbDays) {
        return ephemeris.earthKm(tdbDays);
    }

    /** Whether it is looked at from a place on the ground, and not from the Earth's centre. */
    public boolean isFromGround() {
        return foothold.isPresent();
    }

    /** From the Earth's centre to the place looked from (km); nothing when it is the centre. */
    public Vec3 fromEarthKm(double tdbDays) {
        // TT for TDB: the Earth turns a place on by a metre in the 2 ms between them.
        return foothold.map(f -> f.fromCentreKm(tdbDays)).orElse(NOWHERE);
    }

    /** The barycentre of planet and moons (km). */
    public Vec3 barycentreKm(double tdbDays) {
        return ephemeris.bodyKm(planet.globe().deBody(), tdbDays);
    }

    /** Unit vector to the planet's north pole. */
    public Vec3 pole(double tdbDays) {
        return Orientation.at(planet.globe(), tdbDays).pole();
    }

    /**
     * First point (km from the planet's centre) of a straight line on the globe, when it runs into it.
     *
     * @param fromKm start of the line, from the planet's centre (km), outside the globe
     * @param along unit vector of its direction
     * @param pole unit vector to the pole
     */
    public Optional<Vec3> firstPointKm(Vec3 fromKm, Vec3 along, Vec3 pole) {
        return GlobeHit.first(fromKm, along, pole, planet.globe().figure());
    }

    /** Outward normal (any length) at a point of the globe (km from its centre). */
    public Vec3 normal(Vec3 pointKm, Vec3 pole) {
        return GlobeHit.normal(pointKm, pole, planet.globe().figure());
    }

    /** Days of TDB from J2000 at an instant. */
    public double tdbDays(UtcTime time) {
        return Moment.of(time, leapSeconds).tdbDays();
    }

    /** The reading of the UTC clock at a number of days of TDB from J2000. */
    public UtcTime utcAt(double tdbDays) {
        return Moment.utcAt(tdbDays, leapSeconds);
    }

    /** First day of the ephemeris. */
    public double firstTdbDay() {
        return ephemeris.firstTdbDay();
    }

    /** Last day of the ephemeris. */
    public double lastTdbDay() {
        return ephemeris.lastTdbDay();
    }

    /** Name of the ephemeris, e.g. "DE405". */
    public String ephemerisName() {
        return ephemeris.name();
    }
}
