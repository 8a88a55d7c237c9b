/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import oblate.sky.MoonFacts;
import oblate.sky.MoonMotion;
import oblate.sky.Vec3;

/**
 * How fast a moon goes.
 *
 * @param periodDays time of one turn (days), from the mean rate over a few turns in the middle of the span its motion is known for
 * @param mostKmPerDay a speed that it never exceeds (km per day): the fastest of those samples and a twentieth
 */
record Orbit(double periodDays, double mostKmPerDay) {
    private static final double MORE_THAN_SAMPLED = 1.05;
    private static final int SAMPLES = 256;
    private static final int TURNS = 4;

    /** From the motion itself, always at the same dates, so that every search of any span has the same. */
    static Orbit of(MoonFacts moon) {
        MoonMotion motion = moon.motion();
        double middle = Math.rint((motion.firstTdbDay() + motion.lastTdbDay()) / 2);
        double guess = 2 * Math.PI / rate(motion, middle);
        double sum = 0;
        double most = 0;
        for (int i = 0; i < SAMPLES; i++) {
            double day = middle + guess * TURNS * i / SAMPLES;
            sum += rate(motion, day);
            most = Math.max(most, velocity(motion, day).norm());
        }
        return new Orbit(2 * Math.PI * SAMPLES / sum, most * MORE_THAN_SAMPLED);
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
