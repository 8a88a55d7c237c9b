/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetSystem;
import oblate.sky.Vec3;

/**
 * Works one conjunction out into a passage: the least distance first, then each contact on its side of it.
 *
 * <p>The moon's distance from the outline is a convex function of its place, and its path past the planet is all but straight, so that distance
 * falls to one lowest point and rises again. A level that lies above the lowest point is therefore crossed just twice, once on each side, and one
 * that lies below it never: no graze is lost and none invented. Where the middle of the passage is not yet below a level, the lowest point of the
 * distance minus that level is itself bracketed and looked at before any root is sought.
 */
final class PassageFinder {
    /** Standard error of a planet's limb (km): the IAU gives 4 km for the equator of Jupiter and Saturn, 10 km for the poles. */
    private static final double LIMB_SIGMA_KM = 10;

    /** Half the span in which contacts are looked for, in turns: at 60 deg from conjunction a moon stands well off its planet. */
    private static final double SIDE_TURNS = 1.0 / 6;

    /** How far about a guess a contact is sought first, as a share of its time from the middle. */
    private static final double GUESS_SHARE = 0.03;

    /** From this error on (days; 86 s) a contact counts as a graze. */
    private static final double GRAZING_SIGMA_DAYS = 1e-3;

    private static final double S_PER_DAY = 86400;

    private final Sightline line;
    private final int moon;
    private final MoonFacts facts;
    private final Orbit orbit;
    private final PlanetSystem system;
    private final double radiusKm;
    private final double sigmaKm;

    PassageFinder(Sightline line, int moon, Orbit orbit) {
        this.line = line;
        this.moon = moon;
        this.orbit = orbit;
        system = line.clockwork().system();
        facts = system.planet().moons().get(moon);
        radiusKm = system.planet().globe().figure().equatorialRadiusKm();
        sigmaKm = Math.hypot(facts.sigmaKm(), LIMB_SIGMA_KM);
    }

    /**
     * One passage on the viewer's clock, before its times are brought to the Earth.
     *
     * @param kind what it is
     * @param zeroDay moment of the viewer's clock all others are counted from
     * @param pole unit vector to the planet's pole, which stands still for a passage's hours
     * @param mid least distance of the centres (days from the zero)
     * @param least that distance (radii)
     * @param contacts contacts with the outline (days from the zero)
     */
    record Course(
            EventKind kind, double zeroDay, Vec3 pole, double mid, double least, Map<ContactKind, Double> contacts) {}

    /** The least distance and the contacts of a conjunction. */
    Course course(Conjunction conjunction) {
        EventKind kind = kind(conjunction.behind());
        double zero = (conjunction.beforeDay() + conjunction.afterDay()) / 2;
        Vec3 pole = system.pole(zero);
        double half = (conjunction.afterDay() - conjunction.beforeDay()) / 2;
        DoubleUnaryOperator square = u -> {
            Aspect a = line.aspect(moon, zero + u, pole);
            return a.x() * a.x() + a.y() * a.y();
        };
        double mid = Roots.lowest(square, -1.5 * half, 1.5 * half)
                .orElseGet(() -> Roots.lowest(square, -2 * half, 2 * half)
                        .orElseThrow(() -> new IllegalStateException("no least distance near day " + zero)));
        double least = Math.sqrt(square.applyAsDouble(mid));
        Map<ContactKind, Double> contacts = new EnumMap<>(ContactKind.class);
        Aspect middle = line.aspect(moon, zero + mid, pole);
        for (ContactKind[] pair : OUTLINE_PAIRS) {
            // the outline reaches out to one radius at most
            if (pair[0].belongsTo(kind) && least - 1 < level(pair[0], middle)) {
                addPair(
                        contacts,
                        pair,
                        u -> above(pair[0], zero + u, pole),
                        mid,
                        halfChordDays(middle, square, mid, pair[0]));
            }
        }
        return new Course(kind, zero, pole, mid, least, contacts);
    }

    private static final ContactKind[][] OUTLINE_PAIRS = {
        {ContactKind.T1, ContactKind.T4},
        {ContactKind.INGRESS_CENTRE, ContactKind.EGRESS_CENTRE},
        {ContactKind.T2, ContactKind.T3},
        {ContactKind.PENUMBRA_T1, ContactKind.PENUMBRA_T4},
        {ContactKind.UMBRA_T2, ContactKind.UMBRA_T3},
    };

    private EventKind kind(boolean behind) {
        if (line.fromSun()) {
            return behind ? EventKind.ECLIPSE : EventKind.SHADOW_TRANSIT;
        }
        return behind ? EventKind.OCCULTATION : EventKind.TRANSIT;
    }

    private void addPair(
            Map<ContactKind, Double> contacts,
            ContactKind[] pair,
            DoubleUnaryOperator above,
            double mid,
            double guess) {
        double side = orbit.periodDays() * SIDE_TURNS;
        double low = mid;
        if (above.applyAsDouble(mid) >= 0) {
            OptionalDouble lowest = Roots.lowest(above, mid - side / 2, mid + side / 2);
            if (lowest.isEmpty() || above.applyAsDouble(lowest.getAsDouble()) >= 0) {
                return;
            }
            low = lowest.getAsDouble();
        }
        OptionalDouble coming = crossing(above, low, mid - guess, mid - side);
        OptionalDouble leaving = crossing(above, low, mid + guess, mid + side);
        if (coming.isPresent() && leaving.isPresent()) {
            contacts.put(pair[0], coming.getAsDouble());
            contacts.put(pair[1], leaving.getAsDouble());
        }
    }

    /** The crossing between a moment inside and one outside, sought close to a guess first. */
    private static OptionalDouble crossing(DoubleUnaryOperator above, double inside, double guess, double outside) {
        double reach = (guess - inside) * GUESS_SHARE;
        OptionalDouble near = Roots.between(above, guess - reach, guess + reach);
        return near.isPresent() ? near : Roots.between(above, inside, outside);
    }

    /** About how long the moon takes from the middle to a contact (days), on a straight way. */
    private double halfChordDays(Aspect middle, DoubleUnaryOperator square, double mid, ContactKind which) {
        double level = level(which, middle);
        double across = 1 + level;
        double up = middle.outline().axisRatio() + level;
        double share = 1 - middle.y() * middle.y() / (up * up);
        double speed = Math.sqrt(Roots.bend(square, mid) / 2);
        return across * Math.sqrt(Math.max(0.02, share)) / speed;
    }

    /** Distance from the outline at which a contact happens (radii). */
    private static double level(ContactKind which, Aspect aspect) {
        return which.moonRadii() * aspect.moonRadius() + which.penumbraWidths() * aspect.penumbraWidth();
    }

    /** Distance from the outline minus that at which a contact happens (radii). */
    private double above(ContactKind which, double day, Vec3 pole) {
        Aspect aspect = line.aspect(moon, day, pole);
        return aspect.fromOutline() - level(which, aspect);
    }

    /** When the Earth sees the middle (TDB). */
    double midDay(Course course) {
        Aspect aspect = line.aspect(moon, course.zeroDay() + course.mid(), course.pole());
        return switch (course.kind()) {
            case TRANSIT, OCCULTATION -> course.zeroDay() + course.mid();
            case ECLIPSE -> line.clockwork().arrivalDay(aspect.moonKm(), aspect.moonDay());
            case SHADOW_TRANSIT -> line.clockwork().arrivalDay(aspect.centreKm(), aspect.centreDay());
        };
    }

    /** The middle with its error: the orbit's, along the moon's way. */
    Contact middle(Course course) {
        DoubleUnaryOperator x =
                u -> line.aspect(moon, course.zeroDay() + u, course.pole()).x();
        DoubleUnaryOperator y =
                u -> line.aspect(moon, course.zeroDay() + u, course.pole()).y();
        double speed = Math.hypot(Roots.slope(x, course.mid()), Roots.slope(y, course.mid())) * radiusKm / S_PER_DAY;
        return new Contact(system.utcAt(midDay(course)), facts.sigmaKm() / speed, speed);
    }

    /** When the Earth sees what happens at a moment of the viewer's clock (TDB): at the moon, or for a shadow where it falls. */
    private double seenDay(Course course, double offset, Optional<Vec3> onGlobeKm) {
        double day = course.zeroDay() + offset;
        if (!course.kind().fromSun()) {
            return day;
        }
        Aspect aspect = line.aspect(moon, day, course.pole());
        if (course.kind() == EventKind.ECLIPSE) {
            return line.clockwork().arrivalDay(aspect.moonKm(), aspect.moonDay());
        }
        Vec3 point = onGlobeKm.orElseGet(() -> new GlobeSide(system, course.pole()).limb(aspect));
        return line.clockwork().arrivalDay(aspect.centreKm().plus(point), aspect.centreDay());
    }

    /** Contacts with the outline, in the Earth's time. */
    Map<ContactKind, Contact> contacts(Course course) {
        Map<ContactKind, Contact> all = new EnumMap<>(ContactKind.class);
        course.contacts().forEach((which, offset) -> all.put(which, contact(course, which, offset, Optional.empty())));
        return all;
    }

    /**
     * A contact with its error. To first order that is the orbit's over the speed across the outline; at a graze the speed goes to nothing, but the
     * contact cannot shift by more than the time the bent path takes to fall by the error, √(2σ/bend).
     */
    Contact contact(Course course, ContactKind which, double offset, Optional<Vec3> onGlobeKm) {
        DoubleUnaryOperator above = u -> above(which, course.zeroDay() + u, course.pole());
        double sigma = sigmaKm / radiusKm;
        double speed = Math.abs(Roots.slope(above, offset));
        double sigmaDays = sigma / speed;
        if (sigmaDays > GRAZING_SIGMA_DAYS) {
            double bend = Roots.bend(above, offset);
            sigmaDays = bend > 0 ? Math.min(sigmaDays, Math.sqrt(2 * sigma / bend)) : sigmaDays;
        }
        return new Contact(
                system.utcAt(seenDay(course, offset, onGlobeKm)), sigmaDays * S_PER_DAY, speed * radiusKm / S_PER_DAY);
    }
}
