/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code oblate map} on the ready-made night. */
class MapCommandTest {
    @TempDir
    Path work;

    private CommandRun run(String... words) {
        List<String> all = new ArrayList<>(List.of("map"));
        all.addAll(List.of(words));
        all.addAll(List.of("--format", "csv"));
        return CommandRun.of(work.resolve("settings"), "", all.toArray(String[]::new));
    }

    private static List<String> twoPictures() throws IOException {
        return Night.pictures().stream()
                .map(Path::toString)
                .filter(n -> n.endsWith(".png"))
                .limit(2)
                .toList();
    }

    @Test
    void twoPicturesBecomeOneMapAndAStrip() throws IOException {
        List<String> words = new ArrayList<>(twoPictures());
        assertThat(words).hasSize(2);
        words.addAll(List.of("--planet", "jupiter", "--pole-angle", "-10", "--pole-sigma", "6", "--mirrored", "no"));
        Path map = work.resolve("map.png");
        List<String> whole = new ArrayList<>(words);
        whole.addAll(List.of("--map", map.toString(), "--width", "720", "--system", "2"));
        CommandRun run = run(whole.toArray(String[]::new));
        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.rows()).hasSize(2);
        assertThat(Double.parseDouble(run.rows().get(1).get("gain"))).isBetween(0.8, 1.25);
        assertThat(ImageIO.read(map.toFile()).getHeight()).isEqualTo(360);
        Path strip = work.resolve("strip.fits");
        List<String> band = new ArrayList<>(words);
        band.addAll(List.of("--map", strip.toString(), "--width", "720", "--strip=-30,-10"));
        assertThat(run(band.toArray(String[]::new)).status()).isZero();
        assertThat(Files.size(strip)).isGreaterThan(4 * 720 * 40L);
        try (var left = Files.list(work)) {
            assertThat(left.map(p -> p.getFileName().toString())).noneMatch(n -> n.startsWith(".oblate"));
        }
    }

    @Test
    void whatCannotBeDrawnIsSaidInOneSentence() throws IOException {
        String picture = twoPictures().get(0);
        assertThat(run(picture, "--map", work.resolve("m.gif").toString()).status())
                .isEqualTo(2);
        assertThat(run(picture, "--map", work.resolve("m.png").toString(), "--strip", "5")
                        .err())
                .contains("--strip");
        assertThat(run(picture, "--map", work.resolve("m.png").toString(), "--width", "5")
                        .status())
                .isEqualTo(2);
        assertThat(run(
                                picture,
                                "--planet",
                                "jupiter",
                                "--map",
                                work.resolve("m.png").toString(),
                                "--system",
                                "9")
                        .err())
                .contains("rotation system \"9\"");
        CommandRun none = run(
                picture,
                "--planet",
                "jupiter",
                "--mirrored",
                "no",
                "--pole-angle",
                "-10",
                "--map",
                work.resolve("no such folder").resolve("m.png").toString());
        assertThat(none.status()).isEqualTo(1);
        assertThat(none.err()).contains("cannot be written");
    }
}
