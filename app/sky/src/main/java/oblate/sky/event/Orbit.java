/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import oblate.sky.MoonFacts;
import oblate.sky.MoonMotion;
import oblate.sky.Vec3;

/**
 * How fast a moon goes round.
 *
 * @param periodDays time of one turn (days), from the mean rate over a few turns in the middle of the span its motion is known for
 */
record Orbit(double periodDays) {
    private static final int SAMPLES = 256;
    private static final int TURNS = 4;

    /** From the motion itself, always at the same dates, so that every search of any span has the same. */
    static Orbit of(MoonFacts moon) {
        MoonMotion motion = moon.motion();
        double middle = Math.rint((motion.firstTdbDay() + motion.lastTdbDay()) / 2);
        double guess = 2 * Math.PI / rate(motion, middle);
        double sum = 0;
        for (int i = 0; i < SAMPLES; i++) {
            sum += rate(motion, middle + guess * TURNS * i / SAMPLES);
        }
        return new Orbit(2 * Math.PI * SAMPLES / sum);
    }

    /** Angular rate (rad per day): |r × v| / r². */
    private static double rate(MoonMotion motion, double day) {
        double step = 1e-3;
        Vec3 place = motion.fromPlanetKm(day);
        Vec3 velocity = motion.fromPlanetKm(day + step)
                .minus(motion.fromPlanetKm(day - step))
                .times(1 / (2 * step));
        return place.cross(velocity).norm() / place.dot(place);
    }
}
