/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Optional;
import oblate.sky.MoonPlace;
import oblate.sky.PlanetModel;
import oblate.sky.Standpoint;
import oblate.sky.UtcTime;

/** The foretold way of a moon or shadow across the sky, in equatorial radii: x to celestial west along the equator as seen, y to the planet's north. */
final class MoonWay {
    /** Half the step for a speed (s): over it the path of the fastest moon bends by less than 1e-5 radii. */
    private static final double STEP_S = 15;

    private final Standpoint from;
    private final PlanetModel planet;

    MoonWay(Standpoint from, PlanetModel planet) {
        this.from = from;
        this.planet = planet;
    }

    /**
     * A point of the way.
     *
     * @param x radii
     * @param y radii
     * @param speedX radii per second
     * @param speedY radii per second
     * @param place all that is known of the moon then
     */
    record Point(double x, double y, double speedX, double speedY, MoonPlace place) {
        double speed() {
            return Math.hypot(speedX, speedY);
        }
    }

    /** Where it is; empty for a shadow that is not on the side of the globe that is seen. */
    Optional<Point> at(MoonSubject subject, UtcTime time) {
        Optional<double[]> now = xy(subject, time);
        Optional<double[]> after = xy(subject, time.plusClockSeconds(STEP_S));
        Optional<double[]> before = xy(subject, time.plusClockSeconds(-STEP_S));
        if (now.isEmpty() || after.isEmpty() && before.isEmpty()) {
            return Optional.empty();
        }
        double[] a = before.orElse(now.get());
        double[] b = after.orElse(now.get());
        double s = (before.isPresent() ? STEP_S : 0) + (after.isPresent() ? STEP_S : 0);
        return Optional.of(new Point(
                now.get()[0],
                now.get()[1],
                (b[0] - a[0]) / s,
                (b[1] - a[1]) / s,
                place(subject.moon().id(), time)));
    }

    private Optional<double[]> xy(MoonSubject subject, UtcTime time) {
        MoonPlace moon = place(subject.moon().id(), time);
        return subject.shadow()
                ? moon.shadow().map(s -> new double[] {s.xWestRadii(), s.yNorthRadii()})
                : Optional.of(new double[] {moon.xWestRadii(), moon.yNorthRadii()});
    }

    private MoonPlace place(String id, UtcTime time) {
        return from.moons(planet, time).stream()
                .filter(m -> m.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
