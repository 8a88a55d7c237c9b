/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Filing;
import oblate.archive.FilingFacts;
import oblate.archive.FilingOutcome;
import oblate.archive.Site;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.image.CaptureTimes;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.TimeWish;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Timings through the command line. */
class TimingsCommandTest {
    private static final PlanetModel JUPITER = new Jupiter();

    /** Io, its shadow: an independent table's instant and places (JPL DE431 and satellite orbits by way of the Swiss Ephemeris 2.10). */
    private static final Instant SEEN = Instant.parse("2004-12-04T17:16:58Z");

    private static final double[] IO = {-0.11926, 0.25667};
    private static final double[] SHADOW = {0.70503, 0.24117};
    private static final double RADIUS_PX = 100;

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
        refused("time_utc,moon,phenomenon,state,sigma_s\n2027-09-26T09:31:00Z,io,transit,clear,-3\n", "row 1: \"-3\"");
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

    /** Two pictures of a clock that is 60 s fast, with Io and its shadow marked where the table has them, and states said by marks. */
    private Path archive() throws IOException {
        Path folder = work.resolve("season");
        Clock clock = Clock.fixed(Instant.parse("2004-12-08T00:00:00Z"), ZoneOffset.UTC);
        try (Archive archive = Archive.create(folder, List.of(JUPITER), clock);
                PluginHost host = PluginHost.bundledOnly()) {
            archive.keepSite(new Site("Garden", 48.2, 16.3, 170, Optional.empty()));
            PictureReader reader = new PictureReader(host.load(ImageFormat.class), PictureLimits.usual());
            Filing filing = new Filing(archive, reader, new CaptureTimes(), Sky.bundled(), List.of(JUPITER));
            for (int i = 0; i < 4; i++) {
                ArchivedPicture picture = filed(filing, i, SEEN.plusSeconds(60 + (i < 2 ? 0 : -5000 + 400L * i)));
                archive.keepFit(
                        picture.id(),
                        new DiscFit(
                                new Placement(160, 120, RADIUS_PX, 0, false),
                                PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.1),
                                Trust.TRUSTED,
                                List.of(),
                                "forward model 1",
                                "grey",
                                0.2,
                                200,
                                List.of()),
                        "DE405",
                        "Oblate 0.1.0");
            }
        }
        for (String picture : new String[] {"1", "2"}) {
            mark(folder, picture, IO, "Io", "moon", "centre");
            mark(folder, picture, SHADOW, "Io's shadow", "shadow", "centre");
        }
        mark(folder, "3", new double[] {-1.1, 0.2}, "Io", "moon", "clear");
        mark(folder, "4", new double[] {-0.9, 0.2}, "Io", "moon", "transit: on disc");
        return folder;
    }

    private ArchivedPicture filed(Filing filing, int i, Instant time) throws IOException {
        BufferedImage image = new BufferedImage(320, 240, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setSample(5, 5, 0, 40 + i);
        Path file = work.resolve("jupiter-" + i + ".png");
        ImageIO.write(image, "png", file.toFile());
        FilingFacts facts = new FilingFacts(
                Optional.of("jupiter"),
                Optional.of("Garden"),
                Optional.of("A. Observer"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new TimeWish(
                        Optional.of(time.toString()),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()),
                false);
        return ((FilingOutcome.Filed)
                        filing.file(List.of(file), facts, Progress.SILENT).get(0))
                .picture();
    }

    private void mark(Path archive, String picture, double[] at, String feature, String kind, String what) {
        CommandRun run = run(
                "marks",
                "add",
                picture,
                "--archive",
                archive.toString(),
                "--at",
                String.format(Locale.ROOT, "%.3f,%.3f", 160 + RADIUS_PX * at[0], 120 - RADIUS_PX * at[1]),
                "--feature",
                feature,
                "--kind",
                kind,
                "--what",
                what);
        assertThat(run.status()).as(run.err()).isZero();
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
