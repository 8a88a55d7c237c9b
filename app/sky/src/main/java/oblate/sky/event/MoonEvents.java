/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import oblate.base.ProblemException;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.PlanetSystem;
import oblate.sky.SkyProblem;
import oblate.sky.Standpoint;
import oblate.sky.UtcTime;

/** Foretells the events of a planet's moons. Immutable and safe for many threads. */
public final class MoonEvents {
    /** Longest span that is answered (years). */
    private static final int MOST_YEARS = 200;

    private static final double DAYS_PER_YEAR = 365.25;

    /** A search is done in pieces, so that its tables stay small. */
    private static final double PIECE_DAYS = 400;

    /** Light to and from the farthest planet with moons is under way for less than this (days). */
    private static final double LIGHT_DAYS = 0.5;

    /** Two moons that keep pace near their greatest elongation can touch for hours. */
    private static final double LONGEST_MUTUAL_DAYS = 0.5;

    /** How far beyond its span a search looks, in turns of a moon, and what the tables need beyond that. */
    private static final double MARGIN_TURNS = 0.6;

    private final PlanetSystem system;
    private final List<Orbit> orbits;

    private MoonEvents(PlanetSystem system) {
        this.system = system;
        orbits = system.planet().moons().stream().map(Orbit::of).toList();
    }

    /**
     * The events of a planet's moons.
     *
     * @param from who sees them: times are those at which light comes to it
     * @throws ProblemException {@link SkyProblem#NO_MOONS} for a planet without
     */
    public static MoonEvents of(Standpoint from, PlanetModel planet) {
        if (planet.moons().isEmpty()) {
            throw new ProblemException(SkyProblem.NO_MOONS, planet.label());
        }
        return new MoonEvents(from.system(planet));
    }

    /**
     * Passages before and behind the planet, in the order of their middles.
     *
     * @throws ProblemException {@link EventProblem} for a span that is reversed, too long or outside the moons' own, and for an unknown moon
     */
    public List<Passage> passages(EventSearch search) {
        List<Integer> moons = moons(search.moons());
        List<Passage> found = new ArrayList<>();
        for (double[] piece : pieces(search, moons)) {
            Clockwork clockwork = clockwork(piece, moons);
            for (int moon : moons) {
                addPassages(found, search, clockwork, moon, piece);
            }
        }
        found.sort(Comparator.comparing((Passage p) -> p.mid().time()).thenComparing(Passage::kind));
        return List.copyOf(found);
    }

    private void addPassages(List<Passage> found, EventSearch search, Clockwork clockwork, int moon, double[] piece) {
        Sightline fromEarth = new Sightline(clockwork, false);
        Sightline fromSun = new Sightline(clockwork, true);
        PassageReader reader = new PassageReader(fromEarth, fromSun, moon);
        Orbit orbit = orbits.get(moon);
        for (Sightline line : List.of(fromEarth, fromSun)) {
            PassageFinder finder = new PassageFinder(line, moon, orbit);
            ConjunctionFinder conjunctions = new ConjunctionFinder(line, moon, orbit);
            double early = piece[0] - (line.fromSun() ? 2 * LIGHT_DAYS : 0);
            double step = orbit.periodDays() / 8;
            for (Conjunction conjunction : conjunctions.between(early - step, piece[1] + step)) {
                if (!isWanted(search, line, conjunction.behind())) {
                    continue;
                }
                PassageFinder.Course course = finder.course(conjunction);
                double mid = finder.midDay(course);
                boolean touches = course.contacts().containsKey(ContactKind.T1);
                if (mid >= piece[0] && mid < piece[1] && (touches || search.misses())) {
                    found.add(reader.read(finder, course));
                }
            }
        }
    }

    /**
     * Events between two moons, in the order of their middles; a search for some moons asks that both be among them. Kinds other than
     * {@link EventKind#OCCULTATION} and {@link EventKind#ECLIPSE} have no meaning here.
     *
     * @throws ProblemException as {@link #passages}
     */
    public List<MutualEvent> mutual(EventSearch search) {
        List<Integer> moons = moons(search.moons());
        List<MutualEvent> found = new ArrayList<>();
        for (double[] piece : pieces(search, moons)) {
            Clockwork clockwork = clockwork(piece, moons);
            Sightline fromEarth = new Sightline(clockwork, false);
            Sightline fromSun = new Sightline(clockwork, true);
            for (Sightline line : List.of(fromEarth, fromSun)) {
                if (!isWanted(search, line, true)) {
                    continue;
                }
                for (int i = 0; i < moons.size(); i++) {
                    for (int j = i + 1; j < moons.size(); j++) {
                        MutualFinder finder = new MutualFinder(line, moons.get(i), moons.get(j), orbits);
                        addMutual(found, finder, fromEarth, fromSun, piece);
                    }
                }
            }
        }
        found.sort(Comparator.comparing(e -> e.mid().time()));
        return List.copyOf(found);
    }

    private static void addMutual(
            List<MutualEvent> found, MutualFinder finder, Sightline fromEarth, Sightline fromSun, double[] piece) {
        double early = piece[0] - LONGEST_MUTUAL_DAYS - (fromSun.equals(finder.line()) ? 2 * LIGHT_DAYS : 0);
        for (double[] span : finder.touches(early, piece[1])) {
            double least = finder.leastDay(span);
            double mid = finder.seenDay(least);
            if (mid >= piece[0] && mid < piece[1]) {
                found.add(finder.event(span, least, fromEarth, fromSun));
            }
        }
    }

    private static boolean isWanted(EventSearch search, Sightline line, boolean behind) {
        return search.kinds().stream().anyMatch(k -> k.fromSun() == line.fromSun() && k.behind() == behind);
    }

    private Clockwork clockwork(double[] piece, List<Integer> moons) {
        double margin = marginDays(moons) + LIGHT_DAYS;
        return new Clockwork(system, orbits, piece[0] - margin - LIGHT_DAYS, piece[1] + margin);
    }

    private double marginDays(List<Integer> moons) {
        return moons.stream().mapToDouble(m -> orbits.get(m).periodDays()).max().orElseThrow() * MARGIN_TURNS + 2;
    }

    /** The span in pieces (TDB days), each from its start to the next one's. */
    private List<double[]> pieces(EventSearch search, List<Integer> moons) {
        check(search, moons);
        double from = system.tdbDays(search.from());
        double to = system.tdbDays(search.to());
        List<double[]> pieces = new ArrayList<>();
        for (double start = from; start < to; start += PIECE_DAYS) {
            pieces.add(new double[] {start, Math.min(start + PIECE_DAYS, to)});
        }
        return pieces;
    }

    private void check(EventSearch search, List<Integer> moons) {
        if (search.from().compareTo(search.to()) > 0) {
            throw new ProblemException(EventProblem.REVERSED, search.from(), search.to());
        }
        double days = search.to().epochDay() - search.from().epochDay();
        if (days > MOST_YEARS * DAYS_PER_YEAR) {
            throw new ProblemException(EventProblem.TOO_LONG, search.from(), search.to(), MOST_YEARS);
        }
        UtcTime first = firstTime(moons);
        UtcTime last = lastTime(moons);
        if (search.from().compareTo(first) < 0 || search.to().compareTo(last) > 0) {
            throw new ProblemException(
                    EventProblem.OUTSIDE_SPAN,
                    system.planet().label(),
                    search.from(),
                    search.to(),
                    first.iso(0),
                    last.iso(0));
        }
    }

    /** First whole day for which events of some moons can be told: that of their places, with the margin a search looks beyond. */
    private UtcTime firstTime(List<Integer> moons) {
        double first = system.firstTdbDay();
        for (MoonFacts moon : system.planet().moons()) {
            first = Math.max(first, moon.motion().firstTdbDay());
        }
        UtcTime time = system.utcAt(first + marginDays(moons) + 3 * LIGHT_DAYS);
        return new UtcTime(time.epochDay() + 1, 0);
    }

    private UtcTime lastTime(List<Integer> moons) {
        double last = system.lastTdbDay();
        for (MoonFacts moon : system.planet().moons()) {
            last = Math.min(last, moon.motion().lastTdbDay());
        }
        UtcTime time = system.utcAt(last - marginDays(moons) - 2 * LIGHT_DAYS);
        return new UtcTime(time.epochDay(), 0);
    }

    private List<Integer> moons(Set<String> ids) {
        List<MoonFacts> all = system.planet().moons();
        List<Integer> wanted = new ArrayList<>();
        for (String id : ids) {
            if (all.stream().noneMatch(m -> m.id().equals(id))) {
                throw new ProblemException(
                        EventProblem.NO_SUCH_MOON,
                        system.planet().label(),
                        id,
                        all.stream().map(MoonFacts::id).collect(Collectors.joining(", ")));
            }
        }
        for (int i = 0; i < all.size(); i++) {
            if (ids.isEmpty() || ids.contains(all.get(i).id())) {
                wanted.add(i);
            }
        }
        return wanted;
    }
}
