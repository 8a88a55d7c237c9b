/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import oblate.sky.MoonFacts;
import oblate.sky.MoonMotion;
import oblate.sky.Vec3;

/**
 * How fast a moon goes.
 *
 * @param periodDays time of one turn (days), from the mean rate over a few turns in the middle of the span its motion is known for
 * @param mostKmPerDay a speed that it never exceeds (km per day): the fastest of some hundred samples all over the span, and a
 *     twentieth more
 */
record Orbit(double periodDays, double mostKmPerDay) {
    private static final double MORE_THAN_SAMPLED = 1.05;
    private static final int SAMPLES = 256;
    private static final int TURNS = 4;
    private static final int SPEED_SAMPLES = 509;

    /** From the motion itself, always at the same dates, so that every search of any span has the same. */
    static Orbit of(MoonFacts moon) {
        MoonMotion motion = moon.motion();
        double middle = Math.rint((motion.firstTdbDay() + motion.lastTdbDay()) / 2);
        double guess = 2 * Math.PI / rate(motion, middle);
        double sum = 0;
        for (int i = 0; i < SAMPLES; i++) {
            sum += rate(motion, middle + guess * TURNS * i / SAMPLES);
        }
        return new Orbit(2 * Math.PI * SAMPLES / sum, fastestKmPerDay(motion) * MORE_THAN_SAMPLED);
    }

    /** The fastest of samples all over the span, so that slow changes of the orbit's shape are in it. */
    private static double fastestKmPerDay(MoonMotion motion) {
        double first = motion.firstTdbDay() + 1;
        double length = motion.lastTdbDay() - 1 - first;
        double most = 0;
        for (int i = 0; i < SPEED_SAMPLES; i++) {
            most = Math.max(
                    most, velocity(motion, first + length * i / SPEED_SAMPLES).norm());
        }
        return most;
    }

    /** Angular rate (rad per day): |r × v| / r². */
    private static double rate(MoonMotion motion, double day) {
        Vec3 place = motion.fromPlanetKm(day);
        return place.cross(velocity(motion, day)).norm() / place.dot(place);
    }

    private static Vec3 velocity(MoonMotion motion, double day) {
        double step = 1e-3;
        return motion.fromPlanetKm(day + step)
                .minus(motion.fromPlanetKm(day - step))
                .times(1 / (2 * step));
    }
}
