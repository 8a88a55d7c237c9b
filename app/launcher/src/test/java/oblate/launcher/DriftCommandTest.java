/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DriftCommandTest {
    private static final Instant START = Instant.parse("2031-01-01T00:00:00Z");

    @TempDir
    Path work;

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    /** Marks of a steady and an accelerating feature and three lone ones, without names. */
    private Path marks() throws IOException {
        Random random = new Random(3);
        StringBuilder text = new StringBuilder("time_utc,lon_deg,lat_deg,sigma_deg\n");
        for (int i = 0; i < 40; i++) {
            double day = 2.5 * i;
            row(text, day, 350 - 0.4 * day + 0.5 * random.nextGaussian(), -33);
            row(text, day + 0.3, 80 + 0.1 * day + 0.006 * day * day + 0.5 * random.nextGaussian(), 18);
        }
        row(text, 20, 200, -33);
        row(text, 40, 130, -33);
        row(text, 60, 270, 18);
        Path file = work.resolve("marks.csv");
        Files.writeString(file, text);
        return file;
    }

    private static void row(StringBuilder text, double day, double lon, double lat) {
        text.append(String.format(
                Locale.ROOT,
                "%s,%.2f,%.1f,0.5%n",
                START.plusSeconds(Math.round(day * 86_400)),
                ((lon % 360) + 360) % 360,
                lat));
    }

    @Test
    void unnamedMarksAreLinkedAndEachRowIsAccountedFor() throws IOException {
        Path assigned = work.resolve("tracks.csv");
        CommandRun run = run(
                "drift",
                marks().toString(),
                "--planet",
                "jupiter",
                "--system",
                "2",
                "--link",
                "--assignments",
                assigned.toString(),
                "--format",
                "csv");
        assertThat(run.status()).isZero();
        assertThat(run.rows()).extracting(r -> r.get("feature")).containsExactly("T01", "T02");
        assertThat(run.rows()).extracting(r -> r.get("model")).containsExactly("acceleration", "rate");
        CSVRecord bent = run.rows().get(0);
        assertThat(Double.parseDouble(bent.get("acceleration_deg_per_day2"))).isCloseTo(0.012, within(0.002));
        assertThat(bent.get("change_utc")).isEmpty();
        assertThat(bent.get("runners_up")).contains("rate +");
        assertThat(Double.parseDouble(bent.get("wind_m_s"))).isCloseTo(-20.7, within(1.5));
        assertThat(run.out()).doesNotContain("NaN");
        List<String> lines = Files.readAllLines(assigned);
        assertThat(lines).hasSize(84);
        assertThat(lines.get(0)).isEqualTo("row,track,doubtful,reason");
        assertThat(lines.get(1)).isEqualTo("1,T02,no,");
        assertThat(lines.get(81)).isEqualTo("81,,no,");
    }

    @Test
    void aLinkSettledByHandKeepsItsReason() throws IOException {
        Path settled = work.resolve("settled.csv");
        Path assigned = work.resolve("tracks.csv");
        Files.writeString(settled, "row,track,reason\n1,none,\"clock, that night\"\n");
        CommandRun run = run(
                "drift",
                marks().toString(),
                "--planet",
                "jupiter",
                "--system",
                "2",
                "--link",
                "--settle",
                settled.toString(),
                "--assignments",
                assigned.toString(),
                "--predict",
                "2031-05-01T00:00:00Z,2031-06-01T00:00:00Z",
                "--format",
                "csv");
        assertThat(run.status()).isZero();
        assertThat(Files.readAllLines(assigned).get(1)).isEqualTo("1,,no,\"settled by hand: clock, that night\"");
        assertThat(run.rows()).hasSize(4);
        CSVRecord steady = run.rows().get(2);
        // 120 days after the start: 350 − 0.4 · 120.
        assertThat(Double.parseDouble(steady.get("lon_deg"))).isCloseTo(302, within(1.5));
        assertThat(Double.parseDouble(steady.get("sigma_lon_deg"))).isBetween(0.1, 2.0);
        assertThat(Double.parseDouble(run.rows().get(3).get("sigma_lon_deg")))
                .isGreaterThan(Double.parseDouble(steady.get("sigma_lon_deg")));
        for (CSVRecord row : run.rows()) {
            double all = Arrays.stream(row.get("shares").split(", "))
                    .mapToDouble(share -> Double.parseDouble(share.split(" ")[1]))
                    .sum();
            assertThat(row.get("shares")).contains(row.get("model"));
            assertThat(all).isCloseTo(1, within(0.021));
        }
    }

    @Test
    void textIsForReading() throws IOException {
        CommandRun run = run("drift", marks().toString(), "--planet", "jupiter", "--system", "2", "--link");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("rate gains +0.0", "9h 55m ", "Drifts on Jupiter");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThan(140));
    }

    @Test
    void wrongWordsAreToldInOneSentence() throws IOException {
        String marks = marks().toString();
        for (List<String> words : List.of(
                List.of("drift", marks, "--planet", "jupiter", "--system", "2", "--assignments", "x.csv"),
                List.of("drift", marks, "--planet", "jupiter", "--system", "2", "--predict", "tomorrow"),
                List.of("drift", marks, "--planet", "jupiter", "--system", "2", "--rates", "3"),
                List.of("drift", marks, "--planet", "jupiter", "--system", "2", "--rates", "3,1"),
                List.of("drift", marks, "--planet", "jupiter", "--system", "2", "--period", "-3"))) {
            CommandRun run = run(words.toArray(String[]::new));
            assertThat(run.status()).as(words.toString()).isEqualTo(2);
            assertThat(run.sentences()).as(words.toString()).hasSize(1);
        }
        Path bad = work.resolve("bad.csv");
        Files.writeString(bad, "time_utc,lon_deg,lat_deg\n2031-01-01T00:00:00Z,100,7\n2031-01-02T00:00:00Z,100,97\n");
        CommandRun run = run("drift", bad.toString(), "--planet", "jupiter", "--system", "2", "--link");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.sentences()).singleElement().asString().contains("row 2", "97");
    }
}
