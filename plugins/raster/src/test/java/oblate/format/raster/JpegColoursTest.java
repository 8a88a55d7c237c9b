/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import oblate.image.PixelGrid;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Channel codings of JPEG. The files of {@code make_samples.py} have four blocks of one value each; their colours here are worked out from
 * ITU-T T.871 (YCbCr), and for four channels from the rule that Adobe files store the inks inverted.
 */
@Tag("truth")
class JpegColoursTest {
    private static final int[][] FIRST = {{10, 200}, {128, 255}};
    private static final int[][] SECOND = {{128, 100}, {150, 128}};
    private static final int[][] THIRD = {{128, 140}, {90, 200}};
    private static final int[][] FOURTH = {{255, 128}, {60, 200}};

    private static double bounded(double value) {
        return Math.max(0, Math.min(255, value)) / 255;
    }

    private static double[] fromLuma(double y, double cb, double cr) {
        return new double[] {
            bounded(y + 1.402 * (cr - 128)),
            bounded(y - 0.344136 * (cb - 128) - 0.714136 * (cr - 128)),
            bounded(y + 1.772 * (cb - 128))
        };
    }

    private static double[] expected(String coding, int by, int bx) {
        double a = FIRST[by][bx];
        double b = SECOND[by][bx];
        double c = THIRD[by][bx];
        double k = FOURTH[by][bx] / 255.0;
        return switch (coding) {
            case "grey" -> new double[] {a / 255};
            case "rgb" -> new double[] {a / 255, b / 255, c / 255};
            case "luma" -> fromLuma(a, b, c);
            case "inks inverted" -> new double[] {a / 255 * k, b / 255 * k, c / 255 * k};
            case "inks" -> new double[] {(1 - a / 255) * (1 - k), (1 - b / 255) * (1 - k), (1 - c / 255) * (1 - k)};
            case "luma inks" -> {
                double[] light = fromLuma(a, b, c);
                yield new double[] {light[0] * k, light[1] * k, light[2] * k};
            }
            default -> throw new IllegalArgumentException(coding);
        };
    }

    @ParameterizedTest
    @CsvSource({
        "grey, grey",
        "ycbcr, luma",
        "ycbcr_bare, luma",
        "ycbcr_adobe, luma",
        "rgb_adobe, rgb",
        "rgb_ids, rgb",
        "cmyk_adobe, inks inverted",
        "ycck_adobe, luma inks",
        "cmyk_plain, inks",
    })
    void coloursFollowTheCoding(String name, String coding) {
        PixelGrid pixels = SampleFilesTest.decode(name + ".jpg").pixels();
        assertThat(pixels.widthPx()).isEqualTo(16);
        for (int y = 0; y < 16; y++) {
            for (int x = 0; x < 16; x++) {
                double[] colour = expected(coding, y / 8, x / 8);
                assertThat(pixels.channels()).isEqualTo(colour.length);
                for (int c = 0; c < colour.length; c++) {
                    assertThat((double) pixels.sample(c, x, y))
                            .as("%s channel %d at %d, %d", name, c, x, y)
                            .isCloseTo(colour[c], within(0.51 / 255));
                }
            }
        }
    }
}
