/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.sky.Vec3;
import org.junit.jupiter.api.Test;

class EventGeometryTest {

    @Property(tries = 300)
    void outlineDistanceIsThatToTheNearestOfManyPoints(
            @ForAll @DoubleRange(min = -2, max = 2) double x,
            @ForAll @DoubleRange(min = -2, max = 2) double y,
            @ForAll @DoubleRange(min = 0.85, max = 1) double ratio) {
        double least = Double.MAX_VALUE;
        for (int i = 0; i < 20_000; i++) {
            double angle = 2 * Math.PI * i / 20_000;
            least = Math.min(least, Math.hypot(x - Math.cos(angle), y - ratio * Math.sin(angle)));
        }
        Outline outline = new Outline(ratio);
        assertThat(Math.abs(outline.distance(x, y))).isCloseTo(least, within(2e-4));
        assertThat(outline.distance(x, y) < 0).isEqualTo(x * x + y * y / (ratio * ratio) < 1);
        double[] foot = outline.foot(x, y);
        assertThat(Math.hypot(foot[0], foot[1] / ratio)).isCloseTo(1, within(1e-12));
    }

    @Test
    void outlineDistanceOnTheAxes() {
        Outline outline = new Outline(0.9);
        assertThat(outline.distance(0, 0)).isCloseTo(-0.9, within(1e-12));
        assertThat(outline.distance(1.5, 0)).isCloseTo(0.5, within(1e-12));
        assertThat(outline.distance(0, 1.5)).isCloseTo(0.6, within(1e-12));
        assertThat(outline.distance(0, -0.5)).isCloseTo(-0.4, within(1e-12));
        assertThat(outline.distance(-0.95, 0)).isCloseTo(-0.05, within(1e-12));
    }

    @Test
    void trackFollowsAMotionToAMetre() {
        // a moon's turn of 1.77 d with a quick ripple of 500 km at five times its rate
        double rate = 2 * Math.PI / 1.77;
        java.util.function.DoubleFunction<Vec3> motion = t -> new Vec3(
                421_800 * Math.cos(rate * t) + 500 * Math.cos(5 * rate * t), 421_800 * Math.sin(rate * t), 300 * t);
        Track track = new Track(motion, 1.77 / 8, 10_000, 10_100);
        Random random = new Random(5);
        for (int i = 0; i < 1000; i++) {
            double t = 10_000 + 100 * random.nextDouble();
            assertThat(track.at(t).minus(motion.apply(t)).norm()).isLessThan(1e-3);
        }
    }

    @Test
    void rootsAreBracketed() {
        assertThat(Roots.between(t -> t * t * t - 2, 0, 2).orElseThrow()).isCloseTo(Math.cbrt(2), within(1e-8));
        assertThat(Roots.between(t -> Math.sqrt(Math.abs(t)) * Math.signum(t), -0.3, 1)
                        .orElseThrow())
                .isCloseTo(0, within(1e-6));
        assertThat(Roots.between(t -> t * t + 1, -1, 1)).isEmpty();
        assertThat(Roots.lowest(t -> (t - 0.123) * (t - 0.123), -1, 1).orElseThrow())
                .isCloseTo(0.123, within(1e-8));
    }

    @Test
    void lightDropOfSimpleCases() {
        // equal discs half a diameter apart: lens of 2 acos(1/2) - sqrt(3)/2 over pi
        assertThat(new LightDrop(1, 1, 0).ofBack(1))
                .isCloseTo((2 * Math.PI / 3 - Math.sqrt(3) / 2) / Math.PI, within(1e-12));
        assertThat(new LightDrop(1, 2, 0).ofBack(0.5)).isEqualTo(1);
        assertThat(new LightDrop(2, 1, 0).ofBack(0.5)).isCloseTo(0.25, within(1e-12));
        assertThat(new LightDrop(1, 1, 0).ofBack(2.1)).isZero();
        // a Sun like a point is an occultation; one much larger than the shadow takes the share of its own area
        assertThat(new LightDrop(1, 1, 0.01).ofBack(1)).isCloseTo(new LightDrop(1, 1, 0).ofBack(1), within(0.02));
        assertThat(new LightDrop(0.1, 1, 4).ofBack(0)).isCloseTo(1 / 16.0, within(1e-12));
    }
}
