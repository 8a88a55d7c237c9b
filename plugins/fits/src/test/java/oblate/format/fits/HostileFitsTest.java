/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import static oblate.format.fits.FitsBytes.card;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import nom.tam.fits.Fits;
import nom.tam.fits.FitsException;
import nom.tam.fits.ImageData;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import oblate.base.ProblemException;
import oblate.image.PictureHeader;

/** Cut and flipped FITS files: a picture or a {@link ProblemException}, and never anything else. */
class HostileFitsTest {
    private static final byte[] PLAIN = new FitsBytes()
            .image(16, new int[] {20, 30, 3}, card("BZERO", 32768), card("DATE-OBS", "2031-03-24T21:05:30"))
            .data(new byte[20 * 30 * 6])
            .bytes();
    private static final byte[] TILES = tiles();

    private static byte[] tiles() {
        try (Fits fits = new Fits()) {
            short[][] rows = new short[30][40];
            for (short[] row : rows) {
                Arrays.fill(row, (short) 77);
            }
            CompressedImageHDU tiles =
                    CompressedImageHDU.fromImageHDU(ImageData.from(rows).toHDU(), 40, 1);
            tiles.setCompressAlgorithm("RICE_1").compress();
            fits.addHDU(tiles);
            Path file = Files.createTempFile("tiles", ".fits");
            fits.write(file.toFile());
            byte[] bytes = Files.readAllBytes(file);
            Files.delete(file);
            return bytes;
        } catch (IOException | FitsException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Throwable read(byte[] bytes) throws IOException {
        Path file = Files.createTempFile("hostile", ".fits");
        try {
            Files.write(file, bytes);
            return catchThrowable(() -> {
                FitsFormat format = new FitsFormat();
                PictureHeader header = format.readHeader(file);
                if ((long) header.widthPx() * header.heightPx() < 4_000_000) {
                    format.readPixels(file, header);
                }
            });
        } finally {
            Files.delete(file);
        }
    }

    @Property(tries = 120, seed = "61")
    void cutFilesAreRefused(@ForAll @IntRange(min = 1, max = 2880 + 3599) int length) throws IOException {
        assertThat(read(Arrays.copyOf(PLAIN, length))).isInstanceOf(ProblemException.class);
    }

    @Property(tries = 400, seed = "67")
    void flippedFilesNeverThrowAnythingElse(
            @ForAll boolean tiled, @ForAll long seed, @ForAll @IntRange(min = 1, max = 5) int flips)
            throws IOException {
        byte[] bytes = (tiled ? TILES : PLAIN).clone();
        Random random = new Random(seed);
        for (int i = 0; i < flips; i++) {
            bytes[random.nextInt(Math.min(bytes.length, 7000))] ^= (byte) (1 << random.nextInt(8));
        }
        Throwable thrown = read(bytes);
        if (thrown != null) {
            assertThat(thrown).as("seed %d", seed).isInstanceOf(ProblemException.class);
        }
    }
}
