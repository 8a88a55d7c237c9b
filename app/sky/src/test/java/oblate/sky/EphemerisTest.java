/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.GZIPInputStream;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EphemerisTest {
    private static final int RECORD_BYTES = 818 * 8;

    @TempDir
    Path folder;

    @Test
    void nameAndSpanAreThoseOfTheFile() {
        Ephemeris bundled = Ephemeris.bundled();
        assertThat(bundled.name()).isEqualTo("DE405");
        assertThat(bundled.firstTdbDay()).isEqualTo(2436912.5 - 2451545.0);
        assertThat(bundled.lastTdbDay()).isEqualTo(2473488.5 - 2451545.0);
    }

    @Test
    void positionsJoinSmoothlyWhereRecordsMeet() {
        Ephemeris bundled = Ephemeris.bundled();
        for (int body = 1; body <= 11; body++) {
            for (int record = 1; record < 1143; record += 97) {
                double edge = bundled.firstTdbDay() + 32.0 * record;
                Vec3 before = bundled.bodyKm(body, edge - 1e-6);
                Vec3 after = bundled.bodyKm(body, edge + 1e-6);
                // nothing in the file moves faster than 60 km/s: 10 km in 0.17 s
                assertThat(after.minus(before).norm()).as("body %d", body).isLessThan(10.5);
            }
        }
    }

    @Test
    void uncompressedFileOfTheOtherByteOrderReadsAlike() throws IOException {
        Path file = folder.resolve("lnxp.405");
        Files.write(file, swapped(unpacked()));
        Ephemeris other = Ephemeris.read(file);
        Ephemeris bundled = Ephemeris.bundled();
        assertThat(other.name()).isEqualTo("DE405");
        for (double day = -14000; day < 21000; day += 3333.3) {
            assertThat(other.bodyKm(5, day)).isEqualTo(bundled.bodyKm(5, day));
            assertThat(other.earthKm(day)).isEqualTo(bundled.earthKm(day));
        }
    }

    @Test
    void cutOrForeignFilesAreRefusedInOneSentence() throws IOException {
        byte[] whole = unpacked();
        refused(new byte[0], "bytes");
        refused(Arrays.copyOf(whole, 20_000), "it should have");
        refused(Arrays.copyOf(whole, whole.length - 1), "it should have");
        byte[] noise = new byte[60_000];
        new Random(3).nextBytes(noise);
        refused(noise, "head");
        refused(new byte[60_000], "head");
        byte[] gap = whole.clone();
        System.arraycopy(gap, 4 * RECORD_BYTES, gap, 3 * RECORD_BYTES, RECORD_BYTES);
        refused(gap, "record 4");
        byte[] table = whole.clone();
        ByteBuffer.wrap(table).putInt(2696 + 12 * 4 + 4, 1000);
        refused(table, "body 5");
        byte[] beyond = whole.clone();
        ByteBuffer.wrap(beyond).putInt(2696 + 12 * 4, 99_990);
        refused(beyond, "it");
    }

    @Test
    void cutGzipIsRefused() throws IOException {
        byte[] packed;
        try (InputStream in = Ephemeris.class.getResourceAsStream("unxp1959p2060.405.gz")) {
            packed = in.readAllBytes();
        }
        Path cut = Files.write(folder.resolve("cut.405.gz"), Arrays.copyOf(packed, 50_000));
        assertThatThrownBy(() -> Ephemeris.read(cut))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("cut.405.gz");
        Path notGzip = Files.write(folder.resolve("not.405.gz"), new byte[] {1, 2, 3});
        assertThatThrownBy(() -> Ephemeris.read(notGzip))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("not.405.gz");
        assertThatThrownBy(() -> Ephemeris.read(folder.resolve("missing"))).isInstanceOf(ProblemException.class);
    }

    private static void refused(byte[] bytes, String word) {
        assertThatThrownBy(() -> EphemerisFile.read(new ByteArrayInputStream(bytes), "file.405", "file.405"))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.BAD_EPHEMERIS))
                .hasMessageStartingWith("file.405:")
                .hasMessageContaining(word);
    }

    private static byte[] unpacked() throws IOException {
        try (InputStream in = new GZIPInputStream(Ephemeris.class.getResourceAsStream("unxp1959p2060.405.gz"))) {
            return in.readAllBytes();
        }
    }

    private static byte[] swapped(byte[] big) {
        byte[] little = big.clone();
        ByteBuffer from = ByteBuffer.wrap(big);
        ByteBuffer to = ByteBuffer.wrap(little).order(ByteOrder.LITTLE_ENDIAN);
        for (int at = 2652; at < 2676; at += 8) {
            to.putDouble(at, from.getDouble(at));
        }
        to.putInt(2676, from.getInt(2676));
        to.putDouble(2680, from.getDouble(2680));
        to.putDouble(2688, from.getDouble(2688));
        for (int at = 2696; at < 2856; at += 4) {
            to.putInt(at, from.getInt(at));
        }
        for (int at = RECORD_BYTES; at + 8 <= big.length; at += 8) {
            to.putDouble(at, from.getDouble(at));
        }
        return little;
    }
}
