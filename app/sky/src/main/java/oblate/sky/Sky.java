/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import oblate.base.ProblemException;

/**
 * Answers what a planet looks like at an instant. Always answers alike, and is safe for many threads.
 *
 * <p>Making one reads the ephemeris (about a tenth of a second), so make one and hand it on; {@link #later} reads it when it is first asked.
 */
public final class Sky implements Standpoint {
    /** Light from the farthest planet and from the Sun to it is under way for less than this (days). */
    private static final double LIGHT_MARGIN_DAYS = 0.9;

    private final Supplier<Data> data;
    /** Work space of the last single look, for the next one that comes; taken out by whoever uses it. */
    private final AtomicReference<DiscWatch> spareWatch = new AtomicReference<>();

    private Sky(Supplier<Data> data) {
        this.data = data;
    }

    /** What a sky is made of, with the first and the last time it knows. */
    private record Data(
            Ephemeris ephemeris, LeapSeconds leapSeconds, EarthAxis earthAxis, UtcTime firstTime, UtcTime lastTime) {
        static Data of(Ephemeris ephemeris, LeapSeconds leapSeconds) {
            UtcTime first = Moment.utcAt(ephemeris.firstTdbDay() + LIGHT_MARGIN_DAYS, leapSeconds);
            UtcTime last = Moment.utcAt(ephemeris.lastTdbDay(), leapSeconds);
            return new Data(
                    ephemeris,
                    leapSeconds,
                    new EarthAxis(),
                    new UtcTime(first.epochDay() + 1, 0),
                    new UtcTime(last.epochDay(), 0));
        }
    }

    /** Data that are read when first wanted. */
    private static final class Later implements Supplier<Data> {
        private final Supplier<SkyData> source;
        private volatile Data known;

        Later(Supplier<SkyData> source) {
            this.source = source;
        }

        @Override
        public Data get() {
            Data now = known;
            if (now == null) {
                synchronized (this) {
                    if (known == null) {
                        SkyData read = source.get();
                        known = Data.of(read.ephemeris(), read.leapSeconds());
                    }
                    now = known;
                }
            }
            return now;
        }
    }

    /** With the bundled ephemeris (DE405) and leap seconds. */
    public static Sky bundled() {
        return of(Ephemeris.bundled(), LeapSeconds.bundled());
    }

    /** With another ephemeris or newer leap seconds. */
    public static Sky of(Ephemeris ephemeris, LeapSeconds leapSeconds) {
        Data known = Data.of(ephemeris, leapSeconds);
        return new Sky(() -> known);
    }

    /**
     * With data that are read when something is first asked, once; whatever reading them throws comes out there.
     *
     * @param source called at most once at a time, on the thread that asks first
     */
    public static Sky later(Supplier<SkyData> source) {
        return new Sky(new Later(source));
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
        return new DiscWatch(this, planet, work(planet), data.get().ephemeris().name());
    }

    /**
     * The planet's moons and their shadows from the Earth's centre, in the order the planet lists them.
     *
     * @throws ProblemException {@link SkyProblem#NO_MOONS} for a planet without, {@link SkyProblem#OUTSIDE_MOONS} outside the span of their
     *     motion, {@link SkyProblem#OUTSIDE_EPHEMERIS} outside the ephemeris' span
     */
    @Override
    public List<MoonPlace> moons(PlanetModel planet, UtcTime time) {
        return moons(planet, time, Optional.empty());
    }

    /** The same from a place that stands off the Earth's centre. */
    List<MoonPlace> moons(PlanetModel planet, UtcTime time, Optional<Foothold> foothold) {
        if (planet.moons().isEmpty()) {
            throw new ProblemException(SkyProblem.NO_MOONS, planet.label());
        }
        checkSpan(planet.label(), time);
        WorkSighting work = work(planet, foothold);
        work.look(time);
        Sighting seen = work.frozen();
        checkMoonSpan(planet, seen);
        return new MoonWatch(planet, seen, data.get().ephemeris()).places();
    }

    /** A planet with Sun and Earth as points that move. */
    @Override
    public PlanetSystem system(PlanetModel planet) {
        return system(planet, Optional.empty());
    }

    PlanetSystem system(PlanetModel planet, Optional<Foothold> foothold) {
        return new PlanetSystem(planet, data.get().ephemeris(), data.get().leapSeconds(), foothold);
    }

    /** First instant the ephemeris covers, light time allowed for; the start of a day. */
    public Instant firstInstant() {
        return data.get().firstTime().toInstant();
    }

    /** Last instant the ephemeris covers; the start of a day. */
    public Instant lastInstant() {
        return data.get().lastTime().toInstant();
    }

    /** The planet positions in use. */
    public Ephemeris ephemeris() {
        return data.get().ephemeris();
    }

    /** The leap seconds in use; a date past their expiry holds the last offset. */
    public LeapSeconds leapSeconds() {
        return data.get().leapSeconds();
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
        Data known = data.get();
        WorkEarth earth = new WorkEarth(known.ephemeris(), known.leapSeconds(), known.earthAxis(), Optional.empty());
        earth.look(time);
        return earth.frozen();
    }

    /** Refuses a time outside the span; {@code what} is named in the refusal. */
    void checkSpan(String what, UtcTime time) {
        Data known = data.get();
        if (time.compareTo(known.firstTime()) < 0 || time.compareTo(known.lastTime()) > 0) {
            throw new ProblemException(
                    SkyProblem.OUTSIDE_EPHEMERIS, what, time, known.ephemeris().name(), firstInstant(), lastInstant());
        }
    }

    private WorkSighting work(PlanetModel planet) {
        return work(planet, Optional.empty());
    }

    private WorkSighting work(PlanetModel planet, Optional<Foothold> foothold) {
        Data known = data.get();
        WorkEarth earth = new WorkEarth(known.ephemeris(), known.leapSeconds(), known.earthAxis(), foothold);
        return new WorkSighting(planet, earth, known.ephemeris());
    }

    /** Turn to the true equator and equinox of date. */
    Turn toDate(double ttDays) {
        WorkTurn turn = new WorkTurn();
        data.get().earthAxis().at(ttDays, turn);
        return turn.frozen();
    }

    /** Apparent minus mean sidereal time (rad). */
    double equationOfEquinoxesRad(double ttDays) {
        return data.get().earthAxis().equationOfEquinoxesRad(ttDays);
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
                    Moment.utcAt(first, data.get().leapSeconds()).iso(0),
                    Moment.utcAt(last, data.get().leapSeconds()).iso(0));
        }
    }
}
