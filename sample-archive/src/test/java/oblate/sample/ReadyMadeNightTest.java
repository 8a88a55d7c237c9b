/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sample;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Stream;
import oblate.base.Progress;
import oblate.sky.Sky;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The evening in the repository is what the program draws, whatever the number of threads. */
@Tag("steady")
class ReadyMadeNightTest {
    private static final Path KEPT = Path.of("night");

    @TempDir
    static Path temp;

    private static Path alone;
    private static Path together;

    @BeforeAll
    static void drawTwice() throws InterruptedException, ExecutionException, IOException {
        alone = temp.resolve("alone");
        together = temp.resolve("together");
        on(1, SampleSeason.night(), alone);
        on(4, firstHalf(), together);
        if (Boolean.getBoolean("oblate.sample.rewrite")) {
            rewrite();
        }
    }

    private static SampleSeason firstHalf() {
        Scenario all = Scenario.oneNight();
        return SampleSeason.of(
                new Scenario(
                        all.title(),
                        all.seed(),
                        all.epoch(),
                        all.sites(),
                        all.kits(),
                        all.bands(),
                        all.features(),
                        all.nights().subList(0, 5)),
                Sky.bundled());
    }

    private static void on(int threads, SampleSeason season, Path folder)
            throws InterruptedException, ExecutionException {
        ForkJoinPool pool = new ForkJoinPool(threads);
        try {
            pool.submit(() -> season.writeTo(folder, Progress.SILENT)).get();
        } finally {
            pool.shutdown();
        }
    }

    private static void rewrite() throws IOException {
        if (Files.exists(KEPT)) {
            try (Stream<Path> old = Files.walk(KEPT)) {
                for (Path path : old.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
        for (String file : files(alone)) {
            Files.createDirectories(KEPT.resolve(file).getParent());
            Files.copy(alone.resolve(file), KEPT.resolve(file));
        }
    }

    private static List<String> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile)
                    .map(p -> folder.relativize(p).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void sameBytesWithOneThreadAndWithFour() throws IOException {
        List<String> pictures =
                files(together).stream().filter(f -> f.startsWith("pictures/")).toList();
        // Five pictures and a note; of the tables, those of the whole evening have more rows.
        assertThat(pictures).hasSize(6);
        for (String file : pictures) {
            assertThat(Files.mismatch(alone.resolve(file), together.resolve(file)))
                    .as(file)
                    .isEqualTo(-1);
        }
    }

    @Test
    void theKeptNightIsNotStale() throws IOException {
        assertThat(files(KEPT)).isEqualTo(files(alone));
        for (String file : files(alone)) {
            if (file.endsWith(".csv") || file.endsWith(".txt")) {
                assertThat(KEPT.resolve(file)).hasSameTextualContentAs(alone.resolve(file));
            } else {
                compare(file);
            }
        }
    }

    /** Another machine's sine may differ in the last bit, and a sample then by one step; JPEG decoders differ a little more. */
    private static void compare(String file) throws IOException {
        Pixels kept = Pixels.read(KEPT.resolve(file));
        Pixels drawn = Pixels.read(alone.resolve(file));
        assertThat(kept.width()).isEqualTo(drawn.width());
        assertThat(kept.channels()).isEqualTo(drawn.channels());
        double step = file.endsWith(".jpg") ? 6 / 255.0 : 1.01 / 255;
        int different = 0;
        double worst = 0;
        for (int c = 0; c < kept.channels(); c++) {
            for (int i = 0; i < kept.planes()[c].length; i++) {
                double off = Math.abs(kept.planes()[c][i] - drawn.planes()[c][i]);
                worst = Math.max(worst, off);
                different += off > 0 ? 1 : 0;
            }
        }
        assertThat(worst).as(file).isLessThanOrEqualTo(step);
        int samples = kept.channels() * kept.planes()[0].length;
        assertThat(different).as(file).isLessThanOrEqualTo(file.endsWith(".jpg") ? samples / 20 : samples / 1000);
    }

    @Test
    void theKeptNightIsSmall() throws IOException {
        long bytes = 0;
        for (String file : files(KEPT)) {
            bytes += Files.size(KEPT.resolve(file));
        }
        assertThat(bytes).isBetween(500_000L, 3_000_000L);
    }
}
