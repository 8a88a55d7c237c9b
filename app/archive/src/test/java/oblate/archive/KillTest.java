/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import oblate.base.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills a filing in another process at random moments: a rerun completes it and the archive checks clean. More kills: {@code -Doblate.kills=20}. */
class KillTest {
    private static final int PICTURES = 40;

    @TempDir
    Path work;

    /** The process that gets killed. */
    static final class Victim {
        private Victim() {}

        /** Files a folder; says when it begins. */
        public static void main(String[] args) {
            Path folder = Path.of(args[0]);
            boolean there = Files.exists(folder.resolve("catalog.db"));
            try (Archive archive = there
                    ? Archive.open(folder, Desk.PLANETS, Desk.CLOCK)
                    : Archive.create(folder, Desk.PLANETS, Desk.CLOCK)) {
                Desk.filing(archive).file(List.of(Path.of(args[1])), FilingFacts.forPlanet("jupiter"), Progress.SILENT);
            }
        }
    }

    @Test
    void aKilledFilingIsCompletedByTheNext() throws IOException, InterruptedException {
        Path in = work.resolve("in");
        for (int i = 0; i < PICTURES; i++) {
            Desk.picture(in, String.format("203103%02dT21%02d00Z.png", 1 + i % 28, i), i);
        }
        Random random = new Random(7);
        int kills = Integer.getInteger("oblate.kills", 3);
        for (int k = 0; k < kills; k++) {
            Path folder = work.resolve("archive" + k);
            Process victim = start(folder, in);
            // The kill comes when some random number of files has its place, or while the archive is being made.
            int wanted = k % 3 == 0 ? -1 : random.nextInt(PICTURES);
            waitFor(victim, folder, wanted);
            TimeUnit.MICROSECONDS.sleep(random.nextInt(wanted < 0 ? 400_000 : 10_000));
            victim.destroyForcibly().waitFor();
            Victim.main(new String[] {folder.toString(), in.toString()});
            try (Archive archive = Archive.open(folder, Desk.PLANETS, Desk.CLOCK)) {
                assertThat(archive.pictures(PictureSearch.all()))
                        .extracting(ArchivedPicture::originalName)
                        .hasSize(PICTURES)
                        .doesNotHaveDuplicates();
                assertThat(archive.check(false, Progress.SILENT).faults()).isEmpty();
            }
        }
    }

    private static void waitFor(Process victim, Path folder, int wanted) throws IOException, InterruptedException {
        while (victim.isAlive()) {
            boolean made = Files.exists(folder.resolve("catalog.db"));
            if (wanted < 0 ? made : Files.isDirectory(folder.resolve("pictures")) && placed(folder) > wanted) {
                return;
            }
            TimeUnit.MILLISECONDS.sleep(2);
        }
    }

    private static long placed(Path folder) throws IOException {
        try (var files = Files.walk(folder.resolve("pictures"))) {
            return files.filter(f -> f.toString().endsWith(".png")).count();
        }
    }

    private static Process start(Path folder, Path in) throws IOException {
        String path = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:+UseSerialGC",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        path,
                        Victim.class.getName(),
                        folder.toString(),
                        in.toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
