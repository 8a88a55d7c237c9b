/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class GeometryTest {
    private static final Feature.Look LOOK = new Feature.Look(1, 1, 1, 1, "white");

    @Property(tries = 300)
    void aRayFindsThePointThatIsSeenThere(
            @ForAll @DoubleRange(min = -80, max = 80) double lat,
            @ForAll @DoubleRange(min = -80, max = 80) double east,
            @ForAll @DoubleRange(min = -30, max = 30) double tilt,
            @ForAll @DoubleRange(min = 0.88, max = 1) double ratio) {
        GlobeView view = new GlobeView(ratio, tilt, List.of(10.0, 20.0, 30.0), 1, 0, 0);
        GlobeView.Seen seen = view.seen(20 - east, 1, lat);
        if (seen.emissionDeg() > 85) {
            return;
        }
        Ray ray = new Ray(view);
        assertThat(ray.cast(seen.x(), seen.y())).isTrue();
        assertThat(ray.latGraphicDeg).isCloseTo(lat, offset(1e-7));
        assertThat(ray.eastDeg).isCloseTo(east, offset(1e-7));
        assertThat(Math.toDegrees(Math.acos(ray.mu))).isCloseTo(seen.emissionDeg(), offset(1e-5));
    }

    @Property(tries = 200)
    void raysMissOutsideTheOutlineAndHitInside(
            @ForAll @DoubleRange(min = 0, max = 6.28) double angle,
            @ForAll @DoubleRange(min = -30, max = 30) double tilt) {
        GlobeView view = new GlobeView(0.9351, tilt, List.of(0.0, 0.0, 0.0), 1, 0, 0);
        Ray ray = new Ray(view);
        double y = view.outlineRatio() * Math.sin(angle);
        assertThat(ray.cast(0.9999 * Math.cos(angle), 0.9999 * y)).isTrue();
        assertThat(ray.cast(1.0001 * Math.cos(angle), 1.0001 * y)).isFalse();
    }

    @Property
    void aChangeOfRateBendsWithoutAJump(
            @ForAll @DoubleRange(min = -40, max = 40) double change,
            @ForAll @DoubleRange(min = -60, max = 60) double day) {
        Feature f = new Feature(
                "t",
                "dark spot",
                Feature.Tone.DARK,
                "2",
                100,
                0.5,
                Optional.of(new Feature.Change(change, -0.25)),
                0,
                1,
                1,
                LOOK);
        assertThat(f.lonAtDeg(0)).isCloseTo(100, offset(1e-12));
        double rate = (f.lonAtDeg(day + 1e-6) - f.lonAtDeg(day)) / 1e-6;
        if (Math.abs(day - change) > 1e-5) {
            assertThat(rate).isCloseTo(day < change ? 0.5 : -0.25, offset(1e-6));
        }
        assertThat(f.lonAtDeg(change + 1e-9)).isCloseTo(f.lonAtDeg(change - 1e-9), offset(1e-7));
    }

    @Test
    void poleAndEastPointAsTheConventionSays() {
        CameraFrame up = new CameraFrame(10, 20, 100, 0, false);
        assertThat(up.xPx(0, 1)).isCloseTo(10, offset(1e-9));
        assertThat(up.yPx(0, 1)).isCloseTo(-80, offset(1e-9));
        assertThat(up.xPx(1, 0)).isCloseTo(110, offset(1e-9));
        CameraFrame quarter = new CameraFrame(10, 20, 100, 90, false);
        assertThat(quarter.xPx(0, 1))
                .as("counter-clockwise: the pole points left")
                .isCloseTo(-90, offset(1e-9));
        assertThat(quarter.yPx(1, 0)).as("and planetary east up").isCloseTo(-80, offset(1e-9));
        CameraFrame mirrored = new CameraFrame(10, 20, 100, 0, true);
        assertThat(mirrored.xPx(1, 0)).isCloseTo(-90, offset(1e-9));
    }

    @Test
    void aBlurMovesTheMiddleByTheShiftAndKeepsTheLight() {
        float[] plane = new float[61 * 61];
        plane[30 * 61 + 30] = 1;
        float[] out = Darkroom.blurred(plane, 61, 2.0, 0.37, -0.81);
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int i = 0; i < out.length; i++) {
            sum += out[i];
            x += out[i] * (i % 61);
            y += out[i] * (double) (i / 61);
        }
        assertThat(sum).isCloseTo(1, offset(1e-5));
        assertThat(x / sum).isCloseTo(30.37, offset(1e-3));
        assertThat(y / sum).isCloseTo(29.19, offset(1e-3));
    }

    @Test
    void theBellIsABell() {
        Dice dice = new Dice(5);
        double sum = 0;
        double squares = 0;
        int n = 200_000;
        for (int i = 0; i < n; i++) {
            double v = dice.bell();
            sum += v;
            squares += v * v;
        }
        assertThat(sum / n).isCloseTo(0, offset(0.01));
        assertThat(squares / n).isCloseTo(1, offset(0.02));
    }

    @Test
    void theVerticalRunsNorthOnTheMeridianAndEastOfNorthInTheWest() {
        Site site = new Site("t", "t", 48, 0, 0);
        // Sidereal time at Greenwich is 280.46° at this instant.
        var noon = java.time.Instant.parse("2000-01-01T12:00:00Z");
        LocalSky south = LocalSky.at(site, noon, 280.46061837, 14);
        assertThat(south.altitudeDeg()).isCloseTo(90 - 48 + 14, offset(1e-6));
        assertThat(south.zenithPaDeg()).isCloseTo(0, offset(1e-6));
        assertThat(LocalSky.at(site, noon, 280.46061837 - 45, 14).zenithPaDeg()).isBetween(20.0, 60.0);
    }
}
