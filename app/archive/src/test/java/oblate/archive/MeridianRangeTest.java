/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;

/** A search by central meridian finds what going round the circle by hand finds. */
class MeridianRangeTest {
    private static Path folder;
    private static Archive archive;
    private static List<ArchivedPicture> all;

    @BeforeContainer
    static void fill() throws IOException {
        folder = Files.createTempDirectory("meridians");
        archive = Archive.create(folder.resolve("archive"), Desk.PLANETS, Desk.CLOCK);
        Random random = new Random(3);
        for (int i = 0; i < 50; i++) {
            double meridian = i == 0 ? 0 : random.nextDouble() * 360;
            archive.enter(Entries.dated(
                    i,
                    String.format(Locale.ROOT, "2031-03-24T21:00:%02dZ", i),
                    Map.of("2", meridian),
                    Entries.NOTHING_SAID));
        }
        all = archive.pictures(PictureSearch.all());
    }

    @AfterContainer
    static void empty() throws IOException {
        archive.close();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    @Property(tries = 300, seed = "1")
    void searchAndPlainFilterAgree(
            @ForAll @DoubleRange(min = -720, max = 720) double from,
            @ForAll @DoubleRange(min = -720, max = 720) double to) {
        assertThat(archive.pictures(new Wanted().meridian("2", from, to).search()))
                .isEqualTo(all.stream()
                        .filter(p -> RoundTheCircle.isIn(p.centralMeridians().get("2"), from, to))
                        .toList());
    }
}
