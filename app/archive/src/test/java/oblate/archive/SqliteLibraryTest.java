/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import oblate.base.UnpackedFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.util.LibraryLoaderUtil;

/** The kept library of SQLite is loaded; one that cannot be is passed over. Each in a process of its own, since a library is loaded once. */
class SqliteLibraryTest {
    @TempDir
    private Path folder;

    /** Says which library the process has loaded after its first statement. */
    static final class Opening {
        private Opening() {}

        public static void main(String[] words) throws Exception {
            SqliteLibrary.keepIn(new UnpackedFiles(Path.of(words[0])));
            if (words.length > 1) {
                try (Stream<Path> all = Files.walk(Path.of(words[0]))) {
                    for (Path file : all.filter(Files::isRegularFile).toList()) {
                        Files.writeString(file, "no library");
                    }
                }
            }
            try (var connection = org.sqlite.JDBC.createConnection("jdbc:sqlite::memory:", new java.util.Properties());
                    var statement = connection.createStatement();
                    var answer = statement.executeQuery("select 6 * 7")) {
                answer.next();
                System.out.println("answer " + answer.getInt(1));
            }
            Path maps = Path.of("/proc/self/maps");
            if (Files.isReadable(maps)) {
                try (Stream<String> lines = Files.lines(maps)) {
                    lines.filter(l -> l.contains("sqlite") && l.contains(".so"))
                            .map(l -> "loaded " + l.substring(l.indexOf('/')))
                            .distinct()
                            .forEach(System.out::println);
                }
            }
        }
    }

    private List<String> run(String... words) throws IOException, InterruptedException {
        List<String> command = Stream.concat(
                        Stream.of(
                                Path.of(System.getProperty("java.home"), "bin", "java")
                                        .toString(),
                                "-cp",
                                System.getProperty("java.class.path"),
                                Opening.class.getName()),
                        Stream.of(words))
                .toList();
        File out = folder.resolve("out.txt").toFile();
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(out)
                .start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return Files.readAllLines(out.toPath());
    }

    @Test
    void whatIsKeptIsLoaded() throws Exception {
        Path cache = folder.resolve("cache");
        for (int start = 0; start < 2; start++) {
            List<String> said = run(cache.toString());
            assertThat(said).contains("answer 42");
            String real = cache.toRealPath().toString();
            assertThat(said.stream().filter(l -> l.startsWith("loaded ")))
                    .allMatch(l -> l.startsWith("loaded " + real) && l.endsWith(LibraryLoaderUtil.getNativeLibName()));
        }
    }

    @Test
    void whatCannotBeLoadedIsPassedOver() throws Exception {
        List<String> said = run(folder.resolve("cache").toString(), "spoil");
        assertThat(said).contains("answer 42");
        assertThat(said.stream().filter(l -> l.startsWith("loaded ")))
                .noneMatch(l -> l.contains(folder.getFileName().toString()));
    }
}
