/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static oblate.archive.ArchiveContract.assertProblem;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import oblate.base.ProblemException;
import oblate.base.Progress;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backups that were changed by accident or on purpose, and those stopped half-way. */
class BackupTest {
    private static final String LIST = "SHA256SUMS";
    private static final String PICTURE = "pictures/2031/2031-03-20/p-20310320T210530Z.png";

    @TempDir
    Path work;

    private Path folder;
    private Path zip;

    @BeforeEach
    void backUp() throws IOException {
        folder = work.resolve("archive");
        zip = work.resolve("season.zip");
        try (Archive archive = Archive.create(folder, Desk.PLANETS, Desk.CLOCK)) {
            for (int i = 0; i < 2; i++) {
                Desk.filed(archive, work.resolve("in"), "2031032" + i + "T210530Z", i);
            }
            archive.backup(zip, Progress.SILENT);
        }
    }

    private Map<String, byte[]> entries() throws IOException {
        Map<String, byte[]> entries = new LinkedHashMap<>();
        try (ZipFile file = new ZipFile(zip.toFile())) {
            for (ZipEntry entry : file.stream().toList()) {
                try (InputStream in = file.getInputStream(entry)) {
                    entries.put(entry.getName(), in.readAllBytes());
                }
            }
        }
        return entries;
    }

    private Path write(Map<String, byte[]> entries) throws IOException {
        Path changed = work.resolve("changed.zip");
        try (OutputStream out = Files.newOutputStream(changed);
                ZipOutputStream into = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
                into.putNextEntry(new ZipEntry(entry.getKey()));
                into.write(entry.getValue());
                into.closeEntry();
            }
        }
        return changed;
    }

    private void assertRefused(ArchiveProblem kind, Map<String, byte[]> entries) throws IOException {
        Path changed = write(entries);
        Path into = work.resolve("restored");
        assertProblem(kind, () -> Archive.restore(changed, into, Progress.SILENT));
        assertLeftEmpty(into);
    }

    private static void assertLeftEmpty(Path into) throws IOException {
        if (Files.exists(into)) {
            try (Stream<Path> left = Files.list(into)) {
                assertThat(left).isEmpty();
            }
        }
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String list(Map<String, byte[]> entries) {
        return new String(entries.get(LIST), StandardCharsets.UTF_8);
    }

    @Test
    void theBackupNamesEveryFileWithItsDigest() throws IOException {
        Map<String, byte[]> entries = entries();
        assertThat(entries).containsKeys("catalog.db", PICTURE, LIST).hasSize(4);
        assertThat(list(entries).lines()).hasSize(3).anyMatch(line -> line.endsWith("  " + PICTURE));
        assertThat(entries.get(PICTURE)).isEqualTo(Files.readAllBytes(folder.resolve(PICTURE)));
        try (Stream<Path> beside = Files.list(work)) {
            assertThat(beside.map(p -> p.getFileName().toString()))
                    .containsExactlyInAnyOrder("archive", "in", "season.zip");
        }
    }

    @Test
    void whatIsNotListedIsNotUnpacked() throws IOException {
        Map<String, byte[]> entries = entries();
        entries.put("pictures/extra.png", text("extra"));
        entries.put("../outside.txt", text("outside"));
        Path changed = write(entries);
        Path into = work.resolve("restored");
        assertThat(Archive.restore(changed, into, Progress.SILENT).pictures()).isEqualTo(2);
        assertThat(into.resolve("pictures/extra.png")).doesNotExist();
        assertThat(work.resolve("outside.txt")).doesNotExist();
        try (Archive archive = Archive.open(into, Desk.PLANETS, Desk.CLOCK)) {
            assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
        }
    }

    @Test
    void whatIsListedAndMissingOrChangedIsRefused() throws IOException {
        Map<String, byte[]> without = entries();
        without.remove(PICTURE);
        assertRefused(ArchiveProblem.BROKEN_BACKUP, without);
        Map<String, byte[]> changed = entries();
        changed.get(PICTURE)[50] ^= 1;
        assertRefused(ArchiveProblem.BROKEN_BACKUP, changed);
        Map<String, byte[]> longer = entries();
        longer.put(PICTURE, new byte[1 << 20]);
        assertRefused(ArchiveProblem.BROKEN_BACKUP, longer);
    }

    @Test
    void aListThatCannotBeTrustedIsRefused() throws IOException {
        for (String line : List.of(
                "no line\n",
                "0".repeat(64) + "  5  pictures/../../x\n",
                "0".repeat(64) + "  5  /etc/x\n",
                "0".repeat(64) + "  5  incoming/x\n",
                "0".repeat(64) + "  5  pictures/a\0b\n",
                "0".repeat(64) + "  5  pictures/../catalog.db\n",
                "0".repeat(64) + "  99999999999999999999  pictures/x\n")) {
            Map<String, byte[]> entries = entries();
            entries.put(LIST, text(list(entries) + line));
            assertRefused(ArchiveProblem.BROKEN_BACKUP, entries);
        }
        Map<String, byte[]> twice = entries();
        twice.put(LIST, text(list(twice).repeat(2)));
        assertRefused(ArchiveProblem.BROKEN_BACKUP, twice);
    }

    @Test
    void aZipOfSomethingElseIsNoBackup() throws IOException {
        assertRefused(ArchiveProblem.NOT_A_BACKUP, Map.of("readme.txt", text("hello")));
        assertRefused(ArchiveProblem.NOT_A_BACKUP, Map.of(LIST, text("")));
        Path none = Files.write(work.resolve("none.zip"), text("no zip"));
        assertProblem(ArchiveProblem.NOT_A_BACKUP, () -> Archive.restore(none, work.resolve("r"), Progress.SILENT));
        assertProblem(
                ArchiveProblem.NOT_A_BACKUP,
                () -> Archive.restore(work.resolve("not-there.zip"), work.resolve("r"), Progress.SILENT));
    }

    @Test
    void noBrokenByteGetsThrough() throws IOException {
        byte[] good = Files.readAllBytes(zip);
        Random random = new Random(13);
        for (int i = 0; i < 40; i++) {
            byte[] bytes = good.clone();
            bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
            Path bad = Files.write(work.resolve("bad.zip"), bytes);
            Path into = work.resolve("bad" + i);
            try {
                Archive.restore(bad, into, Progress.SILENT);
            } catch (ProblemException e) {
                assertThat(e.kind()).isIn(ArchiveProblem.BROKEN_BACKUP, ArchiveProblem.NOT_A_BACKUP);
                assertLeftEmpty(into);
                continue;
            }
            // The byte stood in something a zip keeps beside the files, such as a date: then the files are whole.
            try (Archive archive = Archive.open(into, Desk.PLANETS, Desk.CLOCK)) {
                assertThat(archive.check(false, Progress.SILENT).isClean()).isTrue();
            }
        }
    }

    @Test
    void stoppedOrFailedNothingIsLeftAndTheNextTrySucceeds() throws IOException {
        Progress stopping = new Progress() {
            private long done;

            @Override
            public void report(long now, long total, String message) {
                done = now;
            }

            @Override
            public boolean isCancelled() {
                return done >= 1;
            }
        };
        Path into = work.resolve("restored");
        assertProblem(ArchiveProblem.CANCELLED, () -> Archive.restore(zip, into, stopping));
        assertLeftEmpty(into);
        assertThat(Archive.restore(zip, into, Progress.SILENT).pictures()).isEqualTo(2);
        try (Archive archive = Archive.open(into, Desk.PLANETS, Desk.CLOCK)) {
            assertProblem(ArchiveProblem.CANCELLED, () -> archive.backup(work.resolve("stopped.zip"), stopping));
            Files.delete(into.resolve(PICTURE));
            assertThatThrownBy(() -> archive.backup(work.resolve("failed.zip"), Progress.SILENT))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(ArchiveProblem.CANNOT_READ))
                    .hasMessageContainingAll(PICTURE, "oblate check");
        }
        try (Stream<Path> beside = Files.list(work)) {
            assertThat(beside.map(p -> p.getFileName().toString()))
                    .containsExactlyInAnyOrder("archive", "in", "season.zip", "restored");
        }
    }

    @Test
    void anAlteredPictureIsNotBackedUpInSilence() throws IOException {
        Files.write(folder.resolve(PICTURE), text("altered"));
        try (Archive archive = Archive.open(folder, Desk.PLANETS, Desk.CLOCK)) {
            assertThatThrownBy(() -> archive.backup(work.resolve("b.zip"), Progress.SILENT))
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(ArchiveProblem.CANNOT_READ))
                    .hasMessageContaining("other bytes");
        }
        assertThat(work.resolve("b.zip")).doesNotExist();
    }
}
