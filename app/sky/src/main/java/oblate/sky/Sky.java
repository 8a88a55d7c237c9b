/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.Instant;
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

    private static final double VELOCITY_STEP_DAYS = 0.005;

    private final Ephemeris ephemeris;
    private final LeapSeconds leapSeconds;
    private final EarthAxis earthAxis = new EarthAxis();
    private final Instant firstInstant;
    private final Instant lastInstant;

    private Sky(Ephemeris ephemeris, LeapSeconds leapSeconds) {
        this.ephemeris = ephemeris;
        this.leapSeconds = leapSeconds;
        UtcTime first = Moment.utcAt(ephemeris.firstTdbDay() + LIGHT_MARGIN_DAYS, leapSeconds);
        UtcTime last = Moment.utcAt(ephemeris.lastTdbDay() - 2 * VELOCITY_STEP_DAYS, leapSeconds);
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
        Sighting seen = sighting(planet, time);
        return disc(planet, seen);
    }

    /** The apparent disc from the Earth's centre, for an instant outside leap seconds. */
    public ApparentDisc disc(PlanetModel planet, Instant time) {
        return disc(planet, UtcTime.of(time));
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
        Turn toDate = earthAxis.at(seen.moment().ttDays());
        Vec3 apparent = toDate.apply(seen.apparentDirection());
        double axisRatio = figure.apparentAxisRatio(subEarth.latCentricDeg());
        return new ApparentDisc(
                planet,
                seen.moment().utc(),
                seen.moment().ttMinusUtcS(),
                ephemeris.name(),
                apparent.lonDeg(),
                apparent.latDeg(),
                distanceKm / Starlight.AU_KM,
                distanceKm / Starlight.C_KM_PER_DAY * 86400,
                toSun.norm() / Starlight.AU_KM,
                Math.toDegrees(seen.apparentSun().angleRad(seen.apparentDirection())),
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

    private Sighting sighting(PlanetModel planet, UtcTime time) {
        Moment moment = Moment.of(time, leapSeconds);
        double t = moment.tdbDays();
        if (time.compareTo(UtcTime.of(firstInstant)) < 0 || time.compareTo(UtcTime.of(lastInstant)) > 0) {
            throw new ProblemException(
                    SkyProblem.OUTSIDE_EPHEMERIS, planet.label(), time, ephemeris.name(), firstInstant, lastInstant);
        }
        Vec3 earth = ephemeris.earthKm(t);
        int body = planet.globe().deBody();
        Vec3 toPlanet = LightPath.seen(earth, t, when -> ephemeris.bodyKm(body, when));
        double emitted = t - toPlanet.norm() / Starlight.C_KM_PER_DAY;
        Vec3 planetPlace = earth.plus(toPlanet);
        Vec3 planetToSun = LightPath.seen(planetPlace, emitted, when -> ephemeris.bodyKm(Ephemeris.SUN, when));
        Vec3 toSun = LightPath.seen(earth, t, when -> ephemeris.bodyKm(Ephemeris.SUN, when));
        Vec3 velocityC = ephemeris
                .earthKm(t + VELOCITY_STEP_DAYS)
                .minus(ephemeris.earthKm(t - VELOCITY_STEP_DAYS))
                .times(1 / (2 * VELOCITY_STEP_DAYS * Starlight.C_KM_PER_DAY));
        Vec3 bent = Starlight.bent(toPlanet.unit(), planetToSun.times(-1), toSun.times(-1));
        Vec3 apparent = Starlight.aberrated(bent, velocityC, toSun.norm());
        Vec3 apparentSun = Starlight.aberrated(toSun.unit(), velocityC, toSun.norm());
        return new Sighting(moment, emitted, toPlanet, planetToSun, apparent, apparentSun);
    }

    /**
     * What the Earth sees of a planet, as vectors on ICRF axes.
     *
     * @param moment of observation
     * @param emittedTdbDays when the light left the planet, days of TDB from J2000
     * @param toPlanetKm Earth now to planet then
     * @param planetToSunKm planet then to the Sun one light time earlier still
     * @param apparentDirection unit vector to the planet, bent and aberrated
     * @param apparentSun unit vector to the Sun, aberrated
     */
    private record Sighting(
            Moment moment,
            double emittedTdbDays,
            Vec3 toPlanetKm,
            Vec3 planetToSunKm,
            Vec3 apparentDirection,
            Vec3 apparentSun) {}
}
