/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EventsCommandTest {
    private static final String FROM = "2027-09-22T00:00:00Z";
    private static final String TO = "2027-09-23T00:00:00Z";

    @TempDir
    Path work;

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    /** Columns and one row of the project's reference table of moon events (JPL orbits; see docs/events.md). */
    @Test
    @Tag("truth")
    void tableBeginsAsTheReferenceTable() {
        CommandRun run = run(
                "events",
                "jupiter",
                "--from",
                FROM,
                "--to",
                TO,
                "--moons",
                "Europa",
                "--kinds",
                "shadow-transit",
                "--format",
                "csv");
        assertThat(run.status()).isZero();
        assertThat(run.out().lines().findFirst().orElseThrow())
                .startsWith(
                        "window_start_utc,window_end_utc,planet,moon,kind,occurs,t1_utc,ingress_centre_utc,t2_utc,mid_utc,"
                                + "t3_utc,egress_centre_utc,t4_utc,penumbra_t1_utc,penumbra_t4_utc,umbra_t2_utc,umbra_t3_utc,"
                                + "seen_ingress_utc,seen_egress_utc,ingress_visible,egress_visible,least_separation_radii,sigma_s,");
        assertThat(run.rows()).hasSize(1);
        Map<String, String> row = run.rows().get(0).toMap();
        assertThat(row)
                .containsEntry("window_start_utc", FROM)
                .containsEntry("planet", "jupiter")
                .containsEntry("moon", "europa")
                .containsEntry("kind", "shadow_transit")
                .containsEntry("occurs", "yes")
                .containsEntry("umbra_t2_utc", "")
                .containsEntry("ingress_visible", "");
        assertThat(row.get("t1_utc")).isBetween("2027-09-22T03:11:24Z", "2027-09-22T03:11:28Z");
        assertThat(row.get("seen_ingress_utc")).isBetween("2027-09-22T03:13:30Z", "2027-09-22T03:13:34Z");
        assertThat(Double.parseDouble(row.get("least_separation_radii"))).isCloseTo(0.2479, within(0.0002));
    }

    @Test
    void missesAreListedWhenAskedFor() {
        String[] words = {
            "events",
            "jupiter",
            "--from",
            "2017-06-26T00:00:00Z",
            "--to",
            "2017-07-13T00:00:00Z",
            "--moons",
            "callisto",
            "--format",
            "csv"
        };
        assertThat(run(words).rows()).isEmpty();
        String[] more = java.util.Arrays.copyOf(words, words.length + 1);
        more[words.length] = "--misses";
        assertThat(run(more).rows())
                .hasSize(4)
                .allMatch(r -> r.get("occurs").equals("no") && r.get("t1_utc").isEmpty());
    }

    @Test
    void textIsOneLinePerEvent() {
        CommandRun run = run("events", "jupiter", "--from", FROM, "--to", TO, "--moons", "io,europa");
        assertThat(run.status()).isZero();
        assertThat(run.out().lines().filter(l -> l.contains("2027-09-22"))).hasSize(6);
        assertThat(run.out()).contains("ends behind the planet", "shadow seen from", "seen to leave");
    }

    @Test
    void aSiteAddsAltitudes() {
        CommandRun run = run(
                "events",
                "jupiter",
                "--from",
                "2027-02-10T00:00:00Z",
                "--to",
                "2027-02-12T00:00:00Z",
                "--site",
                "48.2,16.3,170",
                "--format",
                "csv");
        assertThat(run.status()).isZero();
        List<CSVRecord> rows = run.rows();
        assertThat(rows).isNotEmpty();
        for (CSVRecord row : rows) {
            boolean up = Double.parseDouble(row.get("planet_alt_ingress_centre_deg")) > 5
                    && Double.parseDouble(row.get("sun_alt_ingress_centre_deg")) < -6;
            if (!up) {
                assertThat(row.get("ingress_observable")).isEqualTo("no");
            }
            assertThat(Double.parseDouble(row.get("planet_alt_mid_deg"))).isBetween(-90.0, 90.0);
        }
        assertThat(rows).anyMatch(r -> r.get("ingress_observable").equals("yes"));
    }

    @Test
    void aSiteCanBeOneOfAnArchive() {
        String archive = work.resolve("season").toString();
        assertThat(run(
                                "site",
                                "add",
                                "garden",
                                "--archive",
                                archive,
                                "--lat",
                                "48.2",
                                "--lon",
                                "16.3",
                                "--height",
                                "170")
                        .status())
                .isZero();
        String[] base = {"events", "jupiter", "--from", FROM, "--to", TO, "--format", "csv"};
        assertThat(run(with(base, "--site", "garden", "--archive", archive)).out())
                .isEqualTo(run(with(base, "--site", "48.2,16.3,170")).out());
        assertThat(run(with(base, "--site", "gardn", "--archive", archive)).err())
                .contains("did you mean garden");
        assertThat(run(with(base, "--site", "garden")).status()).isEqualTo(2);
        assertThat(run(with(base, "--site", "48.2,16.3,170")).rows())
                .extracting(r -> r.get("seen_from"))
                .containsOnly("lat 48.2000 lon 16.3000 height 170 m");
        assertThat(run(base).rows()).extracting(r -> r.get("seen_from")).containsOnly("geocentre");
        assertThat(run("events", "jupiter", "--from", FROM, "--to", TO, "--site", "48.2,16.3,170")
                        .out())
                .contains("as seen from latitude 48.2000, longitude 16.3000 (east positive), 170 m");
    }

    private static String[] with(String[] base, String... more) {
        String[] all = java.util.Arrays.copyOf(base, base.length + more.length);
        System.arraycopy(more, 0, all, base.length, more.length);
        return all;
    }

    /** A partial eclipse of Europa by Io, reported for observers in Australia: 2021-05-09 16:34 to 16:38 UT (joe-cali.com). */
    @Test
    @Tag("truth")
    void mutualEventsHaveTheirOwnTable() {
        CommandRun run = run(
                "events",
                "jupiter",
                "--from",
                "2021-05-09T12:00:00Z",
                "--to",
                "2021-05-10T00:00:00Z",
                "--mutual",
                "--format",
                "csv");
        assertThat(run.rows()).hasSize(1);
        CSVRecord row = run.rows().get(0);
        assertThat(row.get("front") + " " + row.get("kind") + " " + row.get("back"))
                .isEqualTo("io eclipse europa");
        assertThat(row.get("t1_utc")).isBetween("2021-05-09T16:33:30Z", "2021-05-09T16:34:59Z");
        assertThat(row.get("t4_utc")).isBetween("2021-05-09T16:38:00Z", "2021-05-09T16:39:30Z");
        assertThat(Double.parseDouble(row.get("depth_back"))).isBetween(0.5, 0.9);
        CommandRun text =
                run("events", "jupiter", "--from", "2021-05-09T12:00:00Z", "--to", "2021-05-10T00:00:00Z", "--mutual");
        assertThat(text.out()).contains("Io eclipses Europa");
    }

    @Test
    void badWordsAreOneSentence() {
        usage("did you mean jupiter", "events", "jupitr", "--from", FROM, "--to", TO);
        usage("did you mean europa", "events", "jupiter", "--from", FROM, "--to", TO, "--moons", "io,eurpa");
        usage("did you mean eclipse", "events", "jupiter", "--from", FROM, "--to", TO, "--kinds", "eclips");
        usage("not known here", "events", "mars", "--from", FROM, "--to", TO);
        usage("--to", "events", "jupiter", "--from", FROM);
        refused("give the earlier time first", "events", "jupiter", "--from", TO, "--to", FROM);
        refused("200 years", "events", "jupiter", "--from", "1700-01-01T00:00:00Z", "--to", TO);
        refused("1959-12-24", "events", "jupiter", "--from", "1950-01-01T00:00:00Z", "--to", "1980-01-01T00:00:00Z");
        refused("time zone", "events", "jupiter", "--from", "2027-09-22T00:00:00", "--to", TO);
        refused("not a time", "events", "jupiter", "--from", "yesterday", "--to", TO);
        usage("not a place", "events", "jupiter", "--from", FROM, "--to", TO, "--site", "95,16,100");
    }

    private void usage(String part, String... words) {
        check(2, part, words);
    }

    private void refused(String part, String... words) {
        check(1, part, words);
    }

    private void check(int status, String part, String... words) {
        CommandRun run = run(words);
        assertThat(run.status()).as("%s", run.err()).isEqualTo(status);
        assertThat(run.sentences()).singleElement().asString().contains(part);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void aSpanWithoutEventsSaysSo() {
        CommandRun run = run("events", "jupiter", "--from", FROM, "--to", FROM);
        assertThat(run.status()).isZero();
        assertThat(run.err()).contains("No event of Jupiter's moons");
    }
}
