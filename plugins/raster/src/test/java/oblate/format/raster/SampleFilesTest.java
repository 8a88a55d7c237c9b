/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import oblate.image.DecodedPicture;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every layout against files whose samples follow a formula. The files were written by {@code make_samples.py} beside them, straight from the
 * texts of TIFF 6.0, the BigTIFF and predictor notes, the PNG specification and ITU-T T.81, with no imaging library.
 */
@Tag("truth")
class SampleFilesTest {
    static final int WIDTH = 17;
    static final int HEIGHT = 11;

    private static final PictureReader READER =
            new PictureReader(List.of(new PngFormat(), new JpegFormat(), new TiffFormat()), PictureLimits.usual());

    static Path sample(String name) {
        try {
            return Path.of(SampleFilesTest.class.getResource(name).toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    static DecodedPicture decode(String name) {
        return READER.decode(sample(name));
    }

    /** The formulas of make_samples.py, as fractions of the full range. */
    private static double expected(String kind, int x, int y, int c) {
        return switch (kind) {
            case "v8" -> (x * 7 + y * 13 + c * 50) % 256 / 255.0;
            case "v16" -> (x * 4099 + y * 977 + c * 20011) % 65536 / 65535.0;
            case "v32" -> (x * 123456789L + y * 987654321L + c * 55555L) % 4294967296L / 4294967295.0;
            case "i16" -> (x * 4099 + y * 977) % 65536 - 32768;
            case "vf" -> (x - 3) * 0.25 + y * 1.5 + c * 10;
            case "third" -> (x + y) % 3 == 0 ? 1 : 0;
            case "n2" -> (x + 2 * y) % 4 / 3.0;
            case "n4" -> (x + 2 * y) % 16 / 15.0;
            case "grey10" -> (x + 2 * y) % 16 * 10 / 255.0;
            case "palette" -> {
                int i = (x * 7 + y * 13) % 256;
                yield (c == 0 ? i : c == 1 ? 255 - i : i * 3 % 256) / 255.0;
            }
            default -> throw new IllegalArgumentException(kind);
        };
    }

    @ParameterizedTest
    @CsvSource({
        "g8.tif, 1, 8, v8",
        "g16_be.tif, 1, 16, v16",
        "g16_lzw_predictor.tif, 1, 16, v16",
        "rgb16_deflate_predictor.tif, 3, 16, v16",
        "rgb16_be_deflate_predictor.tif, 3, 16, v16",
        "rgb8_lzw_predictor.tif, 3, 8, v8",
        "rgb8_packbits.tif, 3, 8, v8",
        "rgb8_planar.tif, 3, 8, v8",
        "rgb16_planar_deflate.tif, 3, 16, v16",
        "rgb16_tiled_lzw.tif, 3, 16, v16",
        "rgba8.tif, 3, 8, v8",
        "rgba16_associated.tif, 3, 16, v16",
        "ga16.tif, 1, 16, v16",
        "g32.tif, 1, 32, v32",
        "rgb32_deflate.tif, 3, 32, v32",
        "i16.tif, 1, 16, i16",
        "f32.tif, 1, 32, vf",
        "f32_rgb_deflate_predictor3.tif, 3, 32, vf",
        "f32_lzw_predictor3.tif, 1, 32, vf",
        "f64.tif, 1, 64, vf",
        "white_is_zero8.tif, 1, 8, v8",
        "white_is_zero16.tif, 1, 16, v16",
        "palette8.tif, 3, 8, palette",
        "bilevel.tif, 1, 1, third",
        "bilevel_white_is_zero.tif, 1, 1, third",
        "g4.tif, 1, 4, n4",
        "rgb16_big.tif, 3, 16, v16",
        "pages3.tif, 3, 8, v8",
        "orientation1.tif, 1, 8, v8",
        "g8.png, 1, 8, v8",
        "g16.png, 1, 16, v16",
        "rgb8.png, 3, 8, v8",
        "rgb16.png, 3, 16, v16",
        "rgb16_interlaced.png, 3, 16, v16",
        "g1_interlaced.png, 1, 1, third",
        "g2.png, 1, 2, n2",
        "g4.png, 1, 4, n4",
        "ga8.png, 1, 8, v8",
        "ga16.png, 1, 16, v16",
        "rgba8.png, 3, 8, v8",
        "rgba16_interlaced.png, 3, 16, v16",
        "palette8_transparent.png, 3, 8, palette",
        "palette4_grey.png, 1, 8, grey10",
        "rgb8_transparent_colour.png, 3, 8, v8",
        "rgb8_gamma.png, 3, 8, v8",
    })
    void samplesComeAsStored(String name, int channels, int bits, String kind) {
        DecodedPicture picture = decode(name);
        assertThat(picture.header().channels()).isEqualTo(channels);
        assertThat(picture.header().bitsPerSample()).isEqualTo(bits);
        assertThat(picture.header().floating()).isEqualTo(kind.equals("vf"));
        assertThat(picture.pixels().widthPx()).isEqualTo(WIDTH);
        assertThat(picture.pixels().heightPx()).isEqualTo(HEIGHT);
        for (int c = 0; c < channels; c++) {
            for (int y = 0; y < HEIGHT; y++) {
                for (int x = 0; x < WIDTH; x++) {
                    double expected = expected(kind, x, y, c);
                    assertThat((double) picture.pixels().sample(c, x, y))
                            .as("%s channel %d at %d, %d", name, c, x, y)
                            .isCloseTo(expected, within(6e-8 * Math.max(1, Math.abs(expected))));
                }
            }
        }
        boolean ranged = kind.equals("vf") || kind.equals("i16");
        if (!ranged) {
            assertThat(picture.pixels().low()).isZero();
            assertThat(picture.pixels().high()).isEqualTo(1);
        } else if (kind.equals("vf")) {
            assertThat(picture.pixels().low()).isEqualTo(-0.75);
            assertThat(picture.pixels().high()).isEqualTo(13 * 0.25 + 15 + 10 * (channels - 1));
        }
    }

    /** The table of the TIFF specification, tag 274: where row 0 and column 0 of the file lie as displayed. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void orientationSaysWhereTheFirstRowAndColumnLie(int code) {
        DecodedPicture picture = decode("orientation" + code + ".tif");
        boolean swapped = code >= 5;
        int width = swapped ? HEIGHT : WIDTH;
        int height = swapped ? WIDTH : HEIGHT;
        assertThat(picture.header().widthPx()).isEqualTo(width);
        assertThat(picture.header().heightPx()).isEqualTo(height);
        String rowZero = List.of("", "top", "top", "bottom", "bottom", "left", "right", "right", "left")
                .get(code);
        String columnZero = List.of("", "left", "right", "right", "left", "top", "top", "bottom", "bottom")
                .get(code);
        for (int row = 0; row < HEIGHT; row++) {
            for (int column = 0; column < WIDTH; column++) {
                int x = place(rowZero, row, columnZero, column, true, width);
                int y = place(rowZero, row, columnZero, column, false, height);
                assertThat((double) picture.pixels().sample(0, x, y))
                        .as("orientation %d, row %d, column %d", code, row, column)
                        .isCloseTo(expected("v8", column, row, 0), within(6e-8));
            }
        }
        assertThat(picture.header().fact("Exif", "Orientation")).contains(Integer.toString(code));
    }

    private static int place(String rowZero, int row, String columnZero, int column, boolean horizontal, int size) {
        String near = horizontal ? "left" : "top";
        String far = horizontal ? "right" : "bottom";
        if (rowZero.equals(near)) {
            return row;
        }
        if (rowZero.equals(far)) {
            return size - 1 - row;
        }
        return columnZero.equals(near) ? column : size - 1 - column;
    }
}
