/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import oblate.base.ProblemException;
import oblate.image.ImageProblem;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.PixelGrid;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files whose claims about themselves are false. */
class ForgedClaimsTest {
    private static final PictureReader READER =
            new PictureReader(List.of(new PngFormat(), new JpegFormat(), new TiffFormat()), PictureLimits.usual());
    private static final int TAG_HEIGHT = 257;
    private static final int TAG_BITS = 258;
    private static final int TAG_STRIP_BYTES = 279;
    private static final int TAG_SAMPLES = 277;
    private static final int TAG_TILE_BYTES = 325;
    /** A private tag, so that the one renamed to it is as good as gone. */
    private static final int TAG_OF_NOBODY = 0xe117;

    @TempDir
    Path folder;

    /** Changes one entry of a directory. */
    @FunctionalInterface
    private interface Forgery {
        void at(ByteBuffer file, int entry);
    }

    private PixelGrid read(byte[] bytes) throws IOException {
        return READER.decode(Files.write(folder.resolve("forged.bin"), bytes)).pixels();
    }

    private ProblemException refusal(byte[] bytes) {
        return catchThrowableOfType(ProblemException.class, () -> read(bytes));
    }

    /** A sample file with the entry of one tag changed; entries are tag, type, count and value of 2, 2, 4 and 4 bytes. */
    private static byte[] forged(String name, int tag, Forgery forgery) throws IOException {
        byte[] bytes = Files.readAllBytes(SampleFilesTest.sample(name));
        ByteBuffer file = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        int directory = file.getInt(4);
        for (int i = 0; i < file.getShort(directory); i++) {
            int entry = directory + 2 + 12 * i;
            if (file.getShort(entry) == (short) tag) {
                forgery.at(file, entry);
                return bytes;
            }
        }
        throw new IllegalArgumentException(name + " has no tag " + tag);
    }

    @Test
    void tilesThatAreNotThereAreMissed() throws IOException {
        // 17 × 11 pixels need two tiles of 16 × 16; 17 × 40 need six.
        ProblemException refusal = refusal(forged("rgb16_tiled_lzw.tif", TAG_HEIGHT, (f, e) -> f.putInt(e + 8, 40)));
        assertThat(refusal.kind()).isEqualTo(ImageProblem.BROKEN);
        assertThat(refusal).hasMessageContaining("2 tiles").hasMessageContaining("asks for 6");
    }

    @Test
    void packedPixelsNeedTheirLengths() throws IOException {
        for (byte[] bytes : List.of(
                forged("rgb16_tiled_lzw.tif", TAG_TILE_BYTES, (f, e) -> f.putShort(e, (short) TAG_OF_NOBODY)),
                forged("rgb16_deflate_predictor.tif", TAG_STRIP_BYTES, (f, e) -> f.putShort(e, (short) TAG_OF_NOBODY)),
                forged("g16_lzw_predictor.tif", TAG_STRIP_BYTES, (f, e) -> f.putInt(e + 4, 2)))) {
            ProblemException refusal = refusal(bytes);
            assertThat(refusal.kind()).isEqualTo(ImageProblem.BROKEN);
            assertThat(refusal).hasMessageContaining("lengths");
        }
        ProblemException hollow =
                refusal(forged("rgb8_packbits.tif", TAG_STRIP_BYTES, (f, e) -> f.putInt(f.getInt(e + 8), 0)));
        assertThat(hollow.kind()).isEqualTo(ImageProblem.BROKEN);
        assertThat(hollow).hasMessageContaining("without content");
    }

    @Test
    void plainPixelsDoWithoutTheirLengths() throws IOException {
        byte[] bytes = forged("g8.tif", TAG_STRIP_BYTES, (f, e) -> f.putShort(e, (short) TAG_OF_NOBODY));
        assertThat(read(bytes).plane(0))
                .isEqualTo(SampleFilesTest.decode("g8.tif").pixels().plane(0));
    }

    @Test
    void aTagThatContradictsItselfIsRefused() throws IOException {
        ProblemException refusal = refusal(forged("g8.tif", TAG_SAMPLES, (f, e) -> f.putShort(e, (short) TAG_BITS)));
        assertThat(refusal.kind()).isEqualTo(ImageProblem.BROKEN);
        assertThat(refusal).hasMessageContaining("tag 258 twice");
    }

    @Test
    void sizesBeyondTheLimitsAreRefusedFromTheHeaderAlone() throws IOException {
        for (byte[] bytes : List.of(hugePng(), hugeJpeg())) {
            ProblemException refusal = refusal(bytes);
            assertThat(refusal.kind()).isEqualTo(ImageProblem.TOO_LARGE);
            assertThat(refusal).hasMessageContaining("forged.bin").hasMessageContaining("60000 × 60000");
        }
    }

    /** Signature, IHDR of 60000 × 60000 grey pixels of 8 bits, four bytes of pixels, IEND; all check sums are right. */
    private static byte[] hugePng() {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        png.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        png.writeBytes(chunk(
                "IHDR",
                ByteBuffer.allocate(13)
                        .putInt(60_000)
                        .putInt(60_000)
                        .put((byte) 8)
                        .array()));
        png.writeBytes(chunk("IDAT", new byte[] {0x78, 0x01, 0x03, 0x00}));
        png.writeBytes(chunk("IEND", new byte[0]));
        return png.toByteArray();
    }

    private static byte[] chunk(String type, byte[] body) {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(name);
        sum.update(body);
        return ByteBuffer.allocate(12 + body.length)
                .putInt(body.length)
                .put(name)
                .put(body)
                .putInt((int) sum.getValue())
                .array();
    }

    /** A start of frame of 60000 × 60000 grey pixels, an empty scan, the end. */
    private static byte[] hugeJpeg() {
        ByteBuffer jpeg = ByteBuffer.allocate(27);
        jpeg.putShort((short) 0xffd8)
                .putShort((short) 0xffc0)
                .putShort((short) 11)
                .put((byte) 8);
        jpeg.putShort((short) 60_000).putShort((short) 60_000).put((byte) 1).put(new byte[] {1, 0x11, 0});
        jpeg.putShort((short) 0xffda).putShort((short) 8).put(new byte[] {1, 1, 0, 0, 63, 0});
        return jpeg.putShort((short) 0xffd9).array();
    }

    @ParameterizedTest
    @ValueSource(strings = {"png", "jpg", "tiff"})
    void everyTenthOfAFileIsRefusedAndTheWholeIsRight(String kind) throws IOException {
        BufferedImage image = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 1200; i++) {
            image.setRGB(i % 40, i / 40, kind.equals("jpg") ? 0x6496c8 : i * 1237);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(ImageIO.write(image, kind, out)).isTrue();
        byte[] whole = out.toByteArray();
        for (int tenth = 0; tenth < 10; tenth++) {
            ProblemException refusal = refusal(Arrays.copyOf(whole, whole.length * tenth / 10));
            assertThat(refusal).as("%s, %d tenths", kind, tenth).isNotNull();
            assertThat(refusal.kind()).isEqualTo(tenth == 0 ? ImageProblem.EMPTY : ImageProblem.BROKEN);
        }
        PixelGrid grid = read(whole);
        for (int i = 0; i < 1200; i++) {
            for (int c = 0; c < 3; c++) {
                int expected = image.getRGB(i % 40, i / 40) >> (16 - 8 * c) & 0xff;
                int got = Math.round(grid.sample(c, i % 40, i / 40) * 255);
                assertThat(Math.abs(got - expected)).isLessThanOrEqualTo(kind.equals("jpg") ? 2 : 0);
            }
        }
    }
}
