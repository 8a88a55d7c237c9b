/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import org.junit.jupiter.api.Test;

class SpotFinderTest {
    private static final double[][] SPOTS = {
        {-20, 14, 4, 0.35}, {25, -18, 5, -0.35}, {5, -38, 4, 0.4}, {-35, -8, 4, -0.3}
    };

    private final SyntheticDisc picture = picture();
    private final ApparentDisc sky =
            TestDiscs.disc(TestDiscs.jupiter(), 100, picture.subLatDeg, 100, picture.sunLatDeg);
    private final DiscFrame frame = new DiscFrame(
            sky, new Placement(picture.cx, picture.cy, picture.radius, picture.poleDeg, picture.mirrored));

    private static SyntheticDisc picture() {
        SyntheticDisc s = new SyntheticDisc();
        s.radius = 60;
        s.blur = 1.3;
        s.sharpen = 0.8;
        s.belts = 0.15;
        for (double[] spot : SPOTS) {
            s.spots.add(spot);
        }
        return s;
    }

    private double lat(double[] spot) {
        return sky.planet().globe().figure().graphicFromCentricDeg(spot[1]);
    }

    private PixelPoint pixel(double[] spot) {
        return frame.place(100 - spot[0], lat(spot)).orElseThrow();
    }

    @Test
    void findsEverySpotWithItsTone() {
        List<Spot> found = new SpotFinder(picture.grey(), frame, 60).find(1, 5);
        assertThat(found).isSortedAccordingTo((a, b) -> Double.compare(b.significance(), a.significance()));
        for (double[] spot : SPOTS) {
            PixelPoint at = pixel(spot);
            assertThat(found).as("spot at %.0f, %.0f", spot[0], spot[1]).anySatisfy(s -> {
                assertThat(Math.hypot(s.pixel().xPx() - at.xPx(), s.pixel().yPx() - at.yPx()))
                        .isLessThan(1.0);
                assertThat(s.bright()).isEqualTo(spot[3] > 0);
                assertThat(s.contrast() > 0).isEqualTo(spot[3] > 0);
            });
        }
        assertThat(found).allMatch(s -> s.place().emissionDeg() <= 60);
    }

    @Test
    void strongestAreTheDrawnOnesAndABlankDiscHasFew() {
        PixelGrid drawn = picture.grey();
        List<Spot> found = new SpotFinder(drawn, frame, 60).find(1.5, 4);
        for (Spot s : found.subList(0, 4)) {
            boolean drawnThere = false;
            for (double[] spot : SPOTS) {
                PixelPoint at = pixel(spot);
                drawnThere |= Math.hypot(s.pixel().xPx() - at.xPx(), s.pixel().yPx() - at.yPx()) < 2;
            }
            assertThat(drawnThere).isTrue();
        }
    }

    @Test
    void refineComesBackToTheCentreFromAClickBesideIt() {
        SpotFinder finder = new SpotFinder(picture.grey(), frame, 60);
        for (double[] spot : SPOTS) {
            PixelPoint at = pixel(spot);
            SpotFinder.Refined refined =
                    finder.refine(at.xPx() + 1.6, at.yPx() - 1.2, 5).orElseThrow();
            assertThat(refined.pixel().xPx()).isCloseTo(at.xPx(), within(0.6));
            assertThat(refined.pixel().yPx()).isCloseTo(at.yPx(), within(0.6));
            assertThat(refined.bright()).isEqualTo(spot[3] > 0);
            assertThat(refined.sigmaPx()).isBetween(0.09, 1.5);
        }
        assertThat(finder.refine(2, 2, 4)).isEmpty();
    }

    @Test
    void mapHoldsTheLatitudeItWasDrawnFrom() {
        float[] samples = new float[picture.width * picture.height];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = frame.locate(i % picture.width, i / picture.width)
                    .map(p -> (float) (p.latGraphicDeg() / 90))
                    .orElse(Float.NaN);
        }
        PixelGrid grid = new PixelGrid(picture.width, picture.height, List.of(samples), -1, 1);
        MapStrip map = MapStrip.of(grid, 0, frame, new MapStrip.Extent(-60, 60, 80, 2, 70));
        assertThat(map.columns()).isEqualTo(80);
        assertThat(map.rows()).isEqualTo(60);
        int seen = 0;
        for (int row = 0; row < map.rows(); row++) {
            for (int column = 0; column < map.columns(); column++) {
                if (!Float.isNaN(map.value(column, row))) {
                    seen++;
                    assertThat(map.value(column, row) * 90).isCloseTo((float) map.latGraphicDeg(row), within(0.5f));
                }
            }
        }
        assertThat(seen).isGreaterThan(2000);
        assertThat(map.lonIauDeg(40)).isCloseTo(99, within(1e-9));
        assertThat(map.lonIauDeg(0)).isGreaterThan(map.lonIauDeg(79));
        assertThat(map.value(0, 0)).isNaN();
    }
}
