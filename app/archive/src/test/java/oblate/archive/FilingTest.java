/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
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

    @Test
    void aNoteBesideGivesTheTimeAndIsNotFiled() throws IOException {
        Path file = Desk.picture(in, "jupiter.png", 1);
        Files.writeString(in.resolve("jupiter.txt"), "taken 2031-03-24T21:05:30Z");
        Files.writeString(in.resolve(".hidden-20310324T210530Z.png"), "not looked at");
        List<FilingOutcome> outcomes = Desk.file(archive, JUPITER, in);
        assertThat(outcomes).extracting(FilingOutcome::file).containsExactly(file);
        assertThat(((Filed) outcomes.get(0)).picture().time().orElseThrow().midUtc())
                .isEqualTo(Instant.parse("2031-03-24T21:05:30Z"));
        assertThat(filesIn("pictures")).hasSize(1);
    }

    @Test
    void quarrelsBetweenTimesAreKeptAndTold() throws IOException {
        Path file = Desk.picture(in, "20310324T210530Z.png", 1);
        Files.writeString(in.resolve("20310324T210530Z.txt"), "2031-03-24T22:05:30Z");
        Filed filed = (Filed) Desk.file(archive, JUPITER, file).get(0);
        assertThat(filed.picture().timeConflicts()).hasSize(1);
        assertThat(filed.remarks()).containsAll(filed.picture().timeConflicts());
        assertThat(archive.timeClaims(filed.picture().id())).hasSize(2);
    }

    @Test
    void aTimeInTheFutureIsToldNotRefused() throws IOException {
        Filed filed = (Filed) Desk.file(archive, JUPITER, Desk.picture(in, "20310401T210530Z.png", 1))
                .get(0);
        assertThat(filed.remarks()).anyMatch(r -> r.contains("future"));
    }

    @Test
    void theFoldersNameSaysThePlanet() throws IOException {
        Path file = Desk.picture(in.resolve("Mars"), "20310324T210530Z.png", 1);
        Filed filed = (Filed) Desk.file(archive, Entries.NOTHING_SAID, file).get(0);
        assertThat(filed.picture().planetId()).contains("mars");
        assertThat(filed.picture().centralMeridians()).containsOnlyKeys("iau");
    }

    @Test
    void namesOfPeopleAndGearAreCleanedAndKept() throws IOException {
        FilingFacts facts = Entries.facts("  Nobody\tInparticular ", "x".repeat(300), " ", "a note");
        Filed filed = (Filed) Desk.file(archive, facts, Desk.picture(in, "jupiter-20310324T210530Z.png", 1))
                .get(0);
        assertThat(filed.picture().observer()).contains("Nobody Inparticular");
        assertThat(filed.picture().kit()).contains("x".repeat(200));
        assertThat(filed.picture().filter()).isEmpty();
        assertThat(filed.picture().notes()).contains("a note");
    }

    @Test
    void aLinkToAFolderThatWasNamedIsFollowedOthersAreNot() throws IOException {
        Path file = Desk.picture(in.resolve("real"), "20310324T210530Z.png", 1);
        Path link = Files.createSymbolicLink(work.resolve("link"), in.resolve("real"));
        assertThat(Desk.file(archive, JUPITER, link))
                .extracting(o -> o.file().toRealPath())
                .containsExactly(file.toRealPath());
        Files.createSymbolicLink(Files.createDirectory(work.resolve("other")).resolve("loop"), work.resolve("other"));
        assertThat(Desk.file(archive, JUPITER, work.resolve("other"))).isEmpty();
    }

    @Test
    void theArchiveIsNotFiledIntoItself() throws IOException {
        Path file = Desk.picture(work, "20310324T210530Z.png", 1);
        assertThat(Desk.file(archive, JUPITER, work))
                .extracting(FilingOutcome::file)
                .containsExactly(file);
        assertThat(Desk.file(archive, JUPITER, work)).hasOnlyElementsOfType(AlreadyThere.class);
    }

    @Test
    void whatCannotBeReadIsNamed() throws IOException {
        Path missing = in.resolve("missing.png");
        Files.createDirectories(in);
        Path broken = Files.createSymbolicLink(in.resolve("broken.png"), missing);
        List<FilingOutcome> outcomes = Desk.file(archive, JUPITER, missing, broken);
        assertThat(outcomes).hasSize(2).hasOnlyElementsOfType(Refused.class);
        assertThat(outcomes)
                .allMatch(o -> ((Refused) o).sentence().contains(o.file().toString()));
    }

    @Test
    void aFileLostFromTheArchiveComesBackWhenFiledAgain() throws IOException {
        Path file = Desk.picture(in, "20310324T210530Z.png", 1);
        Filed filed = (Filed) Desk.file(archive, JUPITER, file).get(0);
        Path kept = archive.fileOf(filed.picture());
        Files.delete(kept);
        assertThat(Desk.file(archive, JUPITER, file)).hasOnlyElementsOfType(AlreadyThere.class);
        assertThat(kept).hasSameBinaryContentAs(file);
        Files.write(kept, new byte[3]);
        Desk.file(archive, JUPITER, file);
        assertThat(kept).hasSameBinaryContentAs(file);
        assertThat(archive.folder().resolve("strays").resolve(filed.picture().relativePath()))
                .hasSize(3);
    }

    @Test
    void aPlacedFileWithoutARowIsTakenOver() throws IOException {
        Path file = Desk.picture(in, "20310324T210530Z.png", 1);
        Path placed = archive.folder().resolve("pictures/2031/2031-03-24/20310324T210530Z.png");
        Files.createDirectories(placed.getParent());
        Files.copy(file, placed);
        Files.write(
                Files.createDirectories(archive.folder().resolve("incoming")).resolve("old.part"), new byte[5]);
        Filed filed = (Filed) Desk.file(archive, JUPITER, file).get(0);
        assertThat(archive.fileOf(filed.picture())).isEqualTo(placed);
        assertThat(filesIn("pictures")).hasSize(1);
        assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
    }

    @Test
    void namesThatDifferInCapitalsOnlyDoNotMeet() throws IOException {
        Desk.file(archive, JUPITER, Desk.picture(in.resolve("a"), "Run-20310324T210530Z.png", 1));
        Filed second = (Filed) Desk.file(archive, JUPITER, Desk.picture(in.resolve("b"), "run-20310324T210530Z.PNG", 2))
                .get(0);
        assertThat(second.picture().name()).isEqualTo("run-20310324T210530Z-2.PNG");
    }

    @Test
    void anUnknownSiteOrPlanetIsRefusedBeforeAnyFile() throws IOException {
        Path file = Desk.picture(in, "20310324T210530Z.png", 1);
        FilingFacts nowhere = new FilingFacts(
                JUPITER.planetId(),
                Optional.of("nowhere"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                TimeWish.none(),
                false);
        ArchiveContract.assertProblem(ArchiveProblem.NO_SUCH_SITE, () -> Desk.file(archive, nowhere, file));
        ArchiveContract.assertProblem(
                ArchiveProblem.NO_SUCH_PLANET, () -> Desk.file(archive, FilingFacts.forPlanet("vulcan"), file));
        assertThat(archive.pictures(PictureSearch.all())).isEmpty();
    }

    @Test
    void aReadOnlyArchiveCanBeReadOnly() throws IOException {
        Path file = Desk.picture(in, "20310324T210530Z.png", 1);
        Desk.file(archive, JUPITER, file);
        archive.close();
        byte[] before = Files.readAllBytes(archive.folder().resolve("catalog.db"));
        try (Archive readOnly =
                ArchiveOpening.open(archive.folder(), Desk.PLANETS, Desk.CLOCK, true, CatalogOpening.PATIENCE)) {
            assertThat(readOnly.isReadOnly()).isTrue();
            assertThat(readOnly.pictures(PictureSearch.all())).hasSize(1);
            assertThat(readOnly.check(false, Progress.SILENT).isClean()).isTrue();
            ArchiveContract.assertProblem(ArchiveProblem.CANNOT_WRITE, () -> Desk.file(readOnly, JUPITER, file));
            ArchiveContract.assertProblem(ArchiveProblem.CANNOT_WRITE, () -> readOnly.check(true, Progress.SILENT));
            ArchiveContract.assertProblem(ArchiveProblem.CANNOT_WRITE, () -> readOnly.keepKit(Kit.named("k")));
        }
        assertThat(archive.folder().resolve("catalog.db")).hasBinaryContent(before);
        assertThat(archive.folder().resolve("catalog.db-wal")).doesNotExist();
    }

    @Test
    void anArchiveThatWasMovedAwayIsNotBegunAnewInItsPlaceAndGoesOnWhenItIsBack() throws IOException {
        Path first = Desk.picture(in, "20310324T210530Z.png", 1);
        Path second = Desk.picture(in, "20310324T210830Z.png", 2);
        Desk.file(archive, JUPITER, first);
        Path away = archive.folder().resolveSibling("away");
        Files.move(archive.folder(), away);
        ArchiveContract.assertProblem(ArchiveProblem.ARCHIVE_GONE, () -> Desk.file(archive, JUPITER, second));
        ArchiveContract.assertProblem(ArchiveProblem.ARCHIVE_GONE, () -> archive.keepKit(Kit.named("k")));
        ArchiveContract.assertProblem(ArchiveProblem.ARCHIVE_GONE, () -> archive.pictures(PictureSearch.all()));
        assertThat(archive.folder()).doesNotExist();
        Files.move(away, archive.folder());
        assertThat(Desk.file(archive, JUPITER, second)).hasOnlyElementsOfType(Filed.class);
        assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
        assertThat(archive.pictures(PictureSearch.all())).hasSize(2);
    }

    @Test
    void twoFilingsDoNotMeet() throws IOException {
        Path file = Desk.picture(in, "20310324T210530Z.png", 1);
        FilingLock held = FilingLock.take(archive.layout());
        try (held) {
            ArchiveContract.assertProblem(ArchiveProblem.FILING_BUSY, () -> FilingLock.take(archive.layout(), 2));
        }
        assertThat(Desk.file(archive, JUPITER, file)).hasOnlyElementsOfType(Filed.class);
    }
}
