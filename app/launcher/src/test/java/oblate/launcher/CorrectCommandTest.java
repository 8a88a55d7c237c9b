/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Facts corrected, fits withdrawn and links settled, through the command line. */
class CorrectCommandTest {
    @TempDir
    Path work;

    private String archive;

    @BeforeEach
    void makeArchive() throws IOException {
        archive = FollowedSeason.unnamedIn(work).toString();
    }

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    private CommandRun correct(String... words) {
        return run(Stream.concat(
                        Stream.of("correct", "--archive", archive, "--format", "csv", "--reason", "slow clock"),
                        Stream.of(words))
                .toArray(String[]::new));
    }

    private List<CSVRecord> marks() {
        return run("marks", "--archive", archive, "--format", "csv").rows();
    }

    @Test
    void aClockTenMinutesSlowIsPutRightForSeveralPicturesAtOnce() {
        CommandRun run = correct("1", "2", "--shift", "600");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(run.rows())
                .extracting(r -> r.get("mid_time_utc"))
                .containsExactly("2024-11-01T21:10:00Z", "2024-11-06T21:10:00Z");
        assertThat(run.rows()).extracting(r -> r.get("fit")).containsOnly("fitted");
        CommandRun history = run("history", "--archive", archive, "--format", "csv");
        assertThat(history.out()).contains("slow clock", "was 2024-11-01T21:00:00Z", "time of its picture corrected");
    }

    @Test
    void wordsAreChangedAndCleared() {
        CommandRun run = correct("1", "--filter", "IR 685", "--kit", "", "--observer", "B. Observer");
        assertThat(run.rows().get(0).get("filter")).isEqualTo("IR 685");
        assertThat(run.rows().get(0).get("kit")).isEmpty();
        assertThat(run("pictures", "--archive", archive, "--by", "B. Observer", "--format", "csv")
                        .rows())
                .hasSize(1);
    }

    @Test
    void aWithdrawnFitLeavesThePictureUnfitted() {
        CommandRun run = correct("3", "--withdraw-fit");
        assertThat(run.rows().get(0).get("fit")).isEqualTo("none");
        CommandRun again = correct("3", "--withdraw-fit");
        assertThat(again.status()).isEqualTo(1);
        assertThat(again.sentences()).singleElement().asString().contains("oblate fit");
    }

    @Test
    void aTableHasTheColumnsAskedForAndIsNotedAsSent() {
        CommandRun run = run(
                "report",
                "positions",
                "--archive",
                archive,
                "--format",
                "csv",
                "--columns",
                "mid_time_utc, lon_deg,system",
                "--note-sent",
                "the group's January list");
        assertThat(run.status()).isZero();
        assertThat(run.out().lines().findFirst().orElseThrow()).isEqualTo("mid_time_utc,lon_deg,system");
        assertThat(run.rows()).hasSize(12);
        assertThat(run.sentences())
                .singleElement()
                .asString()
                .contains("9 pictures")
                .contains("January list");
        assertThat(run("history", "--archive", archive, "--limit", "1").out()).contains("January list");
        CommandRun unknown = run("report", "positions", "--archive", archive, "--columns", "lon_deq");
        assertThat(unknown.status()).isEqualTo(2);
        assertThat(unknown.err()).contains("lon_deq").contains("lon_deg");
    }

    @Test
    void nonsenseIsRefusedInOneSentence() {
        assertThat(correct("1", "2", "--time", "2024-11-01T21:00:00Z").status()).isEqualTo(2);
        assertThat(correct("1", "--time", "yesterday").err()).contains("is no instant");
        assertThat(correct("1", "--time-sigma", "-1").status()).isEqualTo(2);
        CommandRun unknown = correct("nothing.png", "1", "--site", "Atlantis");
        assertThat(unknown.status()).isEqualTo(1);
        assertThat(unknown.sentences())
                .hasSize(2)
                .allMatch(s -> s.endsWith("oblate pictures") || s.contains("Atlantis"));
        assertThat(unknown.out()).isEmpty();
    }

    @Test
    void whatIsSettledByHandIsKeptForLaterRuns() throws IOException {
        Path tracks = work.resolve("tracks.csv");
        run("drift", "--archive", archive, "--link", "--assignments", tracks.toString());
        List<String> first = Files.readAllLines(tracks);
        String stray = first.stream()
                .filter(line -> line.split(",", -1)[1].isEmpty())
                .findFirst()
                .orElseThrow()
                .split(",", -1)[0];
        assertThat(first).filteredOn(line -> line.contains(",T01,")).hasSize(9);
        String member = first.stream()
                .filter(line -> line.contains(",T01,"))
                .reduce((a, b) -> b)
                .orElseThrow()
                .split(",", -1)[0];

        Path words = work.resolve("settled.csv");
        Files.writeString(words, "row,track,reason\n" + stray + ",T01,same colour\n" + member + ",none,blurred\n");
        CommandRun settled = run("drift", "--archive", archive, "--link", "--settle", words.toString());
        assertThat(settled.err()).contains("2 links settled by hand");

        Path later = work.resolve("later.csv");
        run("drift", "--archive", archive, "--link", "--assignments", later.toString());
        assertThat(Files.readAllLines(later))
                .contains(stray + ",T01,no,settled by hand: same colour", member + ",,no,settled by hand: blurred");

        Files.writeString(words, "row,track,reason\n" + stray + ",open,not so sure\n" + member + ",open,good enough\n");
        run("drift", "--archive", archive, "--link", "--settle", words.toString(), "--assignments", later.toString());
        assertThat(Files.readAllLines(later)).isEqualTo(first);
    }

    @Test
    void aTrackNamedByHandDrawsUnnamedMarksToIt() throws IOException {
        Path tracks = work.resolve("tracks.csv");
        run("drift", "--archive", archive, "--link", "--assignments", tracks.toString());
        List<String> members = Files.readAllLines(tracks).stream()
                .filter(line -> line.contains(",T01,"))
                .map(line -> line.split(",", -1)[0])
                .toList();
        Path words = work.resolve("settled.csv");
        Files.writeString(
                words,
                "row,track,reason\n" + members.get(0) + ",White one,known\n" + members.get(6) + ",White one,known\n");
        CommandRun run = run(
                "drift",
                "--archive",
                archive,
                "--system",
                "3",
                "--link",
                "--settle",
                words.toString(),
                "--format",
                "csv");
        CSVRecord drift = run.rows().stream()
                .filter(r -> r.get("feature").equals("White one"))
                .findFirst()
                .orElseThrow();
        assertThat(drift.get("marks")).isEqualTo("9");
        assertThat(Double.parseDouble(drift.get("rate_deg_per_day")))
                .isCloseTo(FollowedSeason.DEG_PER_DAY, within(0.02));
        assertThat(marks()).hasSize(12);
    }
}
