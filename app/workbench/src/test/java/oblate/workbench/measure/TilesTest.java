/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Offset.offset;

import java.awt.image.BufferedImage;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import oblate.image.PixelGrid;
import oblate.image.Tone;
import org.junit.jupiter.api.Test;

/** Pyramids and tiles: checked against the samples themselves. */
class TilesTest {
    private static PixelGrid ramp(int width, int height, int channels) {
        float[][] planes = new float[channels][width * height];
        for (int c = 0; c < channels; c++) {
            for (int i = 0; i < width * height; i++) {
                planes[c][i] = (float) ((i * 7919L + c * 101L) % 1000) / 1000;
            }
        }
        return new PixelGrid(width, height, List.of(planes), 0, 1);
    }

    @Property(tries = 30)
    void aLevelIsTheMeanOfWhatItCovers(
            @ForAll @IntRange(min = 301, max = 900) int width, @ForAll @IntRange(min = 3, max = 60) int height) {
        PixelGrid grid = ramp(width, height, 1);
        Pyramid pyramid = Pyramid.of(grid);
        PixelGrid half = pyramid.levels().get(1);
        assertThat(half.widthPx()).isEqualTo((width + 1) / 2);
        int x = width / 4;
        int y = Math.max(0, height / 4 - 1);
        double mean = (grid.sample(0, 2 * x, 2 * y)
                        + grid.sample(0, 2 * x + 1, 2 * y)
                        + grid.sample(0, 2 * x, 2 * y + 1)
                        + grid.sample(0, 2 * x + 1, 2 * y + 1))
                / 4;
        assertThat((double) half.sample(0, x, y)).isEqualTo(mean, offset(1e-6));
    }

    @Property(tries = 100)
    void theLevelShownHasAtLeastAPixelForEachOnTheScreen(@ForAll @DoubleRange(min = 0.02, max = 60) double scale) {
        Pyramid pyramid = Pyramid.of(ramp(4000, 8, 1));
        int level = pyramid.levelFor(scale);
        assertThat(level == 0 || scale * (1 << level) <= 1 + 1e-9).isTrue();
        assertThat(level == pyramid.levels().size() - 1 || scale * (1 << (level + 1)) > 1 - 1e-9)
                .isTrue();
    }

    @Test
    void aTileShowsTheSamplesOfItsPlaceAndRepeatsItsNeighboursAtTheBorder() {
        PixelGrid grid = ramp(600, 300, 3);
        Look look = new Look(new Tone(0, 1, 1), Look.Channel.ALL, 0, false);
        BufferedImage tile = TileToner.image(grid, 1, 1, 0, look);
        for (int x : new int[] {0, 1, 100, 257}) {
            int px = TileToner.SIDE + x - TileToner.BORDER;
            int rgb = tile.getRGB(x, 11);
            assertThat(rgb >> 16 & 255).isCloseTo((int) Math.round(255 * (double) grid.sample(0, px, 10)), within(1));
            assertThat(rgb & 255).isCloseTo((int) Math.round(255 * (double) grid.sample(2, px, 10)), within(1));
        }
    }

    @Test
    void oneColourIsShownGreyAndRedLightIsRed() {
        PixelGrid grid = ramp(40, 40, 3);
        int green = TileToner.image(grid, 1, 0, 0, new Look(new Tone(0, 1, 1), Look.Channel.GREEN, 0, false))
                .getRGB(9, 9);
        assertThat(green >> 16 & 255).isEqualTo(green & 255);
        assertThat(green & 255).isCloseTo((int) Math.round(255 * (double) grid.sample(1, 8, 8)), within(1));
        int red = TileToner.image(grid, 1, 0, 0, new Look(new Tone(0, 1, 1), Look.Channel.ALL, 0, true))
                .getRGB(9, 9);
        assertThat(red & 255).isLessThan(25);
    }

    @Test
    void sharpeningLeavesAnEvenPictureAsItIsAndSteepensAnEdgeWithoutTouchingTheSamples() {
        float[] plane = new float[60 * 60];
        for (int i = 0; i < plane.length; i++) {
            plane[i] = i % 60 < 30 ? 0.3f : 0.6f;
        }
        PixelGrid grid = new PixelGrid(60, 60, List.of(plane), 0, 1);
        float[] before = plane.clone();
        Look plain = new Look(new Tone(0, 1, 1), Look.Channel.ALL, 0, false);
        Look sharp = new Look(new Tone(0, 1, 1), Look.Channel.ALL, 2, false);
        BufferedImage a = TileToner.image(grid, 1, 0, 0, plain);
        BufferedImage b = TileToner.image(grid, 1, 0, 0, sharp);
        assertThat(b.getRGB(10, 30)).isEqualTo(a.getRGB(10, 30));
        assertThat(b.getRGB(30, 30) & 255).isLessThan(a.getRGB(30, 30) & 255);
        assertThat(b.getRGB(31, 30) & 255).isGreaterThan(a.getRGB(31, 30) & 255);
        assertThat(plane).isEqualTo(before);
    }
}
