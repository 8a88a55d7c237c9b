/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import oblate.base.ProblemException;
import oblate.base.ProblemKind;
import oblate.base.Progress;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckAndBackupTest {
    @TempDir
    Path work;

    private Path folder;

    @BeforeEach
    void fill() throws IOException {
        folder = work.resolve("archive");
        try (Archive archive = Archive.create(folder, Desk.PLANETS, Desk.CLOCK)) {
            for (int i = 0; i < 3; i++) {
                Desk.filed(archive, work.resolve("in"), "2031032" + i + "T210530Z", i);
            }
        }
    }

    private Archive open() {
        return Archive.open(folder, Desk.PLANETS, Desk.CLOCK);
    }

    private Path file(int i) {
        return folder.resolve("pictures/2031/2031-03-2" + i + "/p-2031032" + i + "T210530Z.png");
    }

    private CheckReport check(boolean repair) {
        try (Archive archive = open()) {
            return archive.check(repair, Progress.SILENT);
        }
    }

    private static void assertProblem(ProblemKind kind, Runnable call) {
        assertThatThrownBy(call::run).isInstanceOfSatisfying(ProblemException.class, e -> assertThat(e.kind())
                .isEqualTo(kind));
    }

    @Test
    void aCleanArchiveIsSaidToBeClean() {
        CheckReport report = check(false);
        assertThat(report.isClean()).isTrue();
        assertThat(report.pictures()).isEqualTo(3);
        assertThat(report.bytes()).isPositive();
    }

    @Test
    void anAlteredAndAMissingPictureAreNamed() throws IOException {
        byte[] bytes = Files.readAllBytes(file(0));
        bytes[bytes.length - 20] ^= 1;
        Files.write(file(0), bytes);
        Files.delete(file(1));
        assertThat(check(false).faults())
                .hasSize(2)
                .anyMatch(f -> f.contains("20310320"))
                .anyMatch(f -> f.contains("20310321"));
        assertThat(check(true).faults()).hasSize(2);
    }

    @Test
    void aMovedPictureIsPutBackAndAStraySetAside() throws IOException {
        Files.createDirectories(folder.resolve("pictures/elsewhere"));
        Files.move(file(0), folder.resolve("pictures/elsewhere/moved.png"));
        Path stray = Desk.picture(folder.resolve("pictures/2031"), "stray.png", 99);
        Files.write(folder.resolve("incoming/x.part"), new byte[10]);
        assertThat(check(false).faults()).hasSize(4);
        CheckReport repaired = check(true);
        assertThat(repaired.faults()).isEmpty();
        assertThat(repaired.repaired()).hasSize(3);
        assertThat(file(0)).exists();
        assertThat(stray).doesNotExist();
        assertThat(folder.resolve("strays/pictures/2031/stray.png")).exists();
        assertThat(check(false).isClean()).isTrue();
    }

    @Test
    void whatIsNoArchiveOrNotOursIsRefused() throws IOException, SQLException {
        assertProblem(ArchiveProblem.NOT_AN_ARCHIVE, () -> Archive.open(work.resolve("in"), Desk.PLANETS, Desk.CLOCK));
        assertProblem(
                ArchiveProblem.FOLDER_NOT_EMPTY, () -> Archive.create(work.resolve("in"), Desk.PLANETS, Desk.CLOCK));
        Path junk = Files.createDirectories(work.resolve("junk"));
        Files.write(
                junk.resolve("catalog.db"),
                "this is no database, but it is long enough to look like one at first"
                        .repeat(100)
                        .getBytes(StandardCharsets.UTF_8));
        assertProblem(ArchiveProblem.BROKEN_CATALOG, () -> Archive.open(junk, Desk.PLANETS, Desk.CLOCK));
        sql(
                "insert into flyway_schema_history select 999, '999', 'from the future', 'SQL', 'V999.sql', 1, 'x', installed_on, 1, 1 from flyway_schema_history limit 1");
        assertProblem(ArchiveProblem.NEWER_CATALOG, this::open);
    }

    @Test
    void theCatalogItselfRefusesToChangeWhatWasMeasured() {
        try (Archive archive = open()) {
            archive.keepFit(archive.pictures(PictureSearch.all()).get(0).id(), Desk.fit(20), "DE405", "t");
        }
        assertThatThrownBy(() -> sql("update disc_fit set centre_x_px = 1")).hasMessageContaining("superseded");
        assertThatThrownBy(() -> sql("delete from disc_fit")).hasMessageContaining("superseded");
        assertThatThrownBy(() -> sql("delete from history")).hasMessageContaining("history");
    }

    private void sql(String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("catalog.db"));
                Statement s = connection.createStatement()) {
            s.execute(statement);
        }
    }

    @Test
    void aLockedCatalogIsSaidToBeInUse() throws SQLException {
        try (Archive archive =
                        ArchiveOpening.open(folder, Desk.PLANETS, Desk.CLOCK, false, java.time.Duration.ofMillis(200));
                Connection other = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("catalog.db"));
                Statement s = other.createStatement()) {
            s.execute("begin immediate");
            assertProblem(ArchiveProblem.BUSY, () -> archive.keepKit(Kit.named("k")));
            s.execute("rollback");
            archive.keepKit(Kit.named("k"));
        }
    }

    @Test
    void aBackupComesBackWhole() throws IOException {
        Path zip = work.resolve("season.zip");
        try (Archive archive = open()) {
            archive.keepFit(1, Desk.fit(20), "DE405", "t");
            assertThat(archive.backup(zip, Progress.SILENT).pictures()).isEqualTo(3);
            assertProblem(ArchiveProblem.FILE_EXISTS, () -> archive.backup(zip, Progress.SILENT));
        }
        Path restored = work.resolve("restored");
        Archive.restore(zip, restored, Progress.SILENT);
        try (Archive before = open();
                Archive after = Archive.open(restored, Desk.PLANETS, Desk.CLOCK)) {
            assertThat(after.pictures(PictureSearch.all())).isEqualTo(before.pictures(PictureSearch.all()));
            assertThat(after.currentFit(1).orElseThrow().fit().placement())
                    .isEqualTo(Desk.fit(20).placement());
            assertThat(after.check(false, Progress.SILENT).isClean()).isTrue();
        }
        assertProblem(ArchiveProblem.FOLDER_NOT_EMPTY, () -> Archive.restore(zip, restored, Progress.SILENT));
    }

    @Test
    void aDamagedOrHostileBackupIsRefused() throws IOException {
        Path zip = work.resolve("season.zip");
        try (Archive archive = open()) {
            archive.backup(zip, Progress.SILENT);
        }
        byte[] bytes = Files.readAllBytes(zip);
        byte[] damaged = bytes.clone();
        damaged[bytes.length / 3] ^= 0x55;
        Path bad = Files.write(work.resolve("bad.zip"), damaged);
        assertThatThrownBy(() -> Archive.restore(bad, work.resolve("r1"), Progress.SILENT))
                .isInstanceOf(ProblemException.class);
        assertThat(work.resolve("r1/catalog.db")).doesNotExist();
        Path cut = Files.write(work.resolve("cut.zip"), java.util.Arrays.copyOf(bytes, bytes.length / 2));
        assertProblem(ArchiveProblem.NOT_A_BACKUP, () -> Archive.restore(cut, work.resolve("r2"), Progress.SILENT));
        Path slip = work.resolve("slip.zip");
        try (OutputStream out = Files.newOutputStream(slip);
                ZipOutputStream z = new ZipOutputStream(out)) {
            String empty = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
            for (String name : new String[] {"catalog.db", "pictures/../../evil.txt"}) {
                z.putNextEntry(new ZipEntry(name));
                z.closeEntry();
            }
            z.putNextEntry(new ZipEntry("SHA256SUMS"));
            z.write((empty + "  0  catalog.db\n" + empty + "  0  pictures/../../evil.txt\n")
                    .getBytes(StandardCharsets.UTF_8));
            z.closeEntry();
        }
        assertProblem(ArchiveProblem.BROKEN_BACKUP, () -> Archive.restore(slip, work.resolve("r3"), Progress.SILENT));
        assertThat(work.resolve("evil.txt")).doesNotExist();
    }

    @Test
    void everyStrayIsToldAlsoThoseWithTheSameBytes() throws IOException {
        Path pictures = folder.resolve("pictures");
        Files.copy(file(0), pictures.resolve("copy.png"));
        Files.copy(file(0), pictures.resolve("again.png"));
        assertThat(check(false).faults()).hasSize(2);
        CheckReport repaired = check(true);
        assertThat(repaired.repaired()).hasSize(2);
        assertThat(folder.resolve("strays/pictures/copy.png")).hasSameBinaryContentAs(file(0));
        assertThat(folder.resolve("strays/pictures/again.png")).exists();
        assertThat(check(false).isClean()).isTrue();
    }

    @Test
    void anAlteredPictureWhoseBytesAreElsewhereComesBack() throws IOException {
        byte[] right = Files.readAllBytes(file(0));
        Files.write(folder.resolve("pictures/kept.png"), right);
        Files.write(file(0), new byte[100]);
        assertThat(check(true).isClean()).isTrue();
        assertThat(file(0)).hasBinaryContent(right);
        assertThat(folder.resolve("strays").resolve(folder.relativize(file(0)))).hasSize(100);
    }

    @Test
    void aLinkInThePlaceOfAPictureIsNotThePicture() throws IOException {
        Path outside = Files.move(file(0), work.resolve("outside.png"));
        Files.createSymbolicLink(file(0), outside);
        assertThat(check(false).faults()).hasSize(1).allMatch(f -> f.contains("missing"));
    }

    @Test
    void aCheckCanBeStopped() {
        Progress stopped = new Progress() {
            @Override
            public void report(long done, long total, String message) {
                assertThat(done).isBetween(0L, total);
            }

            @Override
            public boolean isCancelled() {
                return true;
            }
        };
        try (Archive archive = open()) {
            CheckReport report = archive.check(false, stopped);
            assertThat(report.pictures()).isZero();
            assertThat(report.isClean()).isFalse();
        }
    }

    @Test
    void rowsAgainstTheRulesAreNamed() throws SQLException {
        try (Archive archive = open()) {
            ArchivedPicture picture = archive.pictures(PictureSearch.all()).get(0);
            archive.addMark(new NewMark(
                    picture.id(),
                    java.util.Optional.empty(),
                    java.util.Optional.empty(),
                    new oblate.disc.PixelPoint(1e9, 1),
                    1,
                    java.util.Optional.empty(),
                    java.util.Optional.empty(),
                    "centre",
                    "tester"));
        }
        sql("delete from picture_meridian where picture_id = 2");
        sql("update picture set relative_path = '../../outside.png' where id = 3");
        sql("pragma foreign_keys = off");
        sql("insert into picture_meridian values (77, '2', 10)");
        assertThat(check(true).faults())
                .anyMatch(f -> f.startsWith("mark 1: its pixel"))
                .anyMatch(f -> f.startsWith("picture 2: ") && f.contains("central meridian"))
                .anyMatch(f -> f.startsWith("picture 3: ") && f.contains("leads out"))
                .anyMatch(f -> f.contains("picture_meridian") && f.contains("not there"))
                .hasSize(4);
        try (Archive archive = open()) {
            ArchivedPicture outside = archive.picture(3).orElseThrow();
            assertProblem(ArchiveProblem.BROKEN_CATALOG, () -> archive.fileOf(outside));
        }
    }

    @Test
    void aCatalogWithBrokenPagesIsNotTakenForAGoodOne() throws IOException {
        Path catalog = folder.resolve("catalog.db");
        byte[] bytes = Files.readAllBytes(catalog);
        for (int page = 4; page < bytes.length / 4096; page++) {
            java.util.Arrays.fill(bytes, page * 4096, page * 4096 + 600, (byte) 0xA5);
        }
        Files.write(catalog, bytes);
        try {
            assertThat(check(false).isClean()).isFalse();
        } catch (ProblemException e) {
            assertThat(e.kind()).isEqualTo(ArchiveProblem.BROKEN_CATALOG);
        }
    }

    @Test
    void theNewestCopyOfTheCatalogPutInItsPlaceIsTheArchiveAgain() throws IOException {
        Path copy;
        try (var files = Files.list(folder.resolve("backups"))) {
            copy = files.max(java.util.Comparator.comparing(p -> p.getFileName().toString()))
                    .orElseThrow();
        }
        Files.write(folder.resolve("catalog.db"), new byte[] {1, 2, 3});
        assertProblem(ArchiveProblem.BROKEN_CATALOG, this::open);
        Files.copy(copy, folder.resolve("catalog.db"), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        assertThat(check(false).isClean()).isTrue();
    }

    @Test
    void anEmptyCatalogBesidePicturesIsNotTakenForANewOne() throws IOException {
        Files.write(folder.resolve("catalog.db"), new byte[0]);
        assertProblem(ArchiveProblem.BROKEN_CATALOG, this::open);
        assertThat(file(0)).exists();
    }
}
