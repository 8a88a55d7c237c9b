/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.ArrayList;
import java.util.List;
import oblate.sky.Vec3;

/**
 * Finds every conjunction of a moon with its planet.
 *
 * <p>Proof that none is lost. Let λ be the moon's longitude about the planet's axis, counted from the viewer's. The moon runs round the axis
 * without turning back, so λ grows (or falls, for a backward moon) all the time, and the moon's distance from the plane through axis and viewer
 * is x = ρ sin λ with ρ &gt; 0: it changes sign where λ passes a multiple of π, and nowhere else. Between two looks less than π apart in λ there is
 * at most one such place, so one change of sign is one conjunction and no change is none. The looks are an eighth of the mean turn apart; λ would have
 * to run four times as fast as in the mean to gain π. By Kepler's second law the fastest rate is (1 + e)² (1 − e²)^−1.5 of the mean one (1.13 for
 * e = 0.06) times 1/cos i for an orbit tilted by i to the equator (1.06 for 20°); the viewer's own part is under 1 % of it. That λ advanced by no
 * more than 3π/4, all one way, is checked at every step, so a moon for which the argument fails is refused and not misread.
 */
final class ConjunctionFinder {
    private static final int LOOKS_PER_TURN = 8;
    private static final double MOST_ADVANCE_RAD = 3 * Math.PI / 4;

    private final Sightline line;
    private final int moon;
    private final double stepDays;

    ConjunctionFinder(Sightline line, int moon, Orbit orbit) {
        this.line = line;
        this.moon = moon;
        stepDays = orbit.periodDays() / LOOKS_PER_TURN;
    }

    /** The conjunctions that touch a span of the viewer's clock. Looks are at whole multiples of the step, whatever the span. */
    List<Conjunction> between(double fromDay, double toDay) {
        List<Conjunction> found = new ArrayList<>();
        long first = (long) Math.floor(fromDay / stepDays);
        long last = (long) Math.ceil(toDay / stepDays);
        Vec3 pole = line.clockwork().system().pole(fromDay);
        double before = longitudeRad(first * stepDays, pole);
        double way = 0;
        for (long i = first + 1; i <= last; i++) {
            double after = longitudeRad(i * stepDays, pole);
            double advance = Math.IEEEremainder(after - before, 2 * Math.PI);
            if (Math.abs(advance) > MOST_ADVANCE_RAD || advance * way < 0) {
                throw new IllegalStateException("moon " + moon + " does not run round its planet evenly");
            }
            way = advance;
            if (Math.sin(before) * Math.sin(after) < 0 || Math.sin(after) == 0) {
                boolean behind = Math.cos(before) + Math.cos(after) < 0;
                found.add(new Conjunction((i - 1) * stepDays, i * stepDays, behind));
            }
            before = after;
        }
        return found;
    }

    /** λ (rad, −π…π): 0 when the moon stands before the planet. */
    private double longitudeRad(double day, Vec3 pole) {
        Aspect aspect = line.aspect(moon, day, pole);
        Vec3 back = aspect.toward().times(-1);
        Vec3 zero = back.plus(-back.dot(pole), pole).unit();
        Vec3 place = aspect.moonKm().minus(aspect.centreKm());
        return Math.atan2(place.dot(pole.cross(zero)), place.dot(zero));
    }
}
