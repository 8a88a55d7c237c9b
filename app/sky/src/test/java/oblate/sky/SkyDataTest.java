/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SkyDataTest {
    @TempDir
    Path settings;

    private Path ephemerides;
    private Path leapSeconds;

    @BeforeEach
    void folders() throws IOException {
        ephemerides = Files.createDirectories(settings.resolve("ephemeris"));
        leapSeconds = Files.createDirectories(settings.resolve("leap-seconds"));
    }

    @Test
    void withoutFilesTheBundledDataAreUsed() {
        SkyData data = SkyData.in(settings.resolve("missing"));
        assertThat(data.ephemeris().isBundled()).isTrue();
        assertThat(data.leapSeconds().isBundled()).isTrue();
        assertThat(data.files()).isEmpty();
        assertThat(data.warnings()).isEmpty();
    }

    @Test
    void theHighestEphemerisAndTheLatestLeapSecondsAreUsed() throws IOException {
        Files.write(
                ephemerides.resolve("a.421"),
                new JplFile().number(421).only(0, 50).bytes());
        Files.write(
                ephemerides.resolve("b.440"),
                new JplFile().number(440).only(0, 50).bytes());
        Files.write(ephemerides.resolve(".hidden"), new byte[3]);
        Files.writeString(leapSeconds.resolve("leap-seconds.list"), LeapSecondsTest.NEWER_LIST);
        Files.writeString(leapSeconds.resolve("old.list"), LeapSecondsTest.LIST_OF_2016);
        SkyData data = SkyData.in(settings);
        assertThat(data.ephemeris().name()).isEqualTo("DE440");
        assertThat(data.leapSeconds().expires()).isEqualTo(LocalDate.of(2029, 1, 1));
        assertThat(data.files())
                .extracting(f -> f.file().getFileName() + " " + f.fate())
                .containsExactlyInAnyOrder("a.421 SPARE", "b.440 USED", "leap-seconds.list USED", "old.list SPARE");
        assertThat(data.warnings()).isEmpty();
        ApparentDisc disc = data.sky().disc(GroundSkyTest.body(4), UtcTime.parse("1962-01-01T00:00:00Z"));
        assertThat(disc.ephemeris()).isEqualTo("DE440");
    }

    @Test
    void whatIsRefusedIsSaidAndTheNextBestIsUsed() throws IOException {
        byte[] whole = new JplFile().number(440).only(0, 50).bytes();
        Files.write(ephemerides.resolve("cut.440"), java.util.Arrays.copyOf(whole, 40_000));
        Files.write(
                ephemerides.resolve("note.txt"), "not an ephemeris".getBytes(java.nio.charset.StandardCharsets.UTF_8));
        Files.write(
                ephemerides.resolve("good.421"),
                new JplFile().number(421).only(0, 50).bytes());
        Files.writeString(
                leapSeconds.resolve("leap-seconds.list"), LeapSecondsTest.LIST_OF_2016.replace("cdd22f1", "cdd22f2"));
        SkyData data = SkyData.in(settings);
        assertThat(data.ephemeris().name()).isEqualTo("DE421");
        assertThat(data.leapSeconds().isBundled()).isTrue();
        assertThat(data.warnings()).hasSize(3);
        assertThat(data.warnings()).anyMatch(w -> w.contains("cut.440") && w.contains("good.421"));
        assertThat(data.warnings()).anyMatch(w -> w.contains("leap-seconds.list") && w.contains("SHA-1"));
        assertThat(data.warnings()).allMatch(w -> !w.contains("\n"));
    }
}
