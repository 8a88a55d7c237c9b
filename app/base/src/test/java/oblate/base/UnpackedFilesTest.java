/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files out of jars are kept whole, and not asked of the jar again. */
class UnpackedFilesTest {
    private static final String RESOURCE = "/META-INF/MANIFEST.MF";

    @TempDir
    private Path folder;

    private Path cache;
    private UnpackedFiles files;

    @BeforeEach
    void begin() {
        cache = folder.resolve("not/there/yet");
        files = new UnpackedFiles(cache);
    }

    private Optional<Path> kept(Supplier<String> resource) {
        return files.file(Test.class, "inside/manifest.txt", resource);
    }

    private static String notAsked() {
        throw new AssertionError("asked for the resource again");
    }

    private static byte[] inJar() throws IOException {
        try (InputStream in = Test.class.getResourceAsStream("/org/junit/jupiter/api/Test.class")) {
            return in.readAllBytes();
        }
    }

    private Optional<Path> keptClass(Supplier<String> resource) {
        return files.file(Test.class, "Test.bin", resource);
    }

    @Test
    void theFirstCallUnpacksAndLaterOnesDoNot() throws IOException {
        Path file = keptClass(() -> "/org/junit/jupiter/api/Test.class").orElseThrow();
        assertThat(file).startsWith(cache).hasBinaryContent(inJar());
        assertThat(keptClass(UnpackedFilesTest::notAsked)).contains(file);
        try (Stream<Path> beside = Files.list(file.getParent())) {
            assertThat(beside).hasSize(2);
        }
    }

    @Test
    void whatIsNotWholeIsUnpackedAgain() throws IOException {
        Path file = keptClass(() -> "/org/junit/jupiter/api/Test.class").orElseThrow();
        byte[] cut = Files.readAllBytes(file);
        cut[cut.length / 2]++;
        Files.write(file, cut);
        assertThat(keptClass(() -> "/org/junit/jupiter/api/Test.class")).contains(file);
        assertThat(file).hasBinaryContent(inJar());
    }

    @Test
    void twoFilesOfOneJarStandBesideEachOther() {
        Path one = keptClass(() -> "/org/junit/jupiter/api/Test.class").orElseThrow();
        Path other = kept(() -> RESOURCE).orElseThrow();
        assertThat(other.getParent().getParent()).isEqualTo(one.getParent());
        assertThat(List.of(one, other)).allMatch(Files::isRegularFile);
    }

    @Test
    void whatAFormerJarOfThatNameLeftIsRemoved() throws IOException {
        Path file = kept(() -> RESOURCE).orElseThrow();
        Path place = file.getParent().getParent();
        String name = place.getFileName().toString();
        String jar = name.substring(0, name.indexOf(".jar") + 4);
        Path former = place.resolveSibling(jar + "-1f-2e");
        Files.createDirectories(former.resolve("inside"));
        Files.writeString(former.resolve("inside/manifest.txt"), "old");
        Path stranger = Files.createDirectories(place.resolveSibling("another.jar-1f-2e"));
        Files.delete(file);
        assertThat(kept(() -> RESOURCE)).contains(file);
        assertThat(former).doesNotExist();
        assertThat(stranger).exists();
    }

    @Test
    void whereNothingCanBeKeptThereIsNoFile() throws IOException {
        assertThat(kept(() -> "/there/is/no/such/thing")).isEmpty();
        Files.createDirectories(cache.getParent());
        Files.writeString(cache, "a file where the folder should be");
        assertThat(kept(() -> RESOURCE)).isEmpty();
        assertThat(files.file(UnpackedFilesTest.class, "no jar", () -> RESOURCE))
                .isEmpty();
    }
}
