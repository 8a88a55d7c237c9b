/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import oblate.base.ProblemException;
import oblate.image.ImageFormat;
import oblate.image.ImageProblem;
import oblate.image.PictureHeader;
import oblate.image.PixelGrid;

/** Cut and flipped files: a format answers with a picture or a {@link ProblemException}, and never with anything else. */
class HostileRasterTest {
    private static final List<String> FILES = List.of(
            "rgb16_interlaced.png",
            "palette8_transparent.png",
            "facts.png",
            "facts.jpg",
            "ycck_adobe.jpg",
            "g16_lzw_predictor.tif",
            "rgb16_deflate_predictor.tif",
            "rgb8_packbits.tif",
            "rgb16_tiled_lzw.tif",
            "f32_rgb_deflate_predictor3.tif",
            "palette8.tif",
            "rgb16_big.tif",
            "pages3.tif");

    @Provide
    Arbitrary<String> names() {
        return Arbitraries.of(FILES);
    }

    private static ImageFormat format(String name) {
        return name.endsWith("png") ? new PngFormat() : name.endsWith("jpg") ? new JpegFormat() : new TiffFormat();
    }

    private static PixelGrid read(String name, byte[] bytes) throws IOException {
        Path file = Files.createTempFile("hostile", ".bin");
        try {
            Files.write(file, bytes);
            ImageFormat format = format(name);
            PictureHeader header = format.readHeader(file);
            return (long) header.widthPx() * header.heightPx() > 4_000_000 ? null : format.readPixels(file, header);
        } finally {
            Files.delete(file);
        }
    }

    private static byte[] bytes(String name) throws IOException {
        return Files.readAllBytes(SampleFilesTest.sample(name));
    }

    @Property(tries = 300, seed = "31")
    void cutFilesAreRefused(@ForAll("names") String name, @ForAll @IntRange(max = 999) int permille)
            throws IOException {
        byte[] whole = bytes(name);
        byte[] cut = Arrays.copyOf(whole, (int) (whole.length * (long) permille / 1000));
        // A TIFF file of several pages may lose its last ones; all others are worthless when cut.
        Throwable thrown = catchThrowable(() -> read(name, cut));
        if (thrown == null) {
            assertThat(name).isEqualTo("pages3.tif");
        } else {
            assertThat(thrown).isInstanceOf(ProblemException.class);
            assertThat(((ProblemException) thrown).kind()).isIn(ImageProblem.BROKEN, ImageProblem.UNSUPPORTED);
        }
    }

    @Property(tries = 600, seed = "47")
    void flippedFilesNeverThrowAnythingElse(
            @ForAll("names") String name, @ForAll long seed, @ForAll @IntRange(min = 1, max = 6) int flips)
            throws IOException {
        byte[] bytes = bytes(name);
        Random random = new Random(seed);
        for (int i = 0; i < flips; i++) {
            bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        }
        Throwable thrown = catchThrowable(() -> read(name, bytes));
        if (thrown != null) {
            assertThat(thrown).as("%s seed %d", name, seed).isInstanceOf(ProblemException.class);
        }
    }

    @Property(tries = 300, seed = "53")
    void oneFlippedBitOfAPngIsNoticedOrHarmless(@ForAll long seed) throws IOException {
        byte[] bytes = bytes("rgb16_interlaced.png");
        float[] right = read("rgb16_interlaced.png", bytes.clone()).plane(0);
        Random random = new Random(seed);
        bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        Throwable thrown = catchThrowable(
                () -> assertThat(read("rgb16_interlaced.png", bytes).plane(0)).isEqualTo(right));
        if (thrown != null) {
            assertThat(thrown).isInstanceOf(ProblemException.class);
        }
    }
}
