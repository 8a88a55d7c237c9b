/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetSystem;
import oblate.sky.Vec3;

/** Says what the Earth sees of a passage: which part is hidden behind the planet, in its shadow, beyond its limb or over its unlit edge. */
final class PassageReader {
    /** Looks along a shadow's way for a part that the Earth sees. */
    private static final int LOOKS = 24;

    /** An edge of the globe nearer than this to the outline (days; 0.5 s) counts as the outline itself. */
    private static final double LEAST_SHIFT_DAYS = 0.5 / 86400;

    private final Sightline fromEarth;
    private final Sightline fromSun;
    private final int moon;
    private final PlanetSystem system;
    private final MoonFacts facts;

    PassageReader(Sightline fromEarth, Sightline fromSun, int moon) {
        this.fromEarth = fromEarth;
        this.fromSun = fromSun;
        this.moon = moon;
        system = fromEarth.clockwork().system();
        facts = system.planet().moons().get(moon);
    }

    /** The passage whole. */
    Passage read(PassageFinder finder, PassageFinder.Course course) {
        Map<ContactKind, Contact> contacts = finder.contacts(course);
        Set<EventNote> notes = EnumSet.noneOf(EventNote.class);
        Optional<Boolean> ingressVisible = Optional.empty();
        Optional<Boolean> egressVisible = Optional.empty();
        if (course.contacts().containsKey(ContactKind.T1)) {
            switch (course.kind()) {
                case SHADOW_TRANSIT -> addSeen(finder, course, contacts, notes);
                case TRANSIT -> addLit(finder, course, contacts, notes);
                default -> {
                    double coming = end(course, ContactKind.INGRESS_CENTRE, ContactKind.T1);
                    double leaving = end(course, ContactKind.EGRESS_CENTRE, ContactKind.T4);
                    boolean seenFirst = !isHidden(course, coming);
                    boolean seenLast = !isHidden(course, leaving);
                    ingressVisible = Optional.of(seenFirst);
                    egressVisible = Optional.of(seenLast);
                    noteHidden(course, seenFirst, seenLast, notes);
                    if (course.kind() == EventKind.OCCULTATION) {
                        addLit(finder, course, contacts, notes);
                    }
                }
            }
            if (!course.contacts().containsKey(ContactKind.T2)) {
                notes.add(EventNote.PARTIAL);
            }
        } else if (course.contacts().containsKey(ContactKind.PENUMBRA_T1)) {
            notes.add(EventNote.PENUMBRA_ONLY);
        }
        if (isDoubtful(course)) {
            notes.add(EventNote.DOUBTFUL);
        }
        return new Passage(
                system.planet(),
                facts,
                course.kind(),
                finder.middle(course),
                course.least(),
                contacts,
                ingressVisible,
                egressVisible,
                notes);
    }

    private static double end(PassageFinder.Course course, ContactKind centre, ContactKind touch) {
        return course.contacts().getOrDefault(centre, course.contacts().get(touch));
    }

    private static void noteHidden(
            PassageFinder.Course course, boolean seenFirst, boolean seenLast, Set<EventNote> notes) {
        boolean eclipse = course.kind() == EventKind.ECLIPSE;
        if (!seenFirst && !seenLast) {
            notes.add(eclipse ? EventNote.WHOLLY_BEHIND_PLANET : EventNote.WHOLLY_IN_SHADOW);
        } else if (!seenFirst) {
            notes.add(eclipse ? EventNote.BEGINS_BEHIND_PLANET : EventNote.BEGINS_IN_SHADOW);
        } else if (!seenLast) {
            notes.add(eclipse ? EventNote.ENDS_BEHIND_PLANET : EventNote.ENDS_IN_SHADOW);
        }
    }

    /** Eclipses: whether the moon is behind the planet for the Earth then. Occultations: whether it is in the planet's shadow. By the centres. */
    private boolean isHidden(PassageFinder.Course course, double offset) {
        double day = course.zeroDay() + offset;
        Sightline line = course.kind().fromSun() ? fromSun : fromEarth;
        Sightline other = course.kind().fromSun() ? fromEarth : fromSun;
        Aspect aspect = line.aspect(moon, day, course.pole());
        double onOther = other.clockDay(aspect.moonDay(), aspect.moonKm());
        Aspect crossed = other.aspect(moon, onOther, course.pole());
        return crossed.z() < 0 && crossed.inside();
    }

    /** Whether the least distance lies within two standard errors of a touch. */
    private boolean isDoubtful(PassageFinder.Course course) {
        Sightline line = course.kind().fromSun() ? fromSun : fromEarth;
        Aspect middle = line.aspect(moon, course.zeroDay() + course.mid(), course.pole());
        double sigma = facts.sigmaKm() / system.planet().globe().figure().equatorialRadiusKm();
        return Math.abs(middle.fromOutline() - middle.moonRadius()) < 2 * sigma;
    }

    /** How high over the horizon of the moon's point on the globe, as one viewer has it, the other one stands, against the course's time. */
    private DoubleUnaryOperator height(PassageFinder.Course course, Sightline viewer, Sightline other) {
        GlobeSide side = new GlobeSide(system, course.pole());
        return u -> {
            Aspect aspect = viewer.aspect(moon, course.zeroDay() + u, course.pole());
            Vec3 point = side.under(aspect).orElseGet(() -> side.limb(aspect));
            Vec3 place = aspect.centreKm().plus(point);
            return side.height(point, other.viewerKm(aspect.centreDay()).minus(place));
        };
    }

    /** When the shadow's axis is on the side of the globe that the Earth sees. */
    private void addSeen(
            PassageFinder finder,
            PassageFinder.Course course,
            Map<ContactKind, Contact> contacts,
            Set<EventNote> notes) {
        Crossing crossing = crossing(course, height(course, fromSun, fromEarth));
        crossing.first.ifPresent(u ->
                contacts.put(ContactKind.SEEN_INGRESS, onGlobe(finder, course, ContactKind.SEEN_INGRESS, u, contacts)));
        crossing.last.ifPresent(u ->
                contacts.put(ContactKind.SEEN_EGRESS, onGlobe(finder, course, ContactKind.SEEN_EGRESS, u, contacts)));
        if (crossing.isNever) {
            notes.add(EventNote.WHOLLY_ON_FAR_SIDE);
        } else if (crossing.isLate) {
            notes.add(EventNote.BEGINS_ON_FAR_SIDE);
        } else if (crossing.isEarly) {
            notes.add(EventNote.ENDS_ON_FAR_SIDE);
        }
    }

    /** When the moon's centre stands before the lit part of the globe, or hides behind it. */
    private void addLit(
            PassageFinder finder,
            PassageFinder.Course course,
            Map<ContactKind, Contact> contacts,
            Set<EventNote> notes) {
        Crossing crossing = crossing(course, height(course, fromEarth, fromSun));
        crossing.first.ifPresent(u ->
                contacts.put(ContactKind.LIT_INGRESS, onGlobe(finder, course, ContactKind.LIT_INGRESS, u, contacts)));
        crossing.last.ifPresent(u ->
                contacts.put(ContactKind.LIT_EGRESS, onGlobe(finder, course, ContactKind.LIT_EGRESS, u, contacts)));
        boolean transit = course.kind() == EventKind.TRANSIT;
        if (crossing.isLate) {
            notes.add(transit ? EventNote.BEGINS_ON_UNLIT_LIMB : EventNote.GOES_AT_UNLIT_LIMB);
        }
        if (crossing.isEarly) {
            notes.add(transit ? EventNote.ENDS_ON_UNLIT_LIMB : EventNote.RETURNS_AT_UNLIT_LIMB);
        }
    }

    /** Where a point that crosses the globe is above a body's horizon: first and last moment, and whether those are not the outline's own. */
    private record Crossing(
            Optional<Double> first, Optional<Double> last, boolean isLate, boolean isEarly, boolean isNever) {}

    private static Crossing crossing(PassageFinder.Course course, DoubleUnaryOperator height) {
        Map<ContactKind, Double> on = course.contacts();
        if (!on.containsKey(ContactKind.INGRESS_CENTRE)) {
            return new Crossing(Optional.empty(), Optional.empty(), false, false, false);
        }
        double coming = on.get(ContactKind.INGRESS_CENTRE);
        double leaving = on.get(ContactKind.EGRESS_CENTRE);
        OptionalDouble up = highest(height, coming, leaving);
        if (up.isEmpty()) {
            return new Crossing(Optional.empty(), Optional.empty(), false, false, true);
        }
        double first = height.applyAsDouble(coming) < 0
                ? Roots.between(height, coming, up.getAsDouble()).orElse(coming)
                : coming;
        double last = height.applyAsDouble(leaving) < 0
                ? Roots.between(height, up.getAsDouble(), leaving).orElse(leaving)
                : leaving;
        boolean late = first - coming > LEAST_SHIFT_DAYS;
        boolean early = leaving - last > LEAST_SHIFT_DAYS;
        return new Crossing(
                Optional.of(late ? first : coming), Optional.of(early ? last : leaving), late, early, false);
    }

    /** A moment at which the point is above the horizon: the middle, or the best of some looks. */
    private static OptionalDouble highest(DoubleUnaryOperator height, double coming, double leaving) {
        double best = (coming + leaving) / 2;
        double top = height.applyAsDouble(best);
        for (int i = 1; i < LOOKS && top <= 0; i++) {
            double at = coming + (leaving - coming) * i / LOOKS;
            double here = height.applyAsDouble(at);
            if (here > top) {
                top = here;
                best = at;
            }
        }
        return top > 0 ? OptionalDouble.of(best) : OptionalDouble.empty();
    }

    /** A contact with an edge of the globe; one that is the outline's own is that contact itself. */
    private Contact onGlobe(
            PassageFinder finder,
            PassageFinder.Course course,
            ContactKind which,
            double offset,
            Map<ContactKind, Contact> contacts) {
        ContactKind own = which.coming() ? ContactKind.INGRESS_CENTRE : ContactKind.EGRESS_CENTRE;
        if (offset == course.contacts().get(own)) {
            return contacts.get(own);
        }
        Sightline line = course.kind().fromSun() ? fromSun : fromEarth;
        Aspect aspect = line.aspect(moon, course.zeroDay() + offset, course.pole());
        Optional<Vec3> point = new GlobeSide(system, course.pole()).under(aspect);
        return finder.contact(course, which, offset, point);
    }
}
