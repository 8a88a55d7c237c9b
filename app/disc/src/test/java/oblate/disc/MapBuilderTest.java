/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.base.Progress;
import oblate.sky.ApparentDisc;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class MapBuilderTest {
    private static final double[][] SPOTS = {
        {-20, 14, 4, 0.35}, {25, -18, 5, -0.35}, {5, -38, 4, 0.4}, {-35, -8, 4, -0.3}
    };

    private static MapFrame frame(MapProjection projection, boolean graphic, int width, int height, double cell) {
        PlanetModel planet = TestDiscs.jupiter();
        return new MapFrame(planet, planet.globe().iauSystem(), projection, graphic, 100, 0, width, height, cell);
    }

    /**
     * Sinusoidal of 75° W, 50° S about 90° W on a sphere of radius 1: x = 0.1682814, y = −0.8726646 (Snyder, USGS PP 1395, numerical examples, p. 365;
     * from memory, and by hand: x = 15° cos 50°).
     */
    @Test
    @Tag("truth")
    void sinusoidalAgreesWithTheManual() {
        double[] flat = new double[2];
        MapProjection.SINUSOIDAL.flat(15, -50, flat);
        assertThat(Math.toRadians(flat[0])).isCloseTo(0.1682814, within(5e-8));
        assertThat(Math.toRadians(flat[1])).isCloseTo(-0.8726646, within(5e-8));
    }

    /** Zenithal equidistant with the pole in the middle: x = R sin φ, y = −R cos φ, R = 90° − θ (Calabretta and Greisen 2002, eqs 12, 13, 67). */
    @Test
    @Tag("truth")
    void polarMapsHaveTrueDistancesFromThePole() {
        double[] flat = new double[2];
        MapProjection.NORTH_POLAR.flat(90, 60, flat);
        assertThat(flat).containsExactly(new double[] {30, 0}, within(1e-9));
        MapProjection.SOUTH_POLAR.flat(90, -60, flat);
        assertThat(flat).containsExactly(new double[] {-30, 0}, within(1e-9));
        MapProjection.SOUTH_POLAR.flat(0, -60, flat);
        assertThat(flat).containsExactly(new double[] {0, -30}, within(1e-9));
    }

    @Property(tries = 300)
    void everyProjectionUndoesItself(
            @ForAll MapProjection projection,
            @ForAll @DoubleRange(min = 0, max = 359.99) double lon,
            @ForAll @DoubleRange(min = -88, max = 88) double lat) {
        MapFrame frame = frame(projection, true, 721, 361, 0.5);
        PixelPoint p = frame.pixelOf(lon, lat);
        MapFrame.Place back = frame.placeAt(p.xPx(), p.yPx()).orElseThrow();
        assertThat(Math.IEEEremainder(back.lonDeg() - lon, 360)).isCloseTo(0, within(1e-6));
        assertThat(back.latDeg()).isCloseTo(lat, within(1e-9));
    }

    private static SyntheticDisc picture(double meridian, double gain) {
        SyntheticDisc s = new SyntheticDisc();
        s.radius = 60;
        s.blur = 1.3;
        s.sharpen = 0.5;
        s.belts = 0; // a belt beside a spot would shift its middle
        s.gamma = false;
        for (double[] spot : SPOTS) {
            s.spots.add(new double[] {spot[0] + (meridian - 100), spot[1], spot[2], spot[3] * gain});
        }
        return s;
    }

    private static MapBuilder.Source source(SyntheticDisc s, double meridian) {
        ApparentDisc sky = TestDiscs.disc(TestDiscs.jupiter(), meridian, s.subLatDeg, meridian, s.sunLatDeg);
        return new MapBuilder.Source(
                "m" + meridian,
                s.grey(),
                new DiscFrame(sky, new Placement(s.cx, s.cy, s.radius, s.poleDeg, s.mirrored)));
    }

    /** Weighted middle of what stands out in a window of a map. */
    private static PixelPoint spotIn(PlanetMap map, PixelPoint near, boolean bright) {
        int half = 14;
        int w = map.frame().widthPx();
        float[] plane = map.planes().get(0);
        double ring = 0;
        int n = 0;
        for (int d = -half; d <= half; d++) {
            for (int e : new int[] {-half, half}) {
                ring += plane[((int) near.yPx() + d) * w + (int) near.xPx() + e];
                n++;
            }
        }
        ring /= n;
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int pass = 0; pass < 2; pass++) {
            double most = pass == 0 ? 0 : sum;
            sum = 0;
            for (int dy = -half; dy <= half; dy++) {
                for (int dx = -half; dx <= half; dx++) {
                    double v = (plane[((int) near.yPx() + dy) * w + (int) near.xPx() + dx] - ring) * (bright ? 1 : -1);
                    if (pass == 0) {
                        sum = Math.max(sum, v);
                    } else if (v > 0.5 * most) {
                        sum += v;
                        x += v * ((int) near.xPx() + dx);
                        y += v * ((int) near.yPx() + dy);
                    }
                }
            }
        }
        return new PixelPoint(x / sum, y / sum);
    }

    @Test
    void spotsStandAtTheirPlacesOnAMapOfTwoPictures() {
        MapFrame frame = frame(MapProjection.CYLINDRICAL, false, 1440, 720, 0.25);
        PlanetMap map = new MapBuilder()
                .draw(
                        frame,
                        List.of(source(picture(100, 1), 100), source(picture(118, 1), 118)),
                        new MapBuilder.Manner(75, true),
                        Progress.SILENT);
        for (double[] spot : SPOTS) {
            PixelPoint expected = frame.pixelOf(100 - spot[0], spot[1]);
            PixelPoint found = spotIn(map, expected, spot[3] > 0);
            assertThat((found.xPx() - expected.xPx()) * 0.25)
                    .as("lon of " + spot[0])
                    .isCloseTo(0, within(0.6));
            assertThat((found.yPx() - expected.yPx()) * 0.25)
                    .as("lat of " + spot[1])
                    .isCloseTo(0, within(0.6));
        }
        assertThat(map.contributions()).hasSize(2);
        assertThat(map.contributions().get(1).gain()).isCloseTo(1, within(0.03));
        assertThat(map.covered()).isBetween(0.25, 0.5);
    }

    /** A picture drawn with the law I ∝ μ₀^0.85 (0.75 + 0.45 μ − 0.2 μ²) and no belts comes out even. */
    @Test
    void theDarkeningIsTakenOut() {
        SyntheticDisc s = new SyntheticDisc();
        s.radius = 60;
        s.belts = 0;
        s.sharpen = 0;
        s.gamma = false;
        MapFrame frame = frame(MapProjection.CYLINDRICAL, true, 360, 180, 1);
        List<Double> rows = new ArrayList<>();
        for (boolean flatten : new boolean[] {true, false}) {
            PlanetMap map = new MapBuilder()
                    .draw(frame, List.of(source(s, 100)), new MapBuilder.Manner(70, flatten), Progress.SILENT);
            float[] plane = map.planes().get(0);
            double middle = plane[90 * 360 + 180];
            double aside = plane[90 * 360 + 180 + 55];
            rows.add(aside / middle);
        }
        assertThat(rows.get(0)).isCloseTo(1, within(0.05));
        assertThat(rows.get(1)).isLessThan(0.75);
    }

    @Test
    void eastIsToTheRightWhateverTheSense() {
        for (LongitudeSense sense : LongitudeSense.values()) {
            PlanetModel planet = TestDiscs.planet("x", 0.95, sense, 300);
            MapFrame frame = new MapFrame(
                    planet, planet.globe().iauSystem(), MapProjection.CYLINDRICAL, true, 180, 0, 360, 180, 1);
            double right = frame.placeAt(200, 90).orElseThrow().lonDeg();
            assertThat(right > 180).isEqualTo(sense == LongitudeSense.EAST);
        }
    }

    /** Rings before the globe and their shadow are left out. */
    @Test
    void ringsLeaveAGap() {
        SyntheticDisc s = new SyntheticDisc();
        s.subLatDeg = 15;
        s.sunLatDeg = 15;
        PlanetModel planet = TestDiscs.planet("saturn", 0.902, LongitudeSense.WEST, 810.79);
        ApparentDisc sky = TestDiscs.disc(planet, 100, s.subLatDeg, 100, s.sunLatDeg);
        DiscFrame disc = new DiscFrame(sky, new Placement(s.cx, s.cy, s.radius, s.poleDeg, s.mirrored));
        MapSight sight = new MapSight(disc, 75);
        assertThat(sight.look(100, 20)).isTrue();
        boolean hidden = false;
        for (double lat = -40; lat < 0; lat += 1) {
            hidden |= !sight.look(100, lat);
        }
        assertThat(hidden).isTrue();
    }
}
