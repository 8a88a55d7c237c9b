/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.Instant;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import oblate.base.ProblemException;

/**
 * Answers what a planet looks like at an instant. Always answers alike, and is safe for many threads.
 *
 * <p>Making one reads the ephemeris (about a tenth of a second), so make one and hand it on.
 */
public final class Sky {
    /** Light from the farthest planet and from the Sun to it is under way for less than this (days). */
    private static final double LIGHT_MARGIN_DAYS = 0.9;

    private final Ephemeris ephemeris;
    private final LeapSeconds leapSeconds;
    private final EarthAxis earthAxis = new EarthAxis();
    /** Work space of the last single look, for the next one that comes; taken out by whoever uses it. */
    private final AtomicReference<DiscWatch> spareWatch = new AtomicReference<>();

    private final UtcTime firstTime;
    private final UtcTime lastTime;

    private Sky(Ephemeris ephemeris, LeapSeconds leapSeconds) {
        this.ephemeris = ephemeris;
        this.leapSeconds = leapSeconds;
        UtcTime first = Moment.utcAt(ephemeris.firstTdbDay() + LIGHT_MARGIN_DAYS, leapSeconds);
        UtcTime last = Moment.utcAt(ephemeris.lastTdbDay(), leapSeconds);
        firstTime = new UtcTime(first.epochDay() + 1, 0);
        lastTime = new UtcTime(last.epochDay(), 0);
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
        DiscWatch spare = spareWatch.getAndSet(null);
        DiscWatch watch = spare != null && spare.planet() == planet ? spare : watch(planet);
        ApparentDisc disc = watch.look(time).disc();
        spareWatch.set(watch);
        return disc;
    }

    /** The apparent disc from the Earth's centre, for an instant outside leap seconds. */
    public ApparentDisc disc(PlanetModel planet, Instant time) {
        return disc(planet, UtcTime.of(time));
    }

    /**
     * Looks at one planet again and again without making garbage: for a table, a plot, a search. The watch belongs to the thread that asks for it.
     */
    public DiscWatch watch(PlanetModel planet) {
        return new DiscWatch(this, planet, work(planet), ephemeris.name());
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
        return firstTime.toInstant();
    }

    /** Last instant the ephemeris covers; the start of a day. */
    public Instant lastInstant() {
        return lastTime.toInstant();
    }

    /** The planet positions in use. */
    public Ephemeris ephemeris() {
        return ephemeris;
    }

    /** The leap seconds in use; a date past their expiry holds the last offset. */
    public LeapSeconds leapSeconds() {
        return leapSeconds;
    }

    Sighting sighting(PlanetModel planet, UtcTime time) {
        checkSpan(planet.label(), time);
        WorkSighting seen = work(planet);
        seen.look(time);
        return seen.frozen();
    }

    /** The Earth at a time inside the span; {@code what} is named in a refusal. */
    EarthView earthView(String what, UtcTime time) {
        checkSpan(what, time);
        WorkEarth earth = new WorkEarth(ephemeris, leapSeconds, earthAxis);
        earth.look(time);
        return earth.frozen();
    }

    /** Refuses a time outside the span; {@code what} is named in the refusal. */
    void checkSpan(String what, UtcTime time) {
        if (time.compareTo(firstTime) < 0 || time.compareTo(lastTime) > 0) {
            throw new ProblemException(
                    SkyProblem.OUTSIDE_EPHEMERIS, what, time, ephemeris.name(), firstInstant(), lastInstant());
        }
    }

    private WorkSighting work(PlanetModel planet) {
        return new WorkSighting(planet, new WorkEarth(ephemeris, leapSeconds, earthAxis), ephemeris);
    }

    /** Apparent minus mean sidereal time (rad). */
    double equationOfEquinoxesRad(double ttDays) {
        return earthAxis.equationOfEquinoxesRad(ttDays);
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
