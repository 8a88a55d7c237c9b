/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetSystem;
import oblate.sky.Vec3;

/**
 * Finds the events between two moons on one line of sight.
 *
 * <p>Proof that none is lost. Let g be the distance of the two minus that at which the outermost touch happens. Neither moon is ever faster than
 * {@link Orbit#mostKmPerDay}, so g cannot change faster than the sum of both (with what perspective and the viewer's own motion add, a
 * twentieth and half a km/s), and from a look at which g has some size none of its zeros is nearer than that size over that speed: the next look is
 * put there. Within 20 s of a zero looks go on every 20 s; a dip between them shows as a lowest look with both neighbours higher, and the lowest
 * point between those neighbours is bracketed and looked at.
 */
final class MutualFinder {
    private static final double SHORTEST_STEP_DAYS = 20 / 86400.0;
    private static final double S_PER_DAY = 86400;
    private static final double MORE_KM_PER_DAY = 0.5 * S_PER_DAY;
    private static final double MORE_SHARE = 1.05;

    /** Looks within an event for its least distance. */
    private static final int LOOKS = 48;

    private final Sightline line;
    private final int one;
    private final int other;
    private final double mostKmPerDay;
    private final PlanetSystem system;

    MutualFinder(Sightline line, int one, int other, List<Orbit> orbits) {
        this.line = line;
        this.one = one;
        this.other = other;
        mostKmPerDay =
                (orbits.get(one).mostKmPerDay() + orbits.get(other).mostKmPerDay()) * MORE_SHARE + MORE_KM_PER_DAY;
        system = line.clockwork().system();
    }

    Sightline line() {
        return line;
    }

    private Pair pair(double day) {
        return Pair.on(line, one, other, day);
    }

    private double gap(double day) {
        Pair pair = pair(day);
        return pair.apartKm() - pair.reachKm();
    }

    /** Spans of the viewer's clock within which something touches, that begin in a span. */
    List<double[]> touches(double fromDay, double toDay) {
        List<double[]> spans = new ArrayList<>();
        double[] days = {fromDay, fromDay, fromDay};
        double[] gaps = {Double.MAX_VALUE, Double.MAX_VALUE, gap(fromDay)};
        double begin = Double.NaN;
        while (days[2] < toDay || !Double.isNaN(begin)) {
            double step = Math.max(SHORTEST_STEP_DAYS, Math.abs(gaps[2]) / mostKmPerDay);
            shift(days, days[2] + step);
            shift(gaps, gap(days[2]));
            if (gaps[1] > 0 && gaps[2] <= 0) {
                begin = root(days[1], days[2]);
            } else if (gaps[1] <= 0 && gaps[2] > 0) {
                if (!Double.isNaN(begin)) {
                    spans.add(new double[] {begin, root(days[1], days[2])});
                }
                begin = Double.NaN;
            } else if (gaps[1] > 0 && gaps[1] <= gaps[0] && gaps[1] <= gaps[2]) {
                addDip(spans, days);
            }
        }
        return spans;
    }

    private static void shift(double[] three, double next) {
        three[0] = three[1];
        three[1] = three[2];
        three[2] = next;
    }

    private double root(double from, double to) {
        double zero = from;
        return zero + Roots.between(u -> gap(zero + u), 0, to - from).orElseThrow();
    }

    /** A touch that begins and ends between looks. */
    private void addDip(List<double[]> spans, double[] days) {
        if (days[2] - days[0] > 3 * SHORTEST_STEP_DAYS) {
            // the looks' own distance from any zero says that there is none
            return;
        }
        double zero = days[1];
        OptionalDouble lowest = Roots.lowest(u -> gap(zero + u), days[0] - zero, days[2] - zero);
        if (lowest.isPresent() && gap(zero + lowest.getAsDouble()) < 0) {
            double low = zero + lowest.getAsDouble();
            spans.add(new double[] {root(days[0], low), root(low, days[2])});
        }
    }

    /** Moment of the viewer's clock of the least distance within a touch. */
    double leastDay(double[] span) {
        double width = (span[1] - span[0]) / LOOKS;
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int i = 0; i <= LOOKS; i++) {
            double apart = pair(span[0] + i * width).apartKm();
            if (apart < least) {
                least = apart;
                best = i;
            }
        }
        double zero = span[0] + best * width;
        DoubleUnaryOperator square = u -> {
            double apart = pair(zero + u).apartKm();
            return apart * apart;
        };
        double reach = Math.max(width, SHORTEST_STEP_DAYS);
        return zero + Roots.lowest(square, -reach, reach).orElse(0);
    }

    /** When the Earth sees what happens at a moment of the viewer's clock (TDB). */
    double seenDay(double day) {
        if (!line.fromSun()) {
            return day;
        }
        Pair pair = pair(day);
        return line.clockwork().arrivalDay(pair.backPlaceKm(), pair.backDay());
    }

    /** The event of a touch; its middle is at a moment of the viewer's clock. */
    MutualEvent event(double[] span, double leastDay, Sightline fromEarth, Sightline fromSun) {
        Pair middle = pair(leastDay);
        List<MoonFacts> moons = system.planet().moons();
        MoonFacts front = moons.get(middle.front());
        MoonFacts back = moons.get(middle.back());
        double sigmaKm = Math.hypot(front.sigmaKm(), back.sigmaKm());
        Map<MutualContact, Contact> contacts = contacts(span, leastDay, sigmaKm);
        LightDrop drop = new LightDrop(middle.backKm(), middle.frontKm(), middle.penumbraKm());
        double depth = drop.ofBack(middle.apartKm());
        double nearer = drop.ofBack(Math.max(0, middle.apartKm() - sigmaKm));
        double farther = drop.ofBack(middle.apartKm() + sigmaKm);
        double backArea = middle.backKm() * middle.backKm();
        double share = backArea / (backArea + middle.frontKm() * middle.frontKm());
        Set<EventNote> notes = EnumSet.noneOf(EventNote.class);
        addNotes(notes, middle, span, leastDay, fromEarth, fromSun);
        double touchKm = middle.levelKm(MutualContact.T1);
        if (middle.apartKm() > touchKm) {
            notes.add(EventNote.PENUMBRA_ONLY);
        }
        if (Math.abs(middle.apartKm() - (line.fromSun() ? middle.reachKm() : touchKm)) < 2 * sigmaKm) {
            notes.add(EventNote.DOUBTFUL);
        }
        boolean umbral = contacts.containsKey(MutualContact.UMBRA_T1);
        return new MutualEvent(
                system.planet(),
                front,
                back,
                line.fromSun() ? EventKind.ECLIPSE : EventKind.OCCULTATION,
                new Contact(system.utcAt(seenDay(leastDay)), sigmaKm / speedKmS(leastDay), speedKmS(leastDay)),
                middle.apartKm(),
                touchKm,
                contacts,
                depth,
                depth * share,
                (nearer - farther) / 2,
                umbral,
                notes);
    }

    /** Relative speed across the line (km/s) at the least distance: √(½ d²(apart²)/dt²). */
    private double speedKmS(double leastDay) {
        DoubleUnaryOperator square = u -> {
            double apart = pair(leastDay + u).apartKm();
            return apart * apart;
        };
        return Math.sqrt(Math.max(1e-12, Roots.bend(square, 0) / 2)) / S_PER_DAY;
    }

    private static final MutualContact[][] PAIRS = {
        {MutualContact.PENUMBRA_T1, MutualContact.PENUMBRA_T4},
        {MutualContact.T1, MutualContact.T4},
        {MutualContact.UMBRA_T1, MutualContact.UMBRA_T4},
        {MutualContact.T2, MutualContact.T3},
    };

    private Map<MutualContact, Contact> contacts(double[] span, double leastDay, double sigmaKm) {
        Map<MutualContact, Contact> contacts = new EnumMap<>(MutualContact.class);
        double early = span[0] - leastDay - SHORTEST_STEP_DAYS;
        double late = span[1] - leastDay + SHORTEST_STEP_DAYS;
        for (MutualContact[] ends : PAIRS) {
            boolean shadowOnly = ends[0] == MutualContact.PENUMBRA_T1 || ends[0] == MutualContact.UMBRA_T1;
            DoubleUnaryOperator above = u -> {
                Pair pair = pair(leastDay + u);
                return pair.apartKm() - pair.levelKm(ends[0]);
            };
            if (shadowOnly && !line.fromSun() || above.applyAsDouble(0) >= 0 || !reachesBack(ends[0], leastDay)) {
                continue;
            }
            Roots.between(above, early, 0).ifPresent(u -> contacts.put(ends[0], contact(above, leastDay, u, sigmaKm)));
            Roots.between(above, 0, late).ifPresent(u -> contacts.put(ends[1], contact(above, leastDay, u, sigmaKm)));
        }
        return contacts;
    }

    /** The full shadow ends in a point; a back moon beyond it is not touched by it. */
    private boolean reachesBack(MutualContact which, double leastDay) {
        Pair middle = pair(leastDay);
        return which != MutualContact.UMBRA_T1 || middle.frontKm() > middle.penumbraKm();
    }

    private Contact contact(DoubleUnaryOperator above, double leastDay, double offset, double sigmaKm) {
        double speed = Math.abs(Roots.slope(above, offset));
        double sigmaDays = sigmaKm / speed;
        double bend = Roots.bend(above, offset);
        if (bend > 0) {
            sigmaDays = Math.min(sigmaDays, Math.sqrt(2 * sigmaKm / bend));
        }
        return new Contact(system.utcAt(seenDay(leastDay + offset)), sigmaDays * S_PER_DAY, speed / S_PER_DAY);
    }

    private void addNotes(
            Set<EventNote> notes, Pair middle, double[] span, double leastDay, Sightline fromEarth, Sightline fromSun) {
        double first = span[0];
        double last = span[1];
        boolean behindFirst = isBehind(fromEarth, middle, first);
        boolean behindLast = isBehind(fromEarth, middle, last);
        if (behindFirst && behindLast) {
            notes.add(EventNote.WHOLLY_BEHIND_PLANET);
        } else if (behindFirst) {
            notes.add(EventNote.BEGINS_BEHIND_PLANET);
        } else if (behindLast) {
            notes.add(EventNote.ENDS_BEHIND_PLANET);
        }
        boolean darkFirst = isBehind(fromSun, middle, first);
        boolean darkLast = isBehind(fromSun, middle, last);
        if (darkFirst && darkLast) {
            notes.add(EventNote.WHOLLY_IN_SHADOW);
        } else if (darkFirst) {
            notes.add(EventNote.BACK_COMES_OUT_OF_SHADOW);
        } else if (darkLast) {
            notes.add(EventNote.BACK_GOES_INTO_SHADOW);
        }
        if (!line.fromSun() && isDark(fromSun, middle.front(), leastDay)) {
            notes.add(EventNote.FRONT_IN_SHADOW);
        }
        if (against(fromEarth, middle.back(), pair(leastDay)).z() > 0
                && against(fromEarth, middle.back(), pair(leastDay)).inside()) {
            notes.add(EventNote.BEFORE_PLANET);
        }
    }

    /** Whether the back moon's centre is behind the planet for a viewer, at a moment of this line's clock. */
    private boolean isBehind(Sightline viewer, Pair middle, double day) {
        Aspect aspect = against(viewer, middle.back(), pair(day));
        return aspect.z() < 0 && aspect.inside();
    }

    private boolean isDark(Sightline fromSun, int moon, double day) {
        Aspect aspect = against(fromSun, moon, pair(day));
        return aspect.z() < 0 && aspect.inside();
    }

    private Aspect against(Sightline viewer, int moon, Pair pair) {
        Vec3 place = line.clockwork().moonKm(moon, pair.backDay());
        double day = viewer.clockDay(pair.backDay(), place);
        return viewer.aspect(moon, day, system.pole(day));
    }
}
