/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.sky.ApparentDisc;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class DiscFrameTest {

    /** Rows from src/test/python/frame_rows.py (numpy, rotation matrices). */
    @Test
    @Tag("truth")
    void agreesWithRotationMatrices() throws IOException {
        List<double[]> rows;
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(getClass().getResourceAsStream("frame_numpy.csv")), StandardCharsets.UTF_8))) {
            rows = in.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("polar"))
                    .map(line -> Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        }
        assertThat(rows).hasSize(60);
        for (double[] r : rows) {
            PlanetModel planet = TestDiscs.planet("x", r[0], r[1] > 0 ? LongitudeSense.EAST : LongitudeSense.WEST, 500);
            DiscFrame frame = new DiscFrame(
                    TestDiscs.disc(planet, r[2], r[3], r[4], r[5]), new Placement(r[6], r[7], r[8], r[9], r[10] > 0.5));
            PixelPoint pixel = frame.place(r[11], r[12]).orElseThrow();
            assertThat(pixel.xPx()).isCloseTo(r[13], within(1e-9));
            assertThat(pixel.yPx()).isCloseTo(r[14], within(1e-9));
            SurfacePoint point = frame.locate(r[13], r[14]).orElseThrow();
            assertThat(point.emissionDeg()).isCloseTo(r[15], within(1e-7));
            assertThat(point.incidenceDeg()).isCloseTo(r[16], within(1e-7));
            assertThat(point.latCentricDeg()).isCloseTo(r[17], within(1e-7));
            assertThat(point.latGraphicDeg()).isCloseTo(r[12], within(1e-7));
        }
    }

    /** Parametric latitude: tan β = (b/a) tan g, and seen from the equator the height is b sin β (textbook, e.g. any handbook of geodesy). */
    @Test
    @Tag("truth")
    void heightOnTheMeridianIsThatOfTheParametricLatitude() {
        DiscFrame frame = new DiscFrame(
                TestDiscs.disc(TestDiscs.jupiter(), 100, 0, 100, 0), new Placement(200, 200, 100, 0, false));
        double beta = Math.atan(0.93513 * Math.tan(Math.toRadians(40)));
        PixelPoint pixel = frame.place(100, 40).orElseThrow();
        assertThat(200 - pixel.yPx()).isCloseTo(93.513 * Math.sin(beta), within(1e-9));
        assertThat(pixel.xPx()).isCloseTo(200, within(1e-9));
    }

    /** Preceding side of an upright unmirrored picture is on the right, and west longitude grows to the left (trade convention). */
    @Test
    void westLongitudeGrowsToTheLeftWhenNorthIsUp() {
        ApparentDisc west = TestDiscs.disc(TestDiscs.jupiter(), 100, 2, 100, 2);
        ApparentDisc east = TestDiscs.disc(TestDiscs.planet("venus", 1, LongitudeSense.EAST, -1.48), 100, 2, 100, 2);
        Placement upright = new Placement(200, 200, 100, 0, false);
        Placement mirror = new Placement(200, 200, 100, 0, true);
        assertThat(new DiscFrame(west, upright).place(110, 0).orElseThrow().xPx())
                .isLessThan(190);
        assertThat(new DiscFrame(west, mirror).place(110, 0).orElseThrow().xPx())
                .isGreaterThan(210);
        assertThat(new DiscFrame(east, upright).place(110, 0).orElseThrow().xPx())
                .isGreaterThan(210);
        assertThat(new DiscFrame(west, upright).locate(150, 200).orElseThrow().fromMeridianDeg())
                .isCloseTo(30, within(0.2));
    }

    @Property(tries = 400, seed = "20")
    void placeUndoesLocate(
            @ForAll @DoubleRange(min = 0.85, max = 1) double ratio,
            @ForAll boolean east,
            @ForAll @DoubleRange(min = -90, max = 90) double subLat,
            @ForAll @DoubleRange(min = -180, max = 180) double angle,
            @ForAll boolean mirrored,
            @ForAll @DoubleRange(min = 0, max = 0.99) double rho,
            @ForAll @DoubleRange(min = 0, max = 360) double where) {
        PlanetModel planet = TestDiscs.planet("x", ratio, east ? LongitudeSense.EAST : LongitudeSense.WEST, 500);
        DiscFrame frame = new DiscFrame(
                TestDiscs.disc(planet, 300, subLat, 20, -3), new Placement(210.3, 180.7, 120, angle, mirrored));
        double t = Math.toRadians(where);
        double axis = planet.globe().figure().apparentAxisRatio(subLat);
        PixelPoint pixel = frame.placeOffset(rho * Math.cos(t), axis * rho * Math.sin(t));
        SurfacePoint point = frame.locate(pixel.xPx(), pixel.yPx()).orElseThrow();
        PixelPoint again = frame.place(point.lonIauDeg(), point.latGraphicDeg()).orElseThrow();
        assertThat(again.xPx()).isCloseTo(pixel.xPx(), within(1e-6));
        assertThat(again.yPx()).isCloseTo(pixel.yPx(), within(1e-6));
        assertThat(point.lonIauDeg()).isBetween(0.0, 360.0);
        assertThat(point.emissionDeg()).isBetween(0.0, 90.0);
    }

    /** On the outline the line of sight touches the globe: just inside is on the disc at nearly 90° emission, just outside is off. */
    @Property(tries = 200, seed = "20")
    void outlineIsWhereTheGlobeEnds(
            @ForAll @DoubleRange(min = 0.85, max = 1) double ratio,
            @ForAll @DoubleRange(min = -90, max = 90) double subLat,
            @ForAll @DoubleRange(min = -180, max = 180) double angle) {
        PlanetModel planet = TestDiscs.planet("x", ratio, LongitudeSense.WEST, 500);
        DiscFrame frame =
                new DiscFrame(TestDiscs.disc(planet, 300, subLat, 20, -3), new Placement(0, 0, 100, angle, false));
        for (PixelPoint p : frame.outline().points()) {
            assertThat(frame.locate(p.xPx() * 1.0001, p.yPx() * 1.0001)).isEmpty();
            assertThat(frame.locate(p.xPx() * 0.9999, p.yPx() * 0.9999)
                            .orElseThrow()
                            .emissionDeg())
                    .isGreaterThan(88);
        }
    }

    @Property(tries = 200, seed = "20")
    void terminatorIsWhereTheSunStandsOnTheHorizon(
            @ForAll @DoubleRange(min = 0.85, max = 1) double ratio,
            @ForAll @DoubleRange(min = -60, max = 60) double subLat,
            @ForAll @DoubleRange(min = -170, max = 170) double sunFromMeridian,
            @ForAll @DoubleRange(min = -30, max = 30) double sunLat) {
        PlanetModel planet = TestDiscs.planet("x", ratio, LongitudeSense.WEST, 500);
        ApparentDisc disc = TestDiscs.disc(planet, 200, subLat, 200 + sunFromMeridian, sunLat);
        if (disc.phaseAngleDeg() < 1 || disc.phaseAngleDeg() > 179) {
            return;
        }
        DiscFrame frame = new DiscFrame(disc, new Placement(0, 0, 100, 30, false));
        List<PixelPoint> points = frame.terminator().orElseThrow().points();
        assertThat(points).hasSize(181);
        for (PixelPoint p : points.subList(1, 180)) {
            assertThat(frame.locate(p.xPx(), p.yPx()).orElseThrow().incidenceDeg())
                    .isCloseTo(90, within(1e-3));
        }
    }

    @Test
    void fullDiscHasNoTerminator() {
        assertThat(new DiscFrame(TestDiscs.disc(TestDiscs.jupiter(), 5, 3, 5, 3), new Placement(0, 0, 50, 0, false))
                        .terminator())
                .isEmpty();
    }

    @Property(tries = 100, seed = "20")
    void gridLinesLieOnTheirLongitudesAndLatitudes(
            @ForAll @DoubleRange(min = -90, max = 90) double subLat,
            @ForAll @DoubleRange(min = 0, max = 359.9) double meridian) {
        ApparentDisc disc = TestDiscs.disc(TestDiscs.jupiter(), meridian, subLat, meridian, subLat);
        DiscFrame frame = new DiscFrame(disc, new Placement(150, 150, 100, -20, true));
        var system = disc.planet().globe().systems().get(1);
        List<Polyline> lines = frame.grid(system, 30);
        assertThat(lines).anyMatch(l -> l.role().equals("central-meridian"));
        for (Polyline line : lines) {
            for (PixelPoint p : line.points()) {
                SurfacePoint s = frame.locate(150 + (p.xPx() - 150) * 0.999999, 150 + (p.yPx() - 150) * 0.999999)
                        .orElseThrow();
                if (s.emissionDeg() > 85 || Math.abs(s.latGraphicDeg()) > 88) {
                    continue;
                }
                if (line.role().equals("meridian")) {
                    double off = Math.IEEEremainder(s.lonDeg(disc, system) - Double.parseDouble(line.label()), 360);
                    assertThat(off).isCloseTo(0, within(0.05));
                } else if (line.role().equals("parallel") || line.role().equals("equator")) {
                    assertThat(s.latGraphicDeg()).isCloseTo(Double.parseDouble(line.label()), within(0.01));
                } else {
                    assertThat(Math.sin(Math.toRadians(s.fromMeridianDeg()))).isCloseTo(0, within(1e-3));
                }
            }
        }
    }

    @Test
    void poleOnShowsWholeParallels() {
        ApparentDisc disc = TestDiscs.disc(TestDiscs.jupiter(), 0, 90, 0, 90);
        DiscFrame frame = new DiscFrame(disc, new Placement(0, 0, 100, 0, false));
        List<Polyline> sixty = frame.grid(disc.planet().globe().iauSystem(), 60).stream()
                .filter(l -> l.role().equals("parallel"))
                .toList();
        assertThat(sixty).hasSize(1);
        PixelPoint first = sixty.get(0).points().get(0);
        assertThat(Math.hypot(first.xPx(), first.yPx()))
                .isCloseTo(disc.planet().globe().figure().axisDistanceKm(60) / 700, within(1e-9));
    }

    @Test
    void ringsAreHiddenBehindTheGlobeAndWholeWhenWideOpen() {
        PlanetModel saturn = TestDiscs.planet("saturn", 0.90204, LongitudeSense.WEST, 810.8);
        DiscFrame tilted = new DiscFrame(TestDiscs.disc(saturn, 0, 20, 0, 20), new Placement(0, 0, 100, 0, false));
        for (Polyline ring : tilted.rings()) {
            for (PixelPoint p : ring.points()) {
                boolean far = p.yPx() < 0;
                assertThat(far && tilted.locate(p.xPx(), p.yPx()).isPresent()).isFalse();
            }
        }
        assertThat(tilted.rings()).hasSize(2);
        DiscFrame open = new DiscFrame(TestDiscs.disc(saturn, 0, 90, 0, 90), new Placement(0, 0, 100, 0, false));
        assertThat(open.rings()).hasSize(2).allMatch(r -> r.points().size() == 361);
        assertThat(new DiscFrame(TestDiscs.disc(TestDiscs.jupiter(), 0, 20, 0, 20), new Placement(0, 0, 9, 0, false))
                        .rings())
                .isEmpty();
    }
}
