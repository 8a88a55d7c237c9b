/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** States seen, kept in an archive and read by timings, through the command line. */
class StatesCommandTest {
    /** About Io's ingress of 2027-09-26, whose touches an independent table has at 09:32:59 and 09:36:35. */
    private static final String STATES = """
            time_utc,moon,phenomenon,state,sigma_s,observer,site
            2027-09-26T09:30:59Z,Io,transit,clear,2,B. Looker,garden
            2027-09-26T09:34:59Z,Io,transit,on limb,2,B. Looker,Garden
            2027-09-26T09:40:59Z,Io,transit,on disc,2,B. Looker,Garden
            """;

    @TempDir
    Path work;

    private Path archive;

    @BeforeEach
    void makeArchive() throws IOException {
        archive = new MoonArchive(work).made();
    }

    private CommandRun run(String command, String... more) {
        List<String> words = new ArrayList<>(List.of(command.split(" ")));
        words.addAll(List.of("--archive", archive.toString()));
        words.addAll(List.of(more));
        return CommandRun.of(work.resolve("settings"), "", words.toArray(String[]::new));
    }

    private Path file(String csv) throws IOException {
        return Files.writeString(work.resolve("seen.csv"), csv);
    }

    private List<CSVRecord> timings(String from) {
        return run("timings", "--from", from, "--format", "csv").rows();
    }

    @Test
    void aFileIsKeptOnceAndTimingsReadItForItsSite() throws IOException {
        Path csv = file(STATES);
        CommandRun kept = run("states import", csv.toString());
        assertThat(kept.status()).as(kept.err()).isZero();
        assertThat(kept.err()).contains("3 of 3 states said something new and are kept.");
        assertThat(run("states import", csv.toString()).err()).contains("0 of 3 states said something new");

        List<CSVRecord> rows = timings("2027-01-01");
        assertThat(rows).extracting(r -> r.get("point")).containsExactly("t1", "t2", "mid");
        assertThat(rows).allSatisfy(r -> {
            assertThat(r.get("observer")).isEqualTo("B. Looker");
            assertThat(r.get("seen_from")).isEqualTo("Garden");
            assertThat(r.get("sigma_site_s")).isEqualTo("0.0");
        });
        assertThat(Double.parseDouble(rows.get(0).get("o_minus_p_s"))).isCloseTo(0, within(2.0));

        // what is listed can be read again
        Path again = work.resolve("again.csv");
        assertThat(run("states", "--format", "csv", "--out", again.toString()).status())
                .isZero();
        assertThat(Files.readString(again)).contains("2027-09-26T09:34:59Z,2,B. Looker,Garden,io,transit,on_limb");
        assertThat(run("states import", again.toString()).err()).contains("0 of 3 states said something new");
    }

    @Test
    void withoutASiteTheRowSaysSoAndTheErrorHasIt() throws IOException {
        String csv = STATES.replace(",observer,site", "").replaceAll(",B. Looker,[gG]arden", "");
        run("states import", file(csv).toString());
        assertThat(timings("2027-01-01")).allSatisfy(r -> {
            assertThat(r.get("seen_from")).isEqualTo("geocentre");
            assertThat(r.get("sigma_site_s")).isEqualTo("0.1");
        });
    }

    @Test
    void aStateOfAPictureIsSaidCorrectedAndTakenBack() {
        String[] transit = {"--moon", "Io", "--phenomenon", "transit", "--by", "tester", "--state"};
        assertThat(add("3", transit, "on_limb").status()).isZero();
        assertThat(add("3", transit, "on_limb").err()).contains("said already");
        assertThat(add("3", transit, "on_disc").status()).isZero();
        List<CSVRecord> states = run("states", "--format", "csv").rows();
        assertThat(states).hasSize(1);
        assertThat(states.get(0).get("state")).isEqualTo("on_disc");
        assertThat(states.get(0).get("seen_by")).isEqualTo("tester");
        assertThat(states.get(0).get("site")).isEqualTo("Garden");
        assertThat(run("states withdraw", "3", "--moon", "io").err()).contains("It is taken back.");
        assertThat(run("states withdraw", "3", "--moon", "io").status()).isEqualTo(1);
        assertThat(run("states").err()).contains("No state of a moon of Jupiter is kept.");
        assertThat(run("states", "--history", "--format", "csv").rows())
                .extracting(r -> r.get("state"))
                .containsExactly("on_limb", "on_disc", "open");
        assertThat(run("history").out()).contains("io, transit: taken back");
    }

    private CommandRun add(String picture, String[] what, String state) {
        List<String> words = new ArrayList<>(List.of(picture));
        words.addAll(List.of(what));
        words.add(state);
        return run("states add", words.toArray(String[]::new));
    }

    @Test
    void aLookIsTakenBackByItsTime() {
        String[] look = {"--time", "2027-09-26T09:30:59Z", "--moon", "io"};
        CommandRun kept = run(
                "states add",
                "--time",
                look[1],
                "--moon",
                "io",
                "--phenomenon",
                "transit",
                "--state",
                "clear",
                "--sigma",
                "3");
        assertThat(kept.status()).as(kept.err()).isZero();
        assertThat(run("states", "--format", "csv").rows().get(0).get("sigma_s"))
                .isEqualTo("3");
        assertThat(run("states withdraw", look).status()).isZero();
        assertThat(run("states", "--format", "csv").rows()).isEmpty();
    }

    @Test
    void wrongRowsAreNamedAndNothingIsKept() throws IOException {
        refused(STATES.replace(",Garden\n2027-09-26T09:40", ",Gorden\n2027-09-26T09:40"), "row 2: site: \"Gorden\"");
        refused(STATES.replace("on disc,2,", "gone,2,"), "row 3: \"gone\" is no state of a transit");
        refused(STATES.replace("on disc,2,", "on disc,x,"), "row 3: sigma_s: \"x\"");
        refused("picture,moon,phenomenon,state\n99,io,transit,clear\n", "99");
        refused(
                "time_utc,moon,phenomenon,state,site\n2027-09-26T09:30:59Z,io,transit,clear,\"48.2,16.3,170\"\n",
                "row 1: a look is kept with the name of a site");
        assertThat(run("states", "--format", "csv").rows()).isEmpty();
        assertThat(run("states add", "3", "--moon", "io", "--phenomenon", "transit")
                        .status())
                .isEqualTo(2);
        assertThat(run("states add", "--moon", "io", "--phenomenon", "transit", "--state", "clear")
                        .err())
                .contains("give either PICTURE or --time TIME");
    }

    private void refused(String csv, String words) throws IOException {
        CommandRun run = run("states import", file(csv).toString());
        assertThat(run.status()).isNotZero();
        assertThat(run.err()).contains(words);
    }
}
