/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;

/**
 * Answers what a planet looks like at an instant. Immutable and safe for many threads.
 *
 * <p>Making one reads the ephemeris (about a tenth of a second), so make one and hand it on.
 */
public final class Sky {
    /** Light from the farthest planet and from the Sun to it is under way for less than this (days). */
    private static final double LIGHT_MARGIN_DAYS = 0.9;

    private final Ephemeris ephemeris;
    private final LeapSeconds leapSeconds;
    private final EarthAxis earthAxis = new EarthAxis();
    private final Instant firstInstant;
    private final Instant lastInstant;

    private Sky(Ephemeris ephemeris, LeapSeconds leapSeconds) {
        this.ephemeris = ephemeris;
        this.leapSeconds = leapSeconds;
        UtcTime first = Moment.utcAt(ephemeris.firstTdbDay() + LIGHT_MARGIN_DAYS, leapSeconds);
        UtcTime last = Moment.utcAt(ephemeris.lastTdbDay() - 2 * EarthView.VELOCITY_STEP_DAYS, leapSeconds);
        firstInstant = new UtcTime(first.epochDay() + 1, 0).toInstant();
        lastInstant = new UtcTime(last.epochDay(), 0).toInstant();
    }

    /** With the bundled ephemeris (DE405) and leap seconds. */
    public static Sky bundled() {
        return new Sky(Ephemeris.bundled(), LeapSeconds.bundled());
    }

    /** With another ephemeris or newer leap seconds. */
    public static Sky of(Ephemeris ephemeris, LeapSeconds leapSeconds) {
        return new Sky(ephemeris, leapSeconds);
    }

    /**
     * The apparent disc from the Earth's centre.
     *
     * @throws ProblemException {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    public ApparentDisc disc(PlanetModel planet, UtcTime time) {
        return disc(planet, sighting(planet, time));
    }

    /** The apparent disc from the Earth's centre, for an instant outside leap seconds. */
    public ApparentDisc disc(PlanetModel planet, Instant time) {
        return disc(planet, UtcTime.of(time));
    }

    /**
     * The planet's moons and their shadows from the Earth's centre, in the order the planet lists them.
     *
     * @throws ProblemException {@link SkyProblem#NO_MOONS} for a planet without, {@link SkyProblem#OUTSIDE_MOONS} outside the span of their
     *     motion, {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    public List<MoonPlace> moons(PlanetModel planet, UtcTime time) {
        if (planet.moons().isEmpty()) {
            throw new ProblemException(SkyProblem.NO_MOONS, planet.label());
        }
        Sighting seen = sighting(planet, time);
        checkMoonSpan(planet, seen);
        return new MoonWatch(planet, seen, ephemeris).places();
    }

    /** A planet with Sun and Earth as points that move. */
    public PlanetSystem system(PlanetModel planet) {
        return new PlanetSystem(planet, ephemeris, leapSeconds);
    }

    /** First instant the ephemeris covers, light time allowed for; the start of a day. */
    public Instant firstInstant() {
        return firstInstant;
    }

    /** Last instant the ephemeris covers; the start of a day. */
    public Instant lastInstant() {
        return lastInstant;
    }

    /** The leap seconds in use; a date past their expiry holds the last offset. */
    public LeapSeconds leapSeconds() {
        return leapSeconds;
    }

    private ApparentDisc disc(PlanetModel planet, Sighting seen) {
        Globe globe = planet.globe();
        Spheroid figure = globe.figure();
        Orientation orientation = Orientation.at(globe, seen.emittedTdbDays());
        Vec3 toEarth = seen.toPlanetKm().times(-1);
        Vec3 toSun = seen.planetToSunKm();
        SubPoint subEarth = orientation.under(toEarth);
        SubPoint subSolar = orientation.under(toSun);
        double phase = toEarth.angleRad(toSun);
        double distanceKm = toEarth.norm();
        Turn toDate = seen.earth().toDate();
        Vec3 apparent = seen.earth().apparent(seen.toPlanetKm());
        double axisRatio = figure.apparentAxisRatio(subEarth.latCentricDeg());
        return new ApparentDisc(
                planet,
                seen.earth().moment().utc(),
                seen.earth().moment().ttMinusUtcS(),
                ephemeris.name(),
                apparent.lonDeg(),
                apparent.latDeg(),
                distanceKm / Starlight.AU_KM,
                distanceKm / Starlight.C_KM_PER_DAY * 86400,
                toSun.norm() / Starlight.AU_KM,
                Math.toDegrees(elongationRad(seen)),
                2 * arcsecUnder(figure.equatorialRadiusKm(), distanceKm),
                2 * arcsecUnder(figure.equatorialRadiusKm() * axisRatio, distanceKm),
                Math.toDegrees(phase),
                (1 + Math.cos(phase)) / 2,
                subEarth,
                subSolar,
                Angles.positionAngleDeg(apparent, toDate.apply(orientation.pole())),
                Angles.positionAngleDeg(seen.toPlanetKm(), orientation.pole()),
                Angles.positionAngleDeg(apparent, toDate.apply(toSun)),
                ringAspect(planet, subEarth, subSolar, distanceKm));
    }

    private static Optional<RingAspect> ringAspect(
            PlanetModel planet, SubPoint subEarth, SubPoint subSolar, double distanceKm) {
        return planet.rings().map(rings -> {
            double opening = Math.abs(Math.sin(Math.toRadians(subEarth.latCentricDeg())));
            return new RingAspect(
                    subEarth.latCentricDeg(),
                    subSolar.latCentricDeg(),
                    arcsecUnder(rings.outerRadiusKm(), distanceKm),
                    arcsecUnder(rings.outerRadiusKm() * opening, distanceKm));
        });
    }

    private static double arcsecUnder(double lengthKm, double distanceKm) {
        return Math.asin(lengthKm / distanceKm) * Angles.ARCSEC_PER_RAD;
    }

    Sighting sighting(PlanetModel planet, UtcTime time) {
        return Sighting.of(planet, earthView(planet.label(), time), ephemeris);
    }

    /** The Earth at a time inside the span; {@code what} is named in a refusal. */
    EarthView earthView(String what, UtcTime time) {
        if (time.compareTo(UtcTime.of(firstInstant)) < 0 || time.compareTo(UtcTime.of(lastInstant)) > 0) {
            throw new ProblemException(
                    SkyProblem.OUTSIDE_EPHEMERIS, what, time, ephemeris.name(), firstInstant, lastInstant);
        }
        return EarthView.at(Moment.of(time, leapSeconds), ephemeris, earthAxis);
    }

    /** Apparent minus mean sidereal time (rad). */
    double equationOfEquinoxesRad(double ttDays) {
        return earthAxis.equationOfEquinoxesRad(ttDays);
    }

    /** Geometric angle Sun–Earth–planet (rad) at the moment of observation. */
    private double elongationRad(Sighting seen) {
        double t = seen.earth().moment().tdbDays();
        Vec3 earth = seen.earth().placeKm();
        Vec3 toSun = ephemeris.bodyKm(Ephemeris.SUN, t).minus(earth);
        return toSun.angleRad(seen.path().centreKm(t).minus(earth));
    }

    /** Refuses a time at which not every moon has a place; the sentence tells the span in which all have one. */
    private void checkMoonSpan(PlanetModel planet, Sighting seen) {
        double first = Double.NEGATIVE_INFINITY;
        double last = Double.POSITIVE_INFINITY;
        for (MoonFacts moon : planet.moons()) {
            first = Math.max(first, moon.motion().firstTdbDay() + LIGHT_MARGIN_DAYS);
            last = Math.min(last, moon.motion().lastTdbDay());
        }
        double t = seen.earth().moment().tdbDays();
        if (t < first || t > last) {
            throw new ProblemException(
                    SkyProblem.OUTSIDE_MOONS,
                    planet.label(),
                    seen.earth().moment().utc(),
                    Moment.utcAt(first, leapSeconds).iso(0),
                    Moment.utcAt(last, leapSeconds).iso(0));
        }
    }
}
