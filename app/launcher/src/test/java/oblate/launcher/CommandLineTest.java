/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandLineTest {
    @TempDir
    Path work;

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    @Test
    @Tag("truth")
    void skySaysWhatAnotherEphemerisSays() {
        // Jupiter 2024-12-07T20:00:00Z: light time, CM III and sub-Earth latitude by an independent numpy computation
        // on DE405 and the IAU 2015 elements.
        CommandRun run = run("sky", "jupiter", "--at", "2024-12-07T20:00:00Z", "--format", "csv");
        assertThat(run.status()).isZero();
        CSVRecord row = run.rows().get(0);
        assertThat(Double.parseDouble(row.get("light_time_s"))).isCloseTo(2040.770, within(0.001));
        assertThat(Double.parseDouble(row.get("sub_earth_lon_sys3_deg"))).isCloseTo(348.93023, within(0.001));
        assertThat(Double.parseDouble(row.get("sub_earth_lat_centric_deg"))).isCloseTo(2.86606, within(0.001));
    }

    @Test
    void skyReadsTimesFromStandardInputAndGoesOnAfterABadOne() {
        CommandRun run = CommandRun.of(
                work,
                "2024-12-07T20:00:00Z\n2024-12-07T20:00\n2016-12-31T23:59:60Z\n2015-12-31T23:59:60Z\n2071-01-01T00:00:00Z\n",
                "sky",
                "mars",
                "--times",
                "-",
                "--format",
                "csv");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.rows())
                .extracting(r -> r.get("time_utc"))
                .containsExactly("2024-12-07T20:00:00Z", "2016-12-31T23:59:60Z");
        assertThat(run.sentences()).hasSize(3);
        assertThat(run.err()).contains("2024-12-07T20:00", "2015-12-31T23:59:60Z", "2071-01-01T00:00:00Z", "2060");
    }

    @Test
    void wrongUsageIsOneSentenceAndStatusTwo() {
        for (List<String> words : List.of(
                List.of("sky", "jupitr", "--at", "2024-12-07T20:00:00Z"),
                List.of("sky", "jupiter"),
                List.of("skies"),
                List.of("sky", "jupiter", "--at", "2024-12-07T20:00:00Z", "--format", "cvs"),
                List.of("drift"),
                List.of("fit"),
                List.of("marks", "add", "--archive", "x"))) {
            CommandRun run = run(words.toArray(String[]::new));
            assertThat(run.status()).as(words.toString()).isEqualTo(2);
            assertThat(run.sentences()).as(words.toString()).hasSize(1);
            assertThat(run.out()).as(words.toString()).isEmpty();
        }
        assertThat(run("sky", "jupitr", "--at", "2024-12-07T20:00:00Z").err()).contains("did you mean jupiter");
    }

    @Test
    void aFolderThatIsNoArchiveIsSaidToBeNone() throws IOException {
        Files.writeString(work.resolve("letter.txt"), "hello");
        for (String command : List.of("pictures", "check", "marks", "history")) {
            CommandRun run = run(command, "--archive", work.toString());
            assertThat(run.status()).isEqualTo(1);
            assertThat(run.sentences()).singleElement().asString().contains(work.toString(), "no archive");
        }
    }

    @Test
    void badFilesAreNamedAndTheOthersGoOn() throws IOException {
        Files.createDirectories(work.resolve("in"));
        Files.write(work.resolve("in/empty-20310324T210530Z.png"), new byte[0]);
        Files.writeString(
                work.resolve("in/junk-20310324T210530Z.png"), "this is no picture at all, whatever its name says");
        Path good = Night.pictures().stream()
                .filter(p -> p.toString().endsWith("Z.png"))
                .findFirst()
                .orElseThrow();
        Files.copy(good, work.resolve("in").resolve(good.getFileName()));
        CommandRun run = run(
                "file",
                work.resolve("in").toString(),
                "--archive",
                work.resolve("a").toString(),
                "--planet",
                "jupiter",
                "--format",
                "csv");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.rows()).hasSize(1);
        assertThat(run.err())
                .contains("empty-20310324T210530Z.png", "junk-20310324T210530Z.png")
                .doesNotContain("Exception");
        assertThat(run("check", "--archive", work.resolve("a").toString()).status())
                .isZero();
    }

    @Test
    @Tag("truth")
    void driftOfAPrintedCurrentHasThePrintedPeriod() throws IOException {
        // RASC planetary section report 1959-60: a System I drift of -9.0 deg per 30 days is printed with a period of
        // 9h50m18s.
        Path marks = work.resolve("marks.csv");
        Files.writeString(
                marks,
                "time_utc,lon_deg,lat_deg\n2031-01-01T00:00:00Z,100.0,7\n2031-01-16T00:00:00Z,95.5,7\n2031-01-31T00:00:00Z,91.0,7\n"
                        + "2031-02-15T00:00:00Z,86.5,7\n2031-03-02T00:00:00Z,82.0,7\n");
        CommandRun run = run("drift", marks.toString(), "--planet", "jupiter", "--system", "1", "--format", "csv");
        assertThat(run.status()).isZero();
        CSVRecord row = run.rows().get(0);
        assertThat(Double.parseDouble(row.get("rate_deg_per_30d"))).isCloseTo(-9.0, within(1e-3));
        assertThat(Double.parseDouble(row.get("period_s"))).isCloseTo(9 * 3600 + 50 * 60 + 18, within(0.5));
    }

    @Test
    void pluginsListsWhatShips() {
        CommandRun run = run("plugins", "--format", "csv");
        assertThat(run.status()).isZero();
        assertThat(run.rows())
                .extracting(r -> r.get("kind") + " " + r.get("id"))
                .contains(
                        "planet jupiter",
                        "planet neptune",
                        "picture format fits",
                        "report format csv",
                        "map format png",
                        "map format fits",
                        "chart writer drift-charts",
                        "panel longitude-date",
                        "panel speed-latitude",
                        "panel moons");
    }
}
