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
import java.util.List;
import java.util.zip.GZIPOutputStream;
import nom.tam.fits.Fits;
import nom.tam.fits.ImageData;
import nom.tam.fits.ImageHDU;
import nom.tam.image.compression.hdu.CompressedImageHDU;
import oblate.base.ProblemException;
import oblate.image.DecodedPicture;
import oblate.image.ImageProblem;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.PixelGrid;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Samples against bytes written by hand after FITS standard 4.0; row 1 of the file is the bottom. */
@Tag("truth")
class FitsFormatTest {
    @TempDir
    Path folder;

    private DecodedPicture decode(Path file) {
        return new PictureReader(List.of(new FitsFormat()), PictureLimits.usual()).decode(file);
    }

    private DecodedPicture decode(FitsBytes fits) throws IOException {
        return decode(fits.write(folder, "picture.fits"));
    }

    private ProblemException refusal(FitsBytes fits) {
        return catchThrowableOfType(ProblemException.class, () -> decode(fits));
    }

    @Test
    void unsignedBytesAndTheFirstRowAtTheBottom() throws IOException {
        PixelGrid grid = decode(new FitsBytes()
                        .image(8, new int[] {3, 2})
                        .data(new byte[] {0, 51, (byte) 255, 102, (byte) 204, 1}))
                .pixels();
        assertThat(grid.plane(0)).containsExactly(0.4f, 0.8f, (float) (1 / 255.0), 0f, 0.2f, 1f);
        assertThat(grid.low()).isZero();
        assertThat(grid.high()).isEqualTo(1);
    }

    @Test
    void unsignedSixteenBitsByBzero() throws IOException {
        byte[] data = ByteBuffer.allocate(6)
                .putShort((short) -32768)
                .putShort((short) 32767)
                .putShort((short) 0)
                .array();
        PixelGrid grid = decode(new FitsBytes()
                        .image(16, new int[] {3, 1}, card("BZERO", 32768), card("BSCALE", 1))
                        .data(data))
                .pixels();
        assertThat(grid.plane(0)).containsExactly(0f, 1f, (float) (32768 / 65535.0));
    }

    @Test
    void signedSixteenBitsKeepTheirValues() throws IOException {
        byte[] data = ByteBuffer.allocate(6)
                .putShort((short) -5)
                .putShort((short) 300)
                .putShort((short) 7)
                .array();
        PixelGrid grid =
                decode(new FitsBytes().image(16, new int[] {3, 1}).data(data)).pixels();
        assertThat(grid.plane(0)).containsExactly(-5f, 300f, 7f);
        assertThat(grid.low()).isEqualTo(-5);
        assertThat(grid.high()).isEqualTo(300);
    }

    @Test
    void blankAndNegativeScale() throws IOException {
        byte[] data = ByteBuffer.allocate(8)
                .putShort((short) -32768)
                .putShort((short) 10)
                .putShort((short) 0)
                .putShort((short) -4)
                .array();
        PixelGrid grid = decode(new FitsBytes()
                        .image(16, new int[] {4, 1}, card("BLANK", -32768), card("BSCALE", -0.5), card("BZERO", 100.0))
                        .data(data))
                .pixels();
        assertThat(grid.plane(0)).containsExactly(Float.NaN, 95f, 100f, 102f);
        assertThat(grid.low()).isEqualTo(95);
        assertThat(grid.high()).isEqualTo(102);
    }

    @Test
    void thirtyTwoAndSixtyFourBitIntegers() throws IOException {
        byte[] ints = ByteBuffer.allocate(8)
                .putInt(Integer.MIN_VALUE)
                .putInt(Integer.MAX_VALUE)
                .array();
        assertThat(decode(new FitsBytes()
                                .image(32, new int[] {2, 1}, card("BZERO", 2147483648L))
                                .data(ints))
                        .pixels()
                        .plane(0))
                .containsExactly(0f, 1f);
        assertThat(decode(new FitsBytes().image(32, new int[] {2, 1}).data(ints))
                        .pixels()
                        .plane(0))
                .containsExactly(-2147483648f, 2147483647f);
        byte[] longs = ByteBuffer.allocate(16).putLong(-7).putLong(1L << 40).array();
        PixelGrid grid =
                decode(new FitsBytes().image(64, new int[] {2, 1}).data(longs)).pixels();
        assertThat(grid.plane(0)).containsExactly(-7f, (float) (1L << 40));
    }

    @Test
    void floatingSamplesWithMissingAndInfiniteOnes() throws IOException {
        byte[] floats = ByteBuffer.allocate(16)
                .putFloat(Float.NaN)
                .putFloat(0.25f)
                .putFloat(Float.POSITIVE_INFINITY)
                .putFloat(-3)
                .array();
        DecodedPicture picture =
                decode(new FitsBytes().image(-32, new int[] {2, 2}).data(floats));
        assertThat(picture.pixels().plane(0)).containsExactly(Float.NaN, -3f, Float.NaN, 0.25f);
        assertThat(picture.pixels().low()).isEqualTo(-3);
        assertThat(picture.pixels().high()).isEqualTo(0.25);
        assertThat(picture.header().floating()).isTrue();
        byte[] doubles = ByteBuffer.allocate(16).putDouble(1.5).putDouble(-1e-3).array();
        assertThat(decode(new FitsBytes().image(-64, new int[] {2, 1}).data(doubles))
                        .pixels()
                        .plane(0))
                .containsExactly(1.5f, -1e-3f);
        byte[] none = ByteBuffer.allocate(8)
                .putFloat(Float.NaN)
                .putFloat(Float.NEGATIVE_INFINITY)
                .array();
        PixelGrid empty =
                decode(new FitsBytes().image(-32, new int[] {2, 1}).data(none)).pixels();
        assertThat(empty.low()).isZero();
        assertThat(empty.high()).isZero();
    }

    @Test
    void threePlanesAreRedGreenBlueAndOtherCubesGiveTheirFirst() throws IOException {
        byte[] planes = {1, 2, 3, 4, 5, 6};
        DecodedPicture colour =
                decode(new FitsBytes().image(8, new int[] {2, 1, 3}).data(planes));
        assertThat(colour.header().channels()).isEqualTo(3);
        assertThat(colour.pixels().measuringPlane()).containsExactly((float) (3 / 255.0), (float) (4 / 255.0));
        DecodedPicture two =
                decode(new FitsBytes().image(8, new int[] {3, 1, 2}).data(planes));
        assertThat(two.header().channels()).isEqualTo(1);
        assertThat(two.header().fact("Reading", "Planes").orElseThrow()).startsWith("2,");
        assertThat(two.pixels().plane(0))
                .containsExactly((float) (1 / 255.0), (float) (2 / 255.0), (float) (3 / 255.0));
        DecodedPicture one =
                decode(new FitsBytes().image(8, new int[] {3, 2, 1, 1}).data(planes));
        assertThat(one.header().fact("Reading", "Planes")).isEmpty();
        DecodedPicture four =
                decode(new FitsBytes().image(8, new int[] {1, 1, 3, 2}).data(planes));
        assertThat(four.header().channels()).isEqualTo(1);
    }

    @Test
    void aPictureInAnExtensionAndTheFactsOfBothHeaders() throws IOException {
        FitsBytes fits = new FitsBytes()
                .header(
                        card("SIMPLE", true),
                        card("BITPIX", 8),
                        card("NAXIS", 0),
                        card("EXTEND", true),
                        card("OBJECT", "invented"))
                .header(
                        card("XTENSION", "IMAGE"),
                        card("BITPIX", 8),
                        card("NAXIS", 2),
                        card("NAXIS1", 2),
                        card("NAXIS2", 1),
                        card("PCOUNT", 0),
                        card("GCOUNT", 1),
                        card("DATE-AVG", "2031-03-24T21:05:30.5"))
                .data(new byte[] {(byte) 255, 0});
        DecodedPicture picture = decode(fits);
        assertThat(picture.pixels().plane(0)).containsExactly(1f, 0f);
        assertThat(picture.header().fact("FITS", "OBJECT")).contains("invented");
        assertThat(picture.header().fact("FITS", "DATE-AVG")).contains("2031-03-24T21:05:30.5");
        assertThat(picture.header().fact("Reading", "HDU").orElseThrow()).contains("part 2");
    }

    @Test
    void rowsThatTheFileSaysAreTopFirstStay() throws IOException {
        DecodedPicture picture = decode(new FitsBytes()
                .image(8, new int[] {1, 2}, card("ROWORDER", "TOP-DOWN"))
                .data(new byte[] {(byte) 255, 0}));
        assertThat(picture.pixels().plane(0)).containsExactly(1f, 0f);
        assertThat(picture.header().fact("Reading", "Rows")).isPresent();
    }

    @Test
    void gzipRoundTheWholeFile() throws IOException {
        byte[] plain = new FitsBytes()
                .image(8, new int[] {2, 1})
                .data(new byte[] {51, 102})
                .bytes();
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(plain);
        }
        assertThat(decode(Files.write(folder.resolve("a.fits.gz"), packed.toByteArray()))
                        .pixels()
                        .plane(0))
                .containsExactly(0.2f, 0.4f);
        ByteArrayOutputStream other = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(other)) {
            gzip.write("no picture at all".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        }
        Path text = Files.write(folder.resolve("b.gz"), other.toByteArray());
        assertThat(catchThrowableOfType(ProblemException.class, () -> decode(text))
                        .kind())
                .isEqualTo(ImageProblem.UNSUPPORTED);
    }

    /** One gzip stream a row, in the heap of a binary table, as chapter 10 of the standard has it. */
    @Test
    void tilesPackedByGzipWrittenByHand() throws IOException {
        short[][] rows = {{1, 200, -3}, {4, 5, 600}};
        ByteArrayOutputStream heap = new ByteArrayOutputStream();
        ByteBuffer table = ByteBuffer.allocate(16);
        for (short[] row : rows) {
            ByteArrayOutputStream packed = new ByteArrayOutputStream();
            try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
                ByteBuffer bytes = ByteBuffer.allocate(6);
                for (short value : row) {
                    bytes.putShort(value);
                }
                gzip.write(bytes.array());
            }
            table.putInt(packed.size()).putInt(heap.size());
            heap.writeBytes(packed.toByteArray());
        }
        byte[] data = new byte[16 + heap.size()];
        System.arraycopy(table.array(), 0, data, 0, 16);
        System.arraycopy(heap.toByteArray(), 0, data, 16, heap.size());
        FitsBytes fits = new FitsBytes()
                .header(card("SIMPLE", true), card("BITPIX", 8), card("NAXIS", 0), card("EXTEND", true))
                .header(
                        card("XTENSION", "BINTABLE"),
                        card("BITPIX", 8),
                        card("NAXIS", 2),
                        card("NAXIS1", 8),
                        card("NAXIS2", 2),
                        card("PCOUNT", heap.size()),
                        card("GCOUNT", 1),
                        card("TFIELDS", 1),
                        card("TTYPE1", "COMPRESSED_DATA"),
                        card("TFORM1", "1PB(60)"),
                        card("ZIMAGE", true),
                        card("ZBITPIX", 16),
                        card("ZNAXIS", 2),
                        card("ZNAXIS1", 3),
                        card("ZNAXIS2", 2),
                        card("ZTILE1", 3),
                        card("ZTILE2", 1),
                        card("ZCMPTYPE", "GZIP_1"))
                .data(data);
        assertThat(decode(fits).pixels().plane(0)).containsExactly(4f, 5f, 600f, 1f, 200f, -3f);
    }

    @Test
    void tilesPackedByRiceWrittenByTheLibrary() throws Exception {
        short[][] rows = new short[20][30];
        for (int y = 0; y < 20; y++) {
            for (int x = 0; x < 30; x++) {
                rows[y][x] = (short) (x * 100 - y * 37);
            }
        }
        ImageHDU plain = ImageData.from(rows).toHDU();
        CompressedImageHDU tiles = CompressedImageHDU.fromImageHDU(plain, 30, 1);
        tiles.setCompressAlgorithm("RICE_1").compress();
        Path file = folder.resolve("rice.fits");
        try (Fits fits = new Fits()) {
            fits.addHDU(tiles);
            fits.write(file.toFile());
        }
        PixelGrid grid = decode(file).pixels();
        for (int y = 0; y < 20; y++) {
            for (int x = 0; x < 30; x++) {
                assertThat(grid.sample(0, x, y)).isEqualTo(rows[19 - y][x]);
            }
        }
    }

    @Test
    void refusals() throws IOException {
        FitsBytes whole = new FitsBytes().image(16, new int[] {100, 100}).data(new byte[20_000]);
        Path cut = Files.write(folder.resolve("cut.fits"), java.util.Arrays.copyOf(whole.bytes(), 9_000));
        ProblemException broken = catchThrowableOfType(ProblemException.class, () -> decode(cut));
        assertThat(broken.kind()).isEqualTo(ImageProblem.BROKEN);
        assertThat(broken).hasMessageContaining("cut.fits").hasMessageContaining("cut short");
        assertThat(refusal(new FitsBytes().image(8, new int[] {50_000, 2}).data(new byte[100_000]))
                        .kind())
                .isEqualTo(ImageProblem.TOO_LARGE);
        assertThat(refusal(new FitsBytes().image(16, new int[] {2_000_000_000, 2_000_000_000}))
                        .kind())
                .isEqualTo(ImageProblem.TOO_LARGE);
        assertThat(refusal(new FitsBytes().image(12, new int[] {2, 2}).data(new byte[8]))
                        .kind())
                .isEqualTo(ImageProblem.BROKEN);
        assertThat(refusal(new FitsBytes().image(8, new int[] {})).kind()).isEqualTo(ImageProblem.UNSUPPORTED);
        assertThat(refusal(new FitsBytes()
                                .image(16, new int[] {2, 2}, card("BSCALE", 0.0))
                                .data(new byte[8]))
                        .kind())
                .isEqualTo(ImageProblem.BROKEN);
        Path endless = Files.write(
                folder.resolve("endless.fits"),
                "SIMPLE  =                    T".repeat(400).getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        assertThat(catchThrowableOfType(ProblemException.class, () -> decode(endless))
                        .kind())
                .isEqualTo(ImageProblem.BROKEN);
    }
}
