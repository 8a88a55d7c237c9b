/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Averages worked out by hand. */
class PreviewsTest {
    private static final Previews PREVIEWS = new Previews();
    private static final Tone PLAIN = new Tone(0, 1, 1);

    private static PixelGrid grey(int width, int height, float... samples) {
        return new PixelGrid(width, height, List.of(samples), 0, 1);
    }

    @Test
    void fullSizeKeepsEveryLevel() {
        float[] samples = new float[256];
        for (int i = 0; i < 256; i++) {
            samples[i] = (float) (i / 255.0);
        }
        PixelGrid grid = grey(256, 1, samples);
        Preview preview = PREVIEWS.draw(grid, Crop.all(grid), 1000, PLAIN);
        for (int i = 0; i < 256; i++) {
            assertThat(preview.argb()[i]).isEqualTo(0xff000000 | i * 0x010101);
        }
    }

    @Test
    void halfSizeAveragesFours() {
        PixelGrid grid = grey(4, 2, 0, 1, 0.2f, 0.2f, 1, 0, 0.4f, 0.4f);
        Preview preview = PREVIEWS.draw(grid, Crop.all(grid), 2, PLAIN);
        assertThat(preview.widthPx()).isEqualTo(2);
        assertThat(preview.heightPx()).isEqualTo(1);
        assertThat(preview.argb()[0] & 0xff).isEqualTo(128);
        assertThat(preview.argb()[1] & 0xff).isEqualTo(77);
    }

    @Test
    void partsOfPixelsCountByTheirPart() {
        PixelGrid grid = grey(3, 1, 0, 0.52f, 0.72f);
        Preview preview = PREVIEWS.draw(grid, Crop.all(grid), 2, PLAIN);
        // the middle pixel is shared: (1 × 0 + 0.5 × 0.52) / 1.5 and (0.5 × 0.52 + 1 × 0.72) / 1.5
        assertThat(preview.argb()[0] & 0xff).isEqualTo((int) Math.round(255 * 0.26 / 1.5));
        assertThat(preview.argb()[1] & 0xff).isEqualTo((int) Math.round(255 * 0.98 / 1.5));
    }

    @Test
    void missingSamplesAreLeftOutAndShownTransparent() {
        PixelGrid grid = grey(4, 1, Float.NaN, 0.4f, Float.NaN, Float.NaN);
        Preview preview = PREVIEWS.draw(grid, Crop.all(grid), 2, PLAIN);
        assertThat(preview.argb()).containsExactly(0xff666666, 0);
    }

    @Test
    void coloursCropToneAndImage() {
        PixelGrid grid =
                new PixelGrid(2, 1, List.of(new float[] {0, 1}, new float[] {0, 0.25f}, new float[] {0, 0}), 0, 1);
        Preview preview = PREVIEWS.draw(grid, new Crop(1, -3, 9, 9), 100, new Tone(0, 1, 2));
        assertThat(preview.argb()).containsExactly(0xffff8000);
        assertThat(preview.toImage().getRGB(0, 0)).isEqualTo(0xffff8000);
        assertThat(new Tone(10, 20, 1).level(15)).isEqualTo(128);
        assertThat(new Tone(10, 10, 1).level(10)).isZero();
        assertThat(new Tone(1, 0, 1).level(0))
                .as("white below black turns the picture round")
                .isEqualTo(255);
        assertThatThrownBy(() -> new Tone(0, 1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Crop(5, 0, 2, 2).within(grid)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Averaging over areas keeps the mean of the whole, whatever the sizes. */
    @Property(tries = 200, seed = "21")
    void theMeanStays(
            @ForAll @IntRange(min = 1, max = 60) int width,
            @ForAll @IntRange(min = 1, max = 60) int height,
            @ForAll @IntRange(min = 1, max = 70) int side) {
        float[] samples = new float[width * height];
        double sum = 0;
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (i * 7919 % 1000) / 1000f;
            sum += samples[i];
        }
        PixelGrid grid = grey(width, height, samples);
        Preview preview = PREVIEWS.draw(grid, Crop.all(grid), side, PLAIN);
        assertThat(Math.max(preview.widthPx(), preview.heightPx())).isLessThanOrEqualTo(Math.max(1, side));
        double got = 0;
        for (int argb : preview.argb()) {
            got += (argb & 0xff) / 255.0;
        }
        assertThat(got / preview.argb().length).isCloseTo(sum / samples.length, within(0.5 / 255 + 1e-6));
    }
}
