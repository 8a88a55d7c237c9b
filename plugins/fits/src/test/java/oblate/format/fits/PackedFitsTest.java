/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import static oblate.format.fits.FitsBytes.card;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import oblate.base.ProblemException;
import oblate.image.ImageProblem;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.PixelGrid;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tiles packed here by hand after chapter 10 of FITS standard 4.0, one a row, so that the numbers owe nothing to the library. */
@Tag("truth")
class PackedFitsTest {
    @TempDir
    Path folder;

    private PixelGrid read(byte[] bytes) throws IOException {
        return new PictureReader(List.of(new FitsFormat()), PictureLimits.usual())
                .decode(Files.write(folder.resolve("packed.fits"), bytes))
                .pixels();
    }

    private ProblemException refusal(byte[] bytes) {
        return catchThrowableOfType(ProblemException.class, () -> read(bytes));
    }

    private static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(plain);
        }
        return packed.toByteArray();
    }

    /**
     * A file of one packed picture.
     *
     * @param tiles the packed rows
     * @param extra what stands behind the descriptor in every row of the table
     * @param more cards of kind, size and method
     */
    private static byte[] table(List<byte[]> tiles, byte[] extra, String... more) {
        ByteArrayOutputStream rows = new ByteArrayOutputStream();
        ByteArrayOutputStream heap = new ByteArrayOutputStream();
        for (byte[] tile : tiles) {
            rows.writeBytes(ByteBuffer.allocate(8)
                    .putInt(tile.length)
                    .putInt(heap.size())
                    .array());
            rows.writeBytes(extra);
            heap.writeBytes(tile);
        }
        List<String> cards = new ArrayList<>(List.of(
                card("XTENSION", "BINTABLE"),
                card("BITPIX", 8),
                card("NAXIS", 2),
                card("NAXIS1", 8 + extra.length),
                card("NAXIS2", tiles.size()),
                card("PCOUNT", heap.size()),
                card("GCOUNT", 1),
                card("TFIELDS", extra.length == 0 ? 1 : 3),
                card("TTYPE1", "COMPRESSED_DATA"),
                card("TFORM1", "1PB(200)"),
                card("ZIMAGE", true),
                card("ZNAXIS", 2),
                card("ZTILE2", 1)));
        cards.addAll(List.of(more));
        rows.writeBytes(heap.toByteArray());
        return new FitsBytes()
                .header(card("SIMPLE", true), card("BITPIX", 8), card("NAXIS", 0), card("EXTEND", true))
                .header(cards.toArray(String[]::new))
                .data(rows.toByteArray())
                .bytes();
    }

    /** Section 10.4.1: the first number plain, then differences, folded to be positive, in blocks of 32 with one split each. */
    private static byte[] rice(short[] row, int split) {
        StringBuilder bits = new StringBuilder();
        bits(bits, row[0] & 0xffff, 16);
        bits(bits, split + 1, 4);
        int last = row[0];
        for (short value : row) {
            int difference = value - last;
            int folded = difference < 0 ? -2 * difference - 1 : 2 * difference;
            bits.append("0".repeat(folded >> split)).append('1');
            bits(bits, folded & ((1 << split) - 1), split);
            last = value;
        }
        while (bits.length() % 8 != 0) {
            bits.append('0');
        }
        byte[] bytes = new byte[bits.length() / 8];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) Integer.parseInt(bits.substring(8 * i, 8 * i + 8), 2);
        }
        return bytes;
    }

    private static void bits(StringBuilder target, int value, int count) {
        for (int bit = count - 1; bit >= 0; bit--) {
            target.append(value >> bit & 1);
        }
    }

    @Test
    void riceOfSixteenUnsignedBits() throws IOException {
        short[] bottom = {-32768, -32760, -32768, -32700, -32733};
        short[] top = {100, 90, 95, 95, 160};
        PixelGrid grid = read(table(
                List.of(rice(bottom, 3), rice(top, 4)),
                new byte[0],
                card("ZBITPIX", 16),
                card("ZNAXIS1", 5),
                card("ZNAXIS2", 2),
                card("ZTILE1", 5),
                card("ZCMPTYPE", "RICE_1"),
                card("ZNAME1", "BLOCKSIZE"),
                card("ZVAL1", 32),
                card("ZNAME2", "BYTEPIX"),
                card("ZVAL2", 2),
                card("BZERO", 32768),
                card("BSCALE", 1)));
        float[] expected = new float[10];
        for (int x = 0; x < 5; x++) {
            expected[x] = (float) ((top[x] + 32768) / 65535.0);
            expected[5 + x] = (float) ((bottom[x] + 32768) / 65535.0);
        }
        assertThat(grid.plane(0)).containsExactly(expected);
        assertThat(grid.high()).isEqualTo(1);
    }

    /** GZIP_2 puts the high bytes of all numbers before the low ones. */
    @Test
    void gzipOfSortedBytes() throws IOException {
        byte[] sorted = {0, 1, (byte) 255, 7, 2, (byte) 254};
        PixelGrid grid = read(table(
                List.of(gzip(sorted)),
                new byte[0],
                card("ZBITPIX", 16),
                card("ZNAXIS1", 3),
                card("ZNAXIS2", 1),
                card("ZTILE1", 3),
                card("ZCMPTYPE", "GZIP_2")));
        assertThat(grid.plane(0)).containsExactly(7f, 258f, -2f);
    }

    /** Floating samples packed without loss: the bytes of the numbers themselves. */
    @Test
    void floatingSamplesPackedWithoutLoss() throws IOException {
        byte[] numbers = ByteBuffer.allocate(16)
                .putFloat(0.1f)
                .putFloat(Float.NaN)
                .putFloat(-1e9f)
                .putFloat(0)
                .array();
        PixelGrid grid = read(table(List.of(gzip(numbers)), new byte[0], floating("GZIP_1")));
        assertThat(grid.plane(0)).containsExactly(0.1f, Float.NaN, -1e9f, 0f);
    }

    private static String[] floating(String method, String... more) {
        List<String> cards = new ArrayList<>(List.of(
                card("ZBITPIX", -32),
                card("ZNAXIS1", 4),
                card("ZNAXIS2", 1),
                card("ZTILE1", 4),
                card("ZCMPTYPE", method)));
        cards.addAll(List.of(more));
        return cards.toArray(String[]::new);
    }

    /** What the library would shift by half a step, or show missing pixels of as numbers, is not read at all. */
    @Test
    void tilesThatWouldComeOutWrongAreRefused() throws IOException {
        byte[] numbers = ByteBuffer.allocate(16)
                .putInt(0)
                .putInt(10)
                .putInt(Integer.MIN_VALUE)
                .putInt(-4)
                .array();
        byte[] scale = ByteBuffer.allocate(16).putDouble(0.25).putDouble(100).array();
        List<byte[]> tile = List.of(gzip(numbers));
        String[] columns = {
            card("TTYPE2", "ZSCALE"), card("TFORM2", "1D"), card("TTYPE3", "ZZERO"), card("TFORM3", "1D")
        };
        List<byte[]> files = List.of(
                table(tile, scale, floating("GZIP_1", columns)),
                table(tile, new byte[0], floating("GZIP_2", card("ZQUANTIZ", "NO_DITHER"))));
        for (byte[] file : files) {
            ProblemException refusal = refusal(file);
            assertThat(refusal.kind()).isEqualTo(ImageProblem.UNSUPPORTED);
            assertThat(refusal).hasMessageContaining("rounded to steps").hasMessageContaining("PNG or TIFF");
        }
        String[] whole = {
            card("ZBITPIX", 32), card("ZNAXIS1", 4), card("ZNAXIS2", 1), card("ZTILE1", 4), card("ZCMPTYPE", "PLIO_1")
        };
        assertThat(refusal(table(tile, new byte[0], whole)).kind()).isEqualTo(ImageProblem.UNSUPPORTED);
        String[] blanks = {
            card("ZBITPIX", 32),
            card("ZNAXIS1", 4),
            card("ZNAXIS2", 1),
            card("ZTILE1", 4),
            card("ZCMPTYPE", "GZIP_1"),
            card("TTYPE2", "ZBLANK"),
            card("TFORM2", "1D"),
            card("TTYPE3", "OTHER"),
            card("TFORM3", "1D")
        };
        assertThat(refusal(table(tile, scale, blanks)))
                .hasMessageContaining("missing pixels")
                .extracting(ProblemException::kind)
                .isEqualTo(ImageProblem.UNSUPPORTED);
    }

    /** Whole numbers keep their missing pixels: ZBLANK in the header. */
    @Test
    void missingWholeNumbersInTiles() throws IOException {
        byte[] numbers = ByteBuffer.allocate(6)
                .putShort((short) 3)
                .putShort((short) -32768)
                .putShort((short) -1)
                .array();
        PixelGrid grid = read(table(
                List.of(gzip(numbers)),
                new byte[0],
                card("ZBITPIX", 16),
                card("ZNAXIS1", 3),
                card("ZNAXIS2", 1),
                card("ZTILE1", 3),
                card("ZCMPTYPE", "GZIP_1"),
                card("ZBLANK", -32768)));
        assertThat(grid.plane(0)).containsExactly(3f, Float.NaN, -1f);
    }

    @Test
    void unsignedSixtyFourBits() throws IOException {
        byte[] data = ByteBuffer.allocate(16)
                .putLong(Long.MIN_VALUE + 5)
                .putLong(Long.MAX_VALUE)
                .array();
        PixelGrid grid = read(new FitsBytes()
                .image(
                        64,
                        new int[] {2, 1},
                        card("BZERO", "9223372036854775808").replace("'", " "))
                .data(data)
                .bytes());
        assertThat(grid.plane(0)).containsExactly(5f, 0x1p64f);
    }

    @Test
    void everyTenthOfAFileIsRefused() throws IOException {
        byte[] numbers = new byte[6_000];
        new Random(5).nextBytes(numbers);
        byte[] whole =
                new FitsBytes().image(16, new int[] {50, 60}).data(numbers).bytes();
        int end = 2880 + numbers.length;
        for (byte[] file : List.of(whole, gzip(whole))) {
            int length = file == whole ? end : file.length;
            for (int tenth = 0; tenth < 10; tenth++) {
                ProblemException refusal = refusal(Arrays.copyOf(file, length * tenth / 10));
                assertThat(refusal).as("%d tenths", tenth).isNotNull();
                assertThat(refusal.kind())
                        .isIn(
                                tenth == 0
                                        ? List.of(ImageProblem.EMPTY)
                                        : List.of(ImageProblem.BROKEN, ImageProblem.UNSUPPORTED));
            }
            float[] samples = read(file).plane(0);
            for (int i = 0; i < 3_000; i++) {
                int stored = (59 - i / 50) * 50 + i % 50;
                assertThat(samples[i]).isEqualTo(ByteBuffer.wrap(numbers).getShort(2 * stored));
            }
        }
    }

    @Test
    void gzipDoesNotHideALargeSize() throws IOException {
        byte[] picture =
                gzip(new FitsBytes().image(8, new int[] {60_000, 60_000}).bytes());
        assertThat(refusal(picture).kind()).isEqualTo(ImageProblem.TOO_LARGE);
        byte[] table = gzip(new FitsBytes()
                .header(card("SIMPLE", true), card("BITPIX", 8), card("NAXIS", 0), card("EXTEND", true))
                .header(
                        card("XTENSION", "BINTABLE"),
                        card("BITPIX", 8),
                        card("NAXIS", 2),
                        card("NAXIS1", 1_000_000_000),
                        card("NAXIS2", 5),
                        card("PCOUNT", 0),
                        card("GCOUNT", 1),
                        card("TFIELDS", 0))
                .bytes());
        ProblemException refusal = refusal(table);
        assertThat(refusal.kind()).isEqualTo(ImageProblem.BROKEN);
        assertThat(refusal).hasMessageContaining("unpacked");
    }
}
