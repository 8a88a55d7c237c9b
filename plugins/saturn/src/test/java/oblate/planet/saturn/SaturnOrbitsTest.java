/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.saturn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import oblate.sky.MoonFacts;
import oblate.sky.Vec3;

/** What any orbit about Saturn must do, at any time of the span: a series that runs wild between the rows of its fit fails here. */
class SaturnOrbitsTest {
    private static final double SYSTEM_GM = 37931206;

    /** Mean distances (km) and eccentricities as in common tables, from memory; Hyperion's range of eccentricity is wide. */
    private static final double[][] ORBITS = {
        {185540, 0.020}, {238040, 0.005}, {294670, 0.000}, {377420, 0.002},
        {527070, 0.001}, {1221870, 0.029}, {1481500, 0.130}, {3560850, 0.029}
    };

    @Property(tries = 500, seed = "20240908")
    void distanceAndSpeedAreThoseOfTheOrbit(
            @ForAll @IntRange(max = 7) int index, @ForAll @DoubleRange(max = 1) double share) {
        MoonFacts moon = new Saturn().moons().get(index);
        double first = moon.motion().firstTdbDay();
        double t = first + share * (moon.motion().lastTdbDay() - first);
        double a = ORBITS[index][0];
        double e = ORBITS[index][1];
        Vec3 at = moon.motion().fromPlanetKm(t);
        assertThat(at.norm()).as(moon.name()).isBetween(a * (1 - e - 0.006), a * (1 + e + 0.006));
        double stepDays = 0.001;
        Vec3 ahead = moon.motion().fromPlanetKm(t + stepDays);
        Vec3 behind = moon.motion().fromPlanetKm(t - stepDays);
        double speedKmS = ahead.minus(behind).norm() / (2 * stepDays * 86400);
        double expected = Math.sqrt(SYSTEM_GM * (2 / at.norm() - 1 / a));
        assertThat(speedKmS / expected).as(moon.name()).isCloseTo(1, within(0.01));
    }

    /** The force is Saturn's: the acceleration points at it and is GM/r² but for its flattening (under 0.8 % at Mimas) and the Sun. */
    @Property(tries = 500, seed = "20240909")
    void accelerationIsSaturnsPull(@ForAll @IntRange(max = 7) int index, @ForAll @DoubleRange(max = 1) double share) {
        MoonFacts moon = new Saturn().moons().get(index);
        double first = moon.motion().firstTdbDay() + 1;
        double t = first + share * (moon.motion().lastTdbDay() - 1 - first);
        double stepDays = 2e-3 * Math.pow(ORBITS[index][0] / 185540, 1.5);
        Vec3 at = moon.motion().fromPlanetKm(t);
        Vec3 bend = moon.motion()
                .fromPlanetKm(t + stepDays)
                .plus(moon.motion().fromPlanetKm(t - stepDays))
                .minus(at.times(2))
                .times(1 / Math.pow(stepDays * 86400, 2));
        double pull = SYSTEM_GM / Math.pow(at.norm(), 2);
        Vec3 off = bend.plus(pull, at.unit());
        assertThat(off.norm() / pull).as(moon.name()).isLessThan(0.012);
    }
}
