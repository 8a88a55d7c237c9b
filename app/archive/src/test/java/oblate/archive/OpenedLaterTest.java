/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An archive whose catalog is opened when it is first needed, and what is refused when. */
class OpenedLaterTest {
    @TempDir
    private Path folder;

    private Path made() {
        Path root = folder.resolve("archive");
        Archive.create(root, List.of(), Clock.systemUTC()).close();
        return root;
    }

    @Test
    void theFirstCallOpensIt() {
        try (Archive archive = Archive.later(made(), List.of(), Clock.systemUTC())) {
            assertThat(archive.isReadOnly()).isFalse();
            assertThat(archive.pictures(PictureSearch.all())).isEmpty();
        }
    }

    @Test
    void nothingIsTouchedBefore() throws IOException {
        Path root = made();
        byte[] before = Files.readAllBytes(root.resolve("catalog.db"));
        try (Archive archive = Archive.later(root, List.of(), Clock.systemUTC())) {
            assertThat(archive.folder()).isEqualTo(root);
        }
        assertThat(root.resolve("catalog.db")).hasBinaryContent(before);
        assertThat(root.resolve("catalog.db-wal")).doesNotExist();
    }

    @Test
    void whatIsNoArchiveIsRefusedAtOnce() {
        assertThatThrownBy(() -> Archive.later(folder, List.of(), Clock.systemUTC()))
                .isInstanceOf(ProblemException.class)
                .extracting(e -> ((ProblemException) e).kind())
                .isEqualTo(ArchiveProblem.NOT_AN_ARCHIVE);
    }

    @Test
    void aBrokenCatalogIsRefusedWheneverItIsNeeded() throws IOException {
        Path root = made();
        Files.write(
                root.resolve("catalog.db"),
                "this is no database, whatever its name says".repeat(40).getBytes(StandardCharsets.UTF_8));
        try (Archive archive = Archive.later(root, List.of(), Clock.systemUTC())) {
            for (int i = 0; i < 2; i++) {
                assertThatThrownBy(archive::ensureOpen)
                        .isInstanceOf(ProblemException.class)
                        .extracting(e -> ((ProblemException) e).kind())
                        .isEqualTo(ArchiveProblem.BROKEN_CATALOG);
            }
        }
    }

    @Test
    void manyThreadsAtOnceOpenItOnce() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try (Archive archive = Archive.later(made(), List.of(), Clock.systemUTC())) {
            Callable<List<ArchivedPicture>> question = () -> archive.pictures(PictureSearch.all());
            List<Future<List<ArchivedPicture>>> answers =
                    threads.invokeAll(Stream.generate(() -> question).limit(16).toList());
            for (Future<List<ArchivedPicture>> answer : answers) {
                assertThat(answer.get()).isEmpty();
            }
        } finally {
            threads.shutdown();
        }
    }
}
