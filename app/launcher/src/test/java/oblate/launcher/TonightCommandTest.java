/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TonightCommandTest {
    private static final String OVAL = "Oval, \"A\"; 1";

    @TempDir
    static Path work;

    private static Path season;

    @BeforeAll
    static void fill() throws IOException {
        season = FollowedSeason.in(work);
    }

    private static CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    private static CommandRun tonight(String... more) {
        List<String> words = new ArrayList<>(List.of("tonight", "--archive", season.toString()));
        words.addAll(Arrays.asList(more));
        return run(words.toArray(String[]::new));
    }

    /** Of every crossing the meridian of {@code oblate sky} is the longitude that the invented feature has then. */
    @Test
    void crossingsAgreeWithTheSky() {
        CommandRun run = tonight("--date", "2024-12-10", "--format", "csv");
        assertThat(run.status()).as(run.err()).isZero();
        List<CSVRecord> crossings = run.rows().stream()
                .filter(r -> r.get("kind").equals("crossing"))
                .toList();
        assertThat(crossings).hasSizeBetween(2, 3);
        for (CSVRecord row : crossings) {
            assertThat(row.get("subject")).isEqualTo(OVAL);
            String time = row.get("time_utc");
            CSVRecord sky = run("sky", "jupiter", "--at", time, "--format", "csv")
                    .rows()
                    .get(0);
            double day =
                    Duration.between(FollowedSeason.START, Instant.parse(time)).toSeconds() / 86_400.0;
            double truth = FollowedSeason.LON_DEG + FollowedSeason.DEG_PER_DAY * day;
            double off = Math.IEEEremainder(Double.parseDouble(sky.get("sub_earth_lon_sys3_deg")) - truth, 360);
            assertThat(off).isCloseTo(0, within(0.03));
            assertThat(Double.parseDouble(row.get("sigma_min"))).isBetween(0.1, 5.0);
            assertThat(row.get("system")).isEqualTo("3");
        }
        assertThat(run.out()).doesNotContain("NaN", "Infinity");
        assertThat(run.err()).contains("No time for Lone", "No time for Brief", "No time for Unmarked", "Local codes");
    }

    /** The moons' times are those of {@code oblate events} for the same site. */
    @Test
    void moonEventsAgreeWithTheEvents() {
        CommandRun run = tonight("--month", "2024-12", "--format", "csv");
        CommandRun events = run(
                "events",
                "jupiter",
                "--from",
                "2024-12-01T11:00:00Z",
                "--to",
                "2025-01-01T10:00:00Z",
                "--site",
                "48.2,16.3,170",
                "--format",
                "csv");
        List<CSVRecord> moons =
                run.rows().stream().filter(r -> r.get("kind").equals("moon")).toList();
        assertThat(moons).hasSizeGreaterThan(100);
        List<String> known = events.rows().stream()
                .flatMap(
                        r -> List.of(
                                r.get("ingress_centre_utc"),
                                r.get("egress_centre_utc"),
                                r.get("t1_utc"),
                                r.get("t4_utc"))
                                .stream())
                .toList();
        assertThat(moons).allMatch(r -> known.contains(r.get("time_utc")));
        assertThat(run.rows().stream().map(r -> r.get("night")).distinct()).hasSize(31);
    }

    @Test
    void textIsOneScreenInOrderOfTime() {
        CommandRun run = tonight("--date", "2024-12-10");
        assertThat(run.status()).as(run.err()).isZero();
        List<String> lines = run.out().lines().toList();
        assertThat(lines).hasSizeLessThan(42).allMatch(l -> l.length() <= 100);
        assertThat(lines.get(0)).isEqualTo("Jupiter, night of 2024-12-10 to 11, all times UTC");
        assertThat(run.out())
                .contains("Garden", "window opens", "Best hour", "Capture", OVAL + " on the meridian")
                .contains("No time for: Lone", "electrician", "Local codes");
        List<String> clocks = lines.stream()
                .filter(l -> l.matches("  \\d\\d:\\d\\d .*"))
                .map(l -> l.substring(2, 7))
                .map(c -> c.compareTo("12:00") < 0 ? "next " + c : "even " + c)
                .toList();
        assertThat(clocks).hasSizeGreaterThan(3).isSorted();
    }

    @Test
    @Tag("truth")
    void theCalendarIsReadByAnIndependentLibrary() throws IOException {
        Path file = work.resolve("plan.ics");
        CommandRun run = tonight("--month", "2024-12", "--calendar", file.toString(), "--format", "csv");
        assertThat(run.status()).as(run.err()).isZero();
        String text = Files.readString(file);
        assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
        for (String line : text.split("\r\n", -1)) {
            assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
        }
        List<ICalendar> read = Biweekly.parse(text).all();
        assertThat(read).hasSize(1);
        ICalendar calendar = read.get(0);
        assertThat(calendar.getVersion()).isEqualTo(ICalVersion.V2_0);
        assertThat(calendar.validate(ICalVersion.V2_0).isEmpty())
                .as(calendar.validate(ICalVersion.V2_0).toString())
                .isTrue();
        List<VEvent> entries = calendar.getEvents();
        List<CSVRecord> rows = run.rows();
        long wanted = rows.stream()
                .filter(r -> r.get("observable").equals("yes"))
                .filter(r -> r.get("kind").equals("crossing")
                        || r.get("kind").equals("moon")
                        || r.get("what").equals("window opens"))
                .count();
        assertThat(entries).hasSize((int) wanted);
        assertThat(entries.stream().map(e -> e.getUid().getValue()).distinct()).hasSize(entries.size());
        assertThat(entries).allSatisfy(e -> {
            assertThat(e.getDateTimeStamp().getValue().toInstant()).isEqualTo("2031-03-25T01:00:00Z");
            assertThat(e.getDateEnd().getValue()).isAfter(e.getDateStart().getValue());
            assertThat(e.getLocation().getValue()).isEqualTo("Garden");
        });
        for (CSVRecord row : rows) {
            if (row.get("kind").equals("crossing") && row.get("observable").equals("yes")) {
                Instant time = Instant.parse(row.get("time_utc"));
                assertThat(entries).anySatisfy(e -> {
                    assertThat(e.getSummary().getValue()).isEqualTo("Jupiter: " + OVAL + " on the meridian");
                    Instant from = e.getDateStart().getValue().toInstant();
                    Instant to = e.getDateEnd().getValue().toInstant();
                    long middle = (from.getEpochSecond() + to.getEpochSecond()) / 2;
                    assertThat(middle - time.getEpochSecond()).isBetween(-1L, 1L);
                });
            }
        }
        assertThat(entries.get(0).getDescription().getValue()).contains("Best hour", "electrician");
        CommandRun shown = tonight("--date", "2024-12-10", "--format", "ics");
        List<String> again = Biweekly.parse(shown.out()).first().getEvents().stream()
                .map(e -> e.getUid().getValue())
                .toList();
        assertThat(entries.stream().map(e -> e.getUid().getValue())).containsAll(again);
    }

    @Test
    void jsonHoldsTheCautionsToo() {
        CommandRun run = tonight("--date", "2024-12-10", "--format", "json");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("electrician", "no time for Lone", "longest_capture_s");
    }

    @Test
    void withoutADateItIsTheComingNight() {
        CommandRun run = run("tonight", "--planet", "jupiter", "--site", "48.2,16.3,170");
        assertThat(run.status()).as(run.err()).isZero();
        // The clock stands at 01:00 UTC of the 25th: the night is that of the 24th.
        assertThat(run.out()).startsWith("Jupiter, night of 2031-03-24 to 25");
    }

    @Test
    void aFeatureLostSinceLongIsNotTimed() {
        CommandRun run = tonight("--date", "2052-12-10");
        assertThat(run.status()).isZero();
        assertThat(run.out())
                .contains("No time for: " + OVAL, "may be anywhere")
                .doesNotContain(OVAL + " on the");
    }

    @Test
    void aNightWithoutAWindowSaysWhenThereIsOne() {
        CommandRun run = run("tonight", "--planet", "mars", "--site", "48.2,16.3,170", "--date", "2023-12-07");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("none: at no time", "the next such night is about 2024-06");
        CommandRun polar = run("tonight", "--planet", "jupiter", "--site", "78,16,20", "--date", "2024-06-10");
        assertThat(polar.out()).contains("does not set", "the next such night is about 2024-");
        CommandRun csv = run(
                "tonight", "--planet", "mars", "--site", "48.2,16.3,170", "--date", "2023-12-07", "--format", "csv");
        assertThat(csv.err()).contains("No window");
    }

    @Test
    void venusComesWithTheWarningOfTheSun() {
        assertThat(run("tonight", "--planet", "venus", "--site", "48.2,16.3,170", "--date", "2025-02-01")
                        .out())
                .contains("THE SUN");
    }

    @Test
    void badWordsAreOneSentence() {
        usage("add --site", "tonight", "--planet", "jupiter");
        usage("--planet", "tonight", "--site", "48,16,100");
        usage("either --date or --month", "tonight", "--planet", "mars", "--date", "2024-12-01", "--month", "2024-12");
        usage("not a date", "tonight", "--planet", "mars", "--site", "48,16,100", "--date", "2024-13-01");
        usage("not a month", "tonight", "--planet", "mars", "--site", "48,16,100", "--month", "december");
        usage("--scale", "tonight", "--planet", "mars", "--site", "48,16,100", "--max-smear-px", "1");
        usage("either --max-smear", "tonight", "--planet", "mars", "--max-smear-px", "1", "--max-smear-deg", "1");
        usage("did you mean garden", "tonight", "--archive", season.toString(), "--site", "gardn");
        usage("wavelengths", "tonight", "--planet", "mars", "--site", "48,16,100", "--wavelengths", "5");
        CommandRun outside = run("tonight", "--planet", "mars", "--site", "48,16,100", "--date", "1890-01-01");
        assertThat(outside.status()).isEqualTo(1);
        assertThat(outside.sentences()).singleElement().asString().contains("reach from");
    }

    private static void usage(String part, String... words) {
        CommandRun run = run(words);
        assertThat(run.status()).as(run.err()).isEqualTo(2);
        assertThat(run.sentences()).singleElement().asString().containsIgnoringCase(part);
        assertThat(run.out()).isEmpty();
    }
}
