/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Timings through the command line. */
class TimingsCommandTest {
    /** Of the same source: Io's shadow comes onto the seen side at 09:09:17; its transit 09:32:59, 09:36:35. */
    private static final String STATES = """
            time_utc,moon,phenomenon,state,sigma_s
            2027-09-26T09:30:59Z,Io,transit,clear,2
            2027-09-26T09:34:59Z,Io,transit,on limb,2
            2027-09-26T09:40:59Z,Io,transit,on disc,2
            2027-09-26T09:06:00Z,Io,shadow transit,not seen,2
            2027-09-26T09:12:00Z,Io,shadow transit,seen,2
            """;

    @TempDir
    Path work;

    private Path archive() throws IOException {
        return new MoonArchive(work).made();
    }

    private void mark(Path archive, String picture, double[] at, String feature, String kind, String what) {
        new MoonArchive(work).mark(archive, picture, at, feature, kind, what);
    }

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    private CommandRun ofStates(String csv, String... more) throws IOException {
        Path file = work.resolve("seen.csv");
        Files.writeString(file, csv);
        List<String> words =
                new ArrayList<>(List.of("timings", "--planet", "jupiter", "--observations", file.toString()));
        words.addAll(List.of(more));
        return run(words.toArray(String[]::new));
    }

    private static CSVRecord row(List<CSVRecord> rows, String phenomenon, String point) {
        return rows.stream()
                .filter(r ->
                        r.get("phenomenon").equals(phenomenon) && r.get("point").equals(point))
                .findFirst()
                .orElseThrow();
    }

    private static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }

    @Test
    void aFileOfStatesGivesContacts() throws IOException {
        CommandRun run = ofStates(STATES, "--format", "csv");
        assertThat(run.status()).isZero();
        assertThat(run.err()).isEmpty();
        CSVRecord first = row(run.rows(), "transit", "t1");
        assertThat(first.get("observed_utc")).isEqualTo("2027-09-26T09:32:59Z");
        assertThat(number(first, "o_minus_p_s")).isCloseTo(0, within(2.0));
        assertThat(number(first, "sigma_own_s")).isCloseTo(240 / Math.sqrt(12), within(0.1));
        assertThat(number(first, "sigma_clock_s")).isEqualTo(2);
        assertThat(first.get("not_before_utc")).isEqualTo("2027-09-26T09:30:59Z");
        assertThat(row(run.rows(), "transit", "t2").get("method")).isEqualTo("bracket");
        assertThat(row(run.rows(), "transit", "mid").get("method")).isEqualTo("combined");
        assertThat(number(row(run.rows(), "shadow_transit", "ingress_centre"), "o_minus_p_s"))
                .isCloseTo(-17, within(2.0));
    }

    /** Foretold for a place on the Earth's western edge as Jupiter has it: Io is seen there up to 0.3 s late. */
    @Test
    void aLookFromAPlaceIsForetoldForIt() throws IOException {
        String head = "time_utc,moon,phenomenon,state,sigma_s,site\n";
        String rows = "2027-09-26T09:30:59Z,io,transit,clear,2,SITE\n2027-09-26T09:34:59Z,io,transit,on_limb,2,SITE\n";
        CSVRecord centre =
                row(ofStates(head + rows.replace("SITE", ""), "--format", "csv").rows(), "transit", "t1");
        assertThat(centre.get("seen_from")).isEqualTo("geocentre");
        assertThat(number(centre, "sigma_site_s")).isEqualTo(0.1);
        CSVRecord place = row(
                ofStates(head + rows.replace("SITE", "\"10,150,0\""), "--format", "csv")
                        .rows(),
                "transit",
                "t1");
        assertThat(place.get("seen_from")).isEqualTo("10,150,0");
        assertThat(number(place, "sigma_site_s")).isZero();
        assertThat(Math.abs(number(place, "o_minus_p_s") - number(centre, "o_minus_p_s")))
                .isBetween(0.05, 0.35);
        refused(head + rows.replace("SITE", "nowhere"), "row 1: site: \"nowhere\" is neither LAT,LON,HEIGHT");
    }

    @Test
    void oneSideOnlyIsSaidAsALimit() throws IOException {
        CommandRun run =
                ofStates("time_utc,moon,phenomenon,state,sigma_s\n2027-09-26T09:45:00Z,io,transit,on_disc,1\n");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("limit").contains("before 09:45:00");
        assertThat(run.out()).doesNotContain("±");
    }

    @Test
    void contradictionsAreToldInTheTable() throws IOException {
        CommandRun run = ofStates(
                "time_utc,moon,phenomenon,state,sigma_s\n2027-09-26T09:31:00Z,io,transit,on_disc,1\n"
                        + "2027-09-26T09:33:00Z,io,transit,clear,1\n",
                "--format",
                "csv");
        assertThat(run.rows()).hasSize(1);
        assertThat(run.rows().get(0).get("doubts"))
                .startsWith("contradiction: on disc at 09:31:00")
                .contains("but clear at 09:33:00");
        assertThat(run.rows().get(0).get("o_minus_p_s")).isEmpty();
    }

    @Test
    void badRowsAreNamedInOneSentence() throws IOException {
        String head = "time_utc,moon,phenomenon,state\n2027-09-26T09:31:00Z,io,transit,clear\n";
        refused(head + "2027-09-26T09:31:00Z,moon,transit,clear\n", "row 2: \"moon\" is no moon of Jupiter");
        refused(head + "2027-09-26T09:31:00Z,io,passage,clear\n", "row 2: \"passage\" is no phenomenon");
        refused(head + "2027-09-26T09:31:00Z,io,transit,gone\n", "row 2: \"gone\" is no state of a transit");
        refused(head + "yesterday,io,transit,clear\n", "row 2: time_utc: ");
        refused(head + ",io,transit,clear\n", "row 2: has neither a picture nor a time_utc");
        refused(head + "2027-09-26T09:31:00Z,io,,clear\n", "row 2: has nothing in column phenomenon");
        refused(
                "time_utc,moon,phenomenon,state,sigma_s\n2027-09-26T09:31:00Z,io,transit,clear,-3\n",
                "row 1: sigma_s: \"-3\"");
        refused(head + "9999-01-01T00:00:00Z,io,transit,clear\n", "row 2: time_utc: ");
    }

    private void refused(String csv, String words) throws IOException {
        CommandRun run = ofStates(csv);
        assertThat(run.status()).isNotZero();
        assertThat(run.out()).isEmpty();
        assertThat(run.sentences()).hasSize(1);
        assertThat(run.sentences().get(0)).contains("seen.csv, " + words);
    }

    @Test
    void timesWithoutAnErrorAreGivenOneAndThatIsSaid() throws IOException {
        CommandRun run = ofStates(STATES.replace(",sigma_s", "").replace(",2\n", "\n"), "--format", "csv");
        assertThat(run.sentences()).hasSize(1);
        assertThat(run.sentences().get(0)).contains("5 of 5 rows state no sigma_s; 1 s was taken");
        assertThat(number(row(run.rows(), "transit", "t1"), "sigma_clock_s")).isEqualTo(1);
    }

    @Test
    void nothingToDoIsSaid() {
        assertThat(run("timings").sentences())
                .anySatisfy(s -> assertThat(s).contains("give --archive DIR or --observations FILE"));
    }

    @Test
    void marksOfAnArchiveTellTheClock() throws IOException {
        Path archive = archive();
        CommandRun run = run("timings", "--archive", archive.toString(), "--format", "csv");
        assertThat(run.status()).as(run.err()).isZero();
        CSVRecord mid = row(run.rows(), "shadow_transit", "mid");
        assertThat(mid.get("method")).isEqualTo("places");
        assertThat(mid.get("pictures")).isEqualTo("2");
        assertThat(mid.get("observer")).isEqualTo("A. Observer");
        assertThat(number(mid, "o_minus_p_s")).isCloseTo(60, within(4.0));
        assertThat(number(mid, "cross_path_arcsec")).isCloseTo(0, within(0.02));
        CSVRecord egress = row(run.rows(), "shadow_transit", "egress_centre");
        assertThat(egress.get("o_minus_p_s")).isEqualTo(mid.get("o_minus_p_s"));
        assertThat(run.rows())
                .anySatisfy(r -> assertThat(r.get("point") + r.get("method")).isEqualTo("ingress_centrebracket"));

        CommandRun nights = run("timings", "--archive", archive.toString(), "--by", "night", "--format", "csv");
        assertThat(nights.rows()).hasSize(1);
        assertThat(nights.rows().get(0).get("verdict")).isIn("differs", "undecided");
        assertThat(number(nights.rows().get(0), "clock_fast_s"))
                .isCloseTo(60, within(3 * number(nights.rows().get(0), "sigma_s")));
        assertThat(run("timings", "--archive", archive.toString()).err()).contains("Night 2004-12-04");

        CommandRun single = run("timings", "--archive", archive.toString(), "--by", "picture", "--format", "json");
        assertThat(single.status()).isZero();
        assertThat(single.out()).contains("jupiter-").contains("cross_path_arcsec");

        Path chart = work.resolve("timings.png");
        CommandRun drawn =
                run("chart", "--archive", archive.toString(), "--kind", "timings", "--out", chart.toString());
        assertThat(drawn.status()).as(drawn.err()).isZero();
        assertThat(ImageIO.read(chart.toFile()).getWidth()).isEqualTo(1000);
    }

    /** At the very edge a shadow has no longitude worth keeping, and is where its time is wanted most. */
    @Test
    void aShadowAtTheEdgeIsMarkedWithoutALongitudeAndASpotThereIsRefused() throws IOException {
        Path archive = archive();
        mark(archive, "2", new double[] {0.99, 0.1}, "Io's shadow", "shadow", "centre");
        CommandRun marks = run("marks", "--archive", archive.toString(), "--feature", "Io's shadow", "--format", "csv");
        CSVRecord last = marks.rows().stream()
                .filter(r -> r.get("x_px").equals("259.00"))
                .findFirst()
                .orElseThrow();
        assertThat(last.get("lon_sys3_deg")).isEmpty();
        assertThat(last.get("x_west_radii")).isEqualTo("0.990");
        CommandRun spot = run(
                "marks",
                "add",
                "2",
                "--archive",
                archive.toString(),
                "--at",
                "259,110",
                "--feature",
                "spot",
                "--kind",
                "spot");
        assertThat(spot.status()).isEqualTo(1);
        assertThat(spot.err()).contains("too near its edge");
    }

    @Test
    void otherMoonsAndOtherNightsAreLeftOut() throws IOException {
        Path archive = archive();
        CommandRun other = run("timings", "--archive", archive.toString(), "--moon", "europa");
        assertThat(other.out()).isEmpty();
        assertThat(other.err()).contains("There is nothing to time");
        CommandRun later = run("timings", "--archive", archive.toString(), "--from", "2005-01-01");
        assertThat(later.err()).contains("There is nothing to time");
        CommandRun wrong = run("timings", "--archive", archive.toString(), "--moon", "iO,yo");
        assertThat(wrong.status()).isEqualTo(2);
        assertThat(wrong.err()).contains("moon \"yo\" of Jupiter is not known");
    }
}
