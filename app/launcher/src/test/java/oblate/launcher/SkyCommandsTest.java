/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.zip.GZIPInputStream;
import oblate.sky.Sky;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The commands about sites, nights, crossings, smear and data of the sky, as whole runs. */
class SkyCommandsTest {
    private static final String[] RANGE = {"--from", "2024-12-07T00:00:00Z", "--to", "2024-12-09T00:00:00Z"};

    @TempDir
    Path work;

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    private CommandRun ranged(String... words) {
        String[] all = Arrays.copyOf(words, words.length + RANGE.length);
        System.arraycopy(RANGE, 0, all, words.length, RANGE.length);
        return run(all);
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    @Test
    void aSiteAddsItsColumnsByCoordinatesAndByName() {
        CommandRun centre = run("sky", "jupiter", "--at", "2024-12-07T20:00:00Z", "--format", "csv");
        CommandRun byNumbers =
                run("sky", "jupiter", "--at", "2024-12-07T20:00:00Z", "--site", "48.2,16.3,170", "--format", "csv");
        assertThat(byNumbers.status()).isZero();
        CSVRecord row = byNumbers.rows().get(0);
        assertThat(row.get("sub_earth_lon_sys2_deg"))
                .isEqualTo(centre.rows().get(0).get("sub_earth_lon_sys2_deg"));
        assertThat(centre.rows().get(0).toMap()).doesNotContainKey("altitude_deg");
        assertThat(number(row, "altitude_refracted_deg") - number(row, "altitude_deg"))
                .isBetween(0.01, 0.02);
        assertThat(row.get("twilight")).isEqualTo("night");
        // parallax: no more than the Earth's radius at that distance, 2.2 arcsec
        assertThat(Math.abs(number(row, "dec_topocentric_deg") - number(row, "dec_apparent_deg")))
                .isBetween(1e-5, 2.2 / 3600);
        Path archive = work.resolve("season");
        assertThat(run(
                                "site",
                                "add",
                                "back garden",
                                "--archive",
                                archive.toString(),
                                "--lat",
                                "48.2",
                                "--lon",
                                "16.3",
                                "--height",
                                "170")
                        .status())
                .isZero();
        CommandRun byName = run(
                "sky",
                "jupiter",
                "--at",
                "2024-12-07T20:00:00Z",
                "--site",
                "Back Garden",
                "--archive",
                archive.toString(),
                "--format",
                "csv");
        assertThat(byName.out()).isEqualTo(byNumbers.out());
        CommandRun unknown = run(
                "sky",
                "jupiter",
                "--at",
                "2024-12-07T20:00:00Z",
                "--site",
                "back gardn",
                "--archive",
                archive.toString());
        assertThat(unknown.status()).isEqualTo(2);
        assertThat(unknown.sentences()).singleElement().asString().contains("did you mean back garden");
    }

    @Test
    void dispersionIsToldForTheWavelengthsAskedFor() {
        double narrow = number(
                run("sky", "mars", "--at", "2025-01-16T20:00:00Z", "--site", "40,0", "--format", "csv")
                        .rows()
                        .get(0),
                "dispersion_arcsec");
        double wide = number(
                run(
                                "sky",
                                "mars",
                                "--at",
                                "2025-01-16T20:00:00Z",
                                "--site",
                                "40,0",
                                "--wavelengths",
                                "400,700",
                                "--format",
                                "csv")
                        .rows()
                        .get(0),
                "dispersion_arcsec");
        assertThat(wide / narrow).isCloseTo(1.65, within(0.03));
    }

    @Test
    void aNightListsWhatHappensInOrderAndWhatDoesNot() {
        CommandRun night =
                run("night", "jupiter", "--date", "2024-12-07", "--site", "48.2,16.3,170", "--format", "csv");
        assertThat(night.status()).isZero();
        assertThat(night.rows())
                .extracting(r -> r.get("body") + " " + r.get("event"))
                .contains("sun set", "sun civil dusk", "jupiter transit", "jupiter window begins", "jupiter set");
        assertThat(night.rows()).extracting(r -> r.get("time_utc")).isSorted();
        CommandRun bright = run("night", "venus", "--date", "2024-06-10", "--site", "78.2,15.6,10", "--format", "csv");
        assertThat(bright.rows()).extracting(r -> r.get("note")).contains("the Sun does not set", "Venus never sets");
        CommandRun track = run(
                "night",
                "jupiter",
                "--date",
                "2024-12-07",
                "--site",
                "48.2,16.3",
                "--track",
                "--step",
                "60",
                "--format",
                "json");
        assertThat(track.status()).isZero();
        assertThat(track.out()).contains("dispersion_arcsec", "2024-12-07T18:");
        CommandRun none = run("night", "saturn", "--date", "2024-03-01", "--site", "48.2,16.3", "--format", "csv");
        assertThat(none.rows()).extracting(r -> r.get("note")).anyMatch(n -> n.startsWith("at no time this night"));
    }

    /** All planets with their true rotation, the retrograde ones too: {@code oblate sky} confirms each crossing to a second. */
    @ParameterizedTest
    @CsvSource({
        "mercury, iau, 2024-01-01T00:00:00Z, 2024-06-01T00:00:00Z",
        "venus, iau, 2024-01-01T00:00:00Z, 2026-01-01T00:00:00Z",
        "mars, iau, 2024-12-07T00:00:00Z, 2024-12-12T00:00:00Z",
        "jupiter, 2, 2024-12-07T00:00:00Z, 2024-12-09T00:00:00Z",
        "saturn, 1, 2024-12-07T00:00:00Z, 2024-12-09T00:00:00Z",
        "uranus, iau, 2024-12-07T00:00:00Z, 2024-12-09T00:00:00Z",
        "neptune, iau, 2024-12-07T00:00:00Z, 2024-12-09T00:00:00Z"
    })
    void crossingsAreConfirmedByTheCentralMeridian(String planet, String system, String from, String to) {
        CommandRun run = run(
                "crossings",
                planet,
                "--lon",
                "123.4",
                "--system",
                system,
                "--from",
                from,
                "--to",
                to,
                "--format",
                "csv");
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.rows()).hasSizeGreaterThan(1);
        String column = system.equals("iau") ? "sub_earth_lon_deg" : "sub_earth_lon_sys" + system + "_deg";
        String times = run.rows().stream().map(r -> r.get("time_utc")).collect(Collectors.joining("\n"));
        List<CSVRecord> skies = CommandRun.of(
                        work.resolve("settings"), times, "sky", planet, "--times", "-", "--format", "csv")
                .rows();
        for (int i = 0; i < skies.size(); i++) {
            CSVRecord row = run.rows().get(i);
            CSVRecord sky = skies.get(i);
            double off = Math.IEEEremainder(number(sky, column) - 123.4, 360);
            assertThat(Math.abs(off) / number(row, "rate_deg_per_min") * 60).isLessThan(1.2);
        }
    }

    @Test
    @Tag("truth")
    void crossingsOfJupiterCarryTheErrorIntoMinutesAndSayWhatCanBeSeen() {
        CommandRun run = ranged(
                "crossings",
                "jupiter",
                "--lon",
                "42",
                "--system",
                "II",
                "--sigma",
                "1.5",
                "--site",
                "48.2,16.3,170",
                "--format",
                "csv");
        assertThat(run.status()).isZero();
        assertThat(run.rows()).hasSize(5);
        assertThat(run.rows()).extracting(r -> r.get("observable")).containsExactly("no", "no", "yes", "no", "yes");
        // one degree is 1.65 min
        assertThat(run.rows()).extracting(r -> r.get("sigma_min")).containsOnly("2.5");
        CommandRun seen = ranged(
                "crossings",
                "jupiter",
                "--lon",
                "42",
                "--system",
                "2",
                "--site",
                "48.2,16.3,170",
                "--observable",
                "--format",
                "csv");
        assertThat(seen.rows()).hasSize(2);
    }

    /** Trade handbook: 120 s turn Jupiter by 1.209 deg; one pixel of 0.1 arcsec at 49.5 arcsec of diameter takes 23 s, at 48.2 arcsec 23.6. */
    @Test
    @Tag("truth")
    void smearOfJupiterAndItsLongestCapture() {
        CommandRun run = run(
                "smear",
                "jupiter",
                "--seconds",
                "120",
                "--scale",
                "0.1",
                "--max-px",
                "1",
                "--system",
                "3",
                "--lat",
                "0",
                "--at",
                "2024-12-07T20:00:00Z",
                "--format",
                "csv");
        assertThat(run.status()).as(run.err()).isZero();
        CSVRecord row = run.rows().get(0);
        assertThat(number(row, "smear_deg")).isCloseTo(1.209, within(0.001));
        assertThat(number(row, "smear_km")).isCloseTo(2 * 754, within(2.0));
        assertThat(number(row, "smear_px")).isCloseTo(10 * number(row, "smear_arcsec"), within(0.01));
        assertThat(number(row, "longest_s")).isCloseTo(23.6, within(0.3));
        CommandRun uranus =
                run("smear", "uranus", "--seconds", "600", "--at", "2024-12-07T20:00:00Z", "--format", "csv");
        CSVRecord sky = run("sky", "uranus", "--at", "2024-12-07T20:00:00Z", "--format", "csv")
                .rows()
                .get(0);
        // retrograde: toward 90 deg east of its north pole
        assertThat(Math.IEEEremainder(
                        number(uranus.rows().get(0), "motion_pa_deg") - number(sky, "north_pole_pa_deg") - 90, 360))
                .isCloseTo(0, within(0.02));
    }

    @Test
    void theSunIsWarnedOf() {
        CommandRun day = run("sky", "venus", "--at", "2024-06-10T11:00:00Z", "--site", "48.2,16.3,170");
        assertThat(day.status()).isZero();
        assertThat(day.sentences()).singleElement().asString().startsWith("Caution:");
        assertThat(run("sky", "venus", "--at", "2024-06-10T23:00:00Z", "--site", "48.2,16.3,170")
                        .sentences())
                .isEmpty();
    }

    @Test
    void pastTheLeapSecondsTheResultSaysSo() {
        for (String command : List.of("sky", "moons")) {
            CommandRun run = run(
                    command,
                    "jupiter",
                    "--at",
                    "2024-12-07T20:00:00Z",
                    "--at",
                    "2031-03-24T21:05:30Z",
                    "--format",
                    "csv");
            assertThat(run.rows().get(0).get("leap_seconds")).isEqualTo("bundled, complete to 2026-06-28");
            assertThat(run.rows().get(run.rows().size() - 1).get("leap_seconds"))
                    .contains("past 2026-06-28", "69.184 s");
            assertThat(run.rows()).extracting(r -> r.get("ephemeris")).containsOnly("DE405");
        }
    }

    @Test
    void wrongWordsAreOneSentenceAndStatusTwo() {
        String at = "2024-12-07T20:00:00Z";
        for (List<String> words : List.of(
                List.of("sky", "jupiter", "--at", at, "--site", "91,0,0"),
                List.of("sky", "jupiter", "--at", at, "--site", "48.2,16.3,99999"),
                List.of("sky", "jupiter", "--at", at, "--site", "garden"),
                List.of("sky", "jupiter", "--at", at, "--site", "40,0", "--wavelengths", "red,blue"),
                List.of("moons", "mars", "--at", at),
                List.of("moons", "jupitr", "--at", at),
                List.of("night", "jupiter", "--date", "2024-13-07", "--site", "40,0"),
                List.of("night", "jupiter", "--date", "2024-12-07"),
                List.of("night", "jupiter", "--date", "2024-12-07", "--site", "40,0", "--after", "nautcal"),
                List.of("night", "jupiter", "--date", "2024-12-07", "--site", "40,0", "--step", "0"),
                List.of("night", "jupiter", "--date", "2024-12-07", "--site", "40,0", "--min-altitude", "95"),
                List.of("crossings", "jupiter", "--lon", "42", "--system", "2", "--from", at, "--to", at),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "42",
                        "--system",
                        "2",
                        "--from",
                        at,
                        "--to",
                        "2024-12-01T00:00:00Z"),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "42",
                        "--system",
                        "2",
                        "--from",
                        at,
                        "--to",
                        "2024-12-08T23:59:61Z"),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "42",
                        "--system",
                        "2",
                        "--from",
                        "2024-12-07T20:00",
                        "--to",
                        at),
                List.of("crossings", "jupiter", "--lon", "42", "--from", at, "--to", "2024-12-09T00:00:00Z"),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "420",
                        "--system",
                        "2",
                        "--from",
                        at,
                        "--to",
                        "2024-12-09T00:00:00Z"),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "42",
                        "--system",
                        "4",
                        "--from",
                        at,
                        "--to",
                        "2024-12-09T00:00:00Z"),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "42",
                        "--system",
                        "2",
                        "--sigma",
                        "-1",
                        "--from",
                        at,
                        "--to",
                        "2024-12-09T00:00:00Z"),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "42",
                        "--system",
                        "2",
                        "--observable",
                        "--from",
                        at,
                        "--to",
                        "2024-12-09T00:00:00Z"),
                List.of("smear", "jupiter", "--at", at),
                List.of("smear", "jupiter", "--at", at, "--seconds", "-3"),
                List.of("smear", "jupiter", "--at", at, "--seconds", "120", "--max-px", "1"),
                List.of("smear", "jupiter", "--at", at, "--seconds", "120", "--lat", "95"))) {
            CommandRun run = run(words.toArray(String[]::new));
            assertThat(run.status()).as(words + ": " + run.err()).isEqualTo(2);
            assertThat(run.sentences()).as(words.toString()).hasSize(1);
            assertThat(run.out()).as(words.toString()).isEmpty();
            assertThat(run.err()).doesNotContain("Exception");
        }
        assertThat(run("night", "jupiter", "--date", "2024-12-07", "--site", "40,0", "--after", "nautcal")
                        .err())
                .contains("did you mean nautical");
    }

    @Test
    void refusedTimesAndRangesAreOneSentenceAndStatusOne() {
        for (List<String> words : List.of(
                List.of("sky", "mars", "--at", "2024-12-07T23:59:61Z"),
                List.of("sky", "mars", "--at", "2015-12-31T23:59:60Z"),
                List.of("sky", "mars", "--at", "2024-12-07T12:30:60Z"),
                List.of("sky", "mars", "--at", "2024-12-07T20:00:00"),
                List.of("sky", "mars", "--at", "2024-02-30T20:00:00Z"),
                List.of("sky", "mars", "--at", "yesterday"),
                List.of("sky", "mars", "--at", "2075-01-01T00:00:00Z"),
                List.of("moons", "jupiter", "--at", "2024-12-07T23:59:61Z"),
                List.of("moons", "jupiter", "--at", "1950-01-01T00:00:00Z"),
                List.of("smear", "mars", "--seconds", "60", "--at", "2024-12-07T20:00:00"),
                List.of("smear", "uranus", "--seconds", "60", "--lat", "-89", "--at", "2024-12-07T20:00:00Z"),
                List.of("night", "mars", "--date", "2099-01-01", "--site", "40,0"),
                List.of(
                        "crossings",
                        "jupiter",
                        "--lon",
                        "42",
                        "--system",
                        "2",
                        "--from",
                        "1970-01-01T00:00:00Z",
                        "--to",
                        "2050-01-01T00:00:00Z"),
                List.of(
                        "crossings",
                        "mars",
                        "--lon",
                        "42",
                        "--from",
                        "2059-12-01T00:00:00Z",
                        "--to",
                        "2060-12-01T00:00:00Z"))) {
            CommandRun run = run(words.toArray(String[]::new));
            assertThat(run.status()).as(words + ": " + run.err()).isEqualTo(1);
            assertThat(run.sentences()).as(words.toString()).hasSize(1);
            assertThat(run.out()).as(words.toString()).isEmpty();
            assertThat(run.err()).doesNotContain("Exception");
        }
        assertThat(run("sky", "mars", "--at", "2016-12-31T23:59:60Z").status()).isZero();
    }

    private static byte[] bundled() throws IOException {
        try (InputStream in = new GZIPInputStream(Sky.class.getResourceAsStream("unxp1959p2060.405.gz"))) {
            return in.readAllBytes();
        }
    }

    @Test
    void newerDataAreUsedAndNamedAndBrokenOnesAreTold() throws IOException {
        Path ephemeris = Files.createDirectories(work.resolve("settings/ephemeris"));
        byte[] bytes = bundled();
        ByteBuffer.wrap(bytes).putInt(2840, 440);
        Files.write(ephemeris.resolve("own.440"), bytes);
        String[] sky = {"sky", "mars", "--at", "2024-12-07T20:00:00Z", "--format", "csv"};
        CommandRun newer = run(sky);
        assertThat(newer.err()).isEmpty();
        assertThat(newer.rows()).extracting(r -> r.get("ephemeris")).containsExactly("DE440");
        CommandRun data = run("data", "--format", "csv");
        assertThat(data.status()).isZero();
        assertThat(data.rows().get(0).get("name")).isEqualTo("DE440");
        assertThat(data.rows().get(0).get("file")).endsWith("own.440");
        assertThat(data.rows().get(1).get("note")).contains("expired", "leap-seconds");

        Files.write(ephemeris.resolve("own.440"), Arrays.copyOf(bytes, 100_000));
        CommandRun broken = run(sky);
        assertThat(broken.status()).isZero();
        assertThat(broken.rows()).extracting(r -> r.get("ephemeris")).containsExactly("DE405");
        assertThat(broken.sentences()).singleElement().asString().contains("own.440", "DE405");
        CommandRun listed = run("data", "--format", "csv");
        assertThat(listed.status()).isEqualTo(1);
        assertThat(listed.rows()).extracting(r -> r.get("state")).containsExactly("used", "used", "refused");
    }

    @Test
    void aNewerListOfLeapSecondsAllowsItsLeapSecond() throws IOException {
        Path folder = Files.createDirectories(work.resolve("settings/leap-seconds"));
        StringBuilder list = new StringBuilder("#  File expires on 28 December 2029\n");
        try (InputStream in = Sky.class.getResourceAsStream("utc.csv")) {
            for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).split("\n")) {
                if (line.matches("\\d.*") && line.compareTo("1972") > 0) {
                    LocalDate date = LocalDate.parse(line.substring(0, 10));
                    list.append(String.format(
                            Locale.ROOT,
                            "%d.0 %d %d %d %s%n",
                            date.toEpochDay() + 40587,
                            date.getDayOfMonth(),
                            date.getMonthValue(),
                            date.getYear(),
                            line.split(",")[1]));
                }
            }
        }
        String[] sky = {"sky", "mars", "--at", "2027-12-31T23:59:60Z", "--format", "csv"};
        assertThat(run(sky).status()).isEqualTo(1);
        // an invented leap second
        Files.writeString(folder.resolve("Leap_Second.dat"), list + "61771.0 1 1 2028 38\n");
        CommandRun run = run(sky);
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.rows().get(0).get("leap_seconds")).isEqualTo("Leap_Second.dat, complete to 2029-12-28");
    }
}
