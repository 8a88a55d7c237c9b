/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import oblate.archive.FilingOutcome.AlreadyThere;
import oblate.archive.FilingOutcome.Filed;
import oblate.archive.FilingOutcome.Refused;
import oblate.base.Progress;
import oblate.image.TimeWish;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilingTest {
    private static final FilingFacts JUPITER = FilingFacts.forPlanet("jupiter");

    @TempDir
    Path work;

    private Path in;
    private Archive archive;

    @BeforeEach
    void open() {
        in = work.resolve("in");
        archive = Archive.create(work.resolve("archive"), Desk.PLANETS, Desk.CLOCK);
    }

    @AfterEach
    void close() {
        archive.close();
    }

    @Test
    void thePictureStandsUnalteredUnderItsNight() throws IOException {
        Path file = Desk.picture(in, "late-20310325T013000Z.png", 1);
        byte[] before = Files.readAllBytes(file);
        Filed filed = (Filed) Desk.file(archive, JUPITER, file).get(0);
        assertThat(filed.picture().relativePath()).isEqualTo("pictures/2031/2031-03-24/late-20310325T013000Z.png");
        assertThat(Files.readAllBytes(archive.fileOf(filed.picture()))).isEqualTo(before);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void theNightIsThatOfTheSite() throws IOException {
        archive.keepSite(new Site("far east", -31, 148, 300, Optional.empty()));
        FilingFacts there = new FilingFacts(
                JUPITER.planetId(),
                Optional.of("far east"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TimeWish.none(),
                false);
        // 15:00 UT is after midnight at 148 degrees east: the evening of the same UT date; 01:00 UT is before noon of
        // the day after the evening before.
        Filed one = (Filed) Desk.file(archive, there, Desk.picture(in, "20310324T150000Z.png", 1))
                .get(0);
        Filed two = (Filed) Desk.file(archive, there, Desk.picture(in, "20310324T010000Z.png", 2))
                .get(0);
        assertThat(one.picture().night().orElseThrow()).hasToString("2031-03-24");
        assertThat(two.picture().night().orElseThrow()).hasToString("2031-03-23");
    }

    @Test
    void theSameBytesAreOnePictureUnderWhateverName() throws IOException {
        Path file = Desk.picture(in, "a-20310324T210530Z.png", 1);
        Path copy = Files.copy(file, in.resolve("b-20310324T220000Z.png"));
        Filed first = (Filed) Desk.file(archive, JUPITER, file).get(0);
        AlreadyThere again = (AlreadyThere) Desk.file(archive, JUPITER, copy).get(0);
        assertThat(again.picture().id()).isEqualTo(first.picture().id());
        assertThat(archive.pictures(PictureSearch.all())).hasSize(1);
    }

    @Test
    void otherBytesUnderATakenNameGetANumberedOne() throws IOException {
        Desk.file(archive, JUPITER, Desk.picture(in.resolve("one"), "20310324T210530Z.png", 1));
        Filed second = (Filed) Desk.file(archive, JUPITER, Desk.picture(in.resolve("two"), "20310324T210530Z.png", 2))
                .get(0);
        assertThat(second.picture().name()).isEqualTo("20310324T210530Z-2.png");
    }

    @Test
    void withoutATimeItIsRefusedOrFiledAsUndatedWhenAsked() throws IOException {
        Path file = Desk.picture(in, "jupiter.png", 1);
        Refused refused = (Refused) Desk.file(archive, JUPITER, file).get(0);
        assertThat(refused.sentence()).contains("jupiter.png", "20310324T210530Z");
        assertThat(archive.pictures(PictureSearch.all())).isEmpty();
        FilingFacts undated = new FilingFacts(
                JUPITER.planetId(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TimeWish.none(),
                true);
        Filed filed = (Filed) Desk.file(archive, undated, file).get(0);
        assertThat(filed.picture().relativePath()).startsWith("pictures/undated/");
        assertThat(filed.picture().time()).isEmpty();
    }

    @Test
    void aTimeOutsideTheEphemerisIsRefusedWithTheSpan() throws IOException {
        Refused refused = (Refused) Desk.file(archive, JUPITER, Desk.picture(in, "18310324T210530Z.png", 1))
                .get(0);
        assertThat(refused.sentence()).contains("18310324T210530Z.png", "1959", "2060");
    }

    @Test
    void badFilesCostOnlyThemselvesAndLeaveNothing() throws IOException {
        Path good = Desk.picture(in, "good-20310324T210530Z.png", 1);
        Files.write(in.resolve("empty-20310324T210531Z.png"), new byte[0]);
        Files.writeString(in.resolve("junk-20310324T210532Z.png"), "no picture");
        byte[] whole = Files.readAllBytes(good);
        Files.write(in.resolve("cut-20310324T210533Z.png"), java.util.Arrays.copyOf(whole, whole.length / 2));
        List<FilingOutcome> outcomes = Desk.file(archive, JUPITER, in);
        assertThat(outcomes).hasSize(4);
        assertThat(outcomes.stream().filter(Refused.class::isInstance)).hasSize(3);
        assertThat(filesIn("pictures")).hasSize(1);
        assertThat(filesIn("incoming").stream().filter(f -> !f.endsWith("lock")))
                .isEmpty();
        assertThat(archive.check(false, Progress.SILENT).faults()).isEmpty();
    }

    private List<Path> filesIn(String folder) throws IOException {
        try (Stream<Path> files = Files.walk(archive.folder().resolve(folder))) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    @Test
    void thePlanetIsFoundInTheNameWhenNobodySaysIt() throws IOException {
        FilingFacts nothing = new FilingFacts(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TimeWish.none(),
                false);
        Filed named = (Filed) Desk.file(archive, nothing, Desk.picture(in, "saturn-20310324T210530Z.png", 1))
                .get(0);
        Filed unknown = (Filed) Desk.file(archive, nothing, Desk.picture(in, "thing-20310324T210530Z.png", 2))
                .get(0);
        assertThat(named.picture().planetId()).contains("saturn");
        assertThat(unknown.picture().planetId()).isEmpty();
        assertThat(unknown.remarks()).anyMatch(r -> r.contains("planet"));
    }

    @Test
    void hostileNamesStayInsideTheArchive() throws IOException {
        for (String name : List.of(
                "..20310324T210530Z.png",
                "con 20310324T210531Z.png",
                "a\u202eb20310324T210532Z.png",
                "x".repeat(180) + "20310324T210533Z.png")) {
            Path file = Desk.picture(in, name, name.hashCode());
            Filed filed = (Filed) Desk.file(archive, JUPITER, file).get(0);
            assertThat(archive.fileOf(filed.picture()).normalize())
                    .startsWith(archive.folder().resolve("pictures"));
            assertThat(filed.picture().name().getBytes(StandardCharsets.UTF_8).length)
                    .isLessThanOrEqualTo(200);
        }
        assertThat(archive.check(false, Progress.SILENT).faults()).isEmpty();
    }

    @Test
    void cancellingStopsBetweenFiles() throws IOException {
        for (int i = 0; i < 5; i++) {
            Desk.picture(in, "20310324T21050" + i + "Z.png", i);
        }
        Progress afterTwo = new Progress() {
            private long done;

            @Override
            public void report(long now, long total, String message) {
                done = now;
            }

            @Override
            public boolean isCancelled() {
                return done >= 2;
            }
        };
        Desk.filing(archive).file(List.of(in), JUPITER, afterTwo);
        int filed = archive.pictures(PictureSearch.all()).size();
        assertThat(filed).isBetween(1, 4);
        assertThat(archive.check(false, Progress.SILENT).faults()).isEmpty();
    }
}
