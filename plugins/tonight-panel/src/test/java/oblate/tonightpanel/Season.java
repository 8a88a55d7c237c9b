/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.Site;
import oblate.archive.StoredFit;
import oblate.archive.testing.PracticePictures;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.PlanetModel;

/** A small archive of invented marks: two features followed for five weeks, one marked once, one never. */
final class Season {
    static final String OVAL = "Oval";
    static final String SPOT = "Spot, fast";
    static final String SITE = "Garden";

    private static final Instant START = Instant.parse("2024-11-01T21:00:00Z");
    private static final PlanetModel JUPITER = new Jupiter();

    private Season() {}

    /** Made in a folder that is not there yet. */
    static void make(Path folder, Path work) throws IOException {
        Clock clock = Clock.fixed(Instant.parse("2024-12-08T00:00:00Z"), ZoneOffset.UTC);
        try (Archive archive = Archive.create(folder, List.of(JUPITER), clock)) {
            archive.keepSite(new Site(SITE, 48.2, 16.3, 170, Optional.empty()));
            PracticePictures pictures = new PracticePictures(archive, List.of(JUPITER), work);
            Optional<Long> oval = Optional.of(pictures.feature(OVAL, "oval", Optional.of("3")));
            Optional<Long> spot = Optional.of(pictures.feature(SPOT, "oval", Optional.of("3")));
            Optional<Long> lone = Optional.of(pictures.feature("Lone", "oval", Optional.of("3")));
            pictures.feature("Unmarked", "oval", Optional.of("3"));
            for (int i = 0; i < 8; i++) {
                double day = 5 * i;
                Instant time = START.plusSeconds(Math.round(day * 86_400));
                StoredFit fit = pictures.fitted(
                        pictures.filed(i, PracticePictures.facts(time, Optional.of(SITE), Optional.of("Long tube"))));
                archive.addMark(PracticePictures.mark(JUPITER, fit, oval, 120 - 0.234 * day, -22));
                archive.addMark(PracticePictures.mark(JUPITER, fit, spot, 250 + 1.1 * day, 16));
                if (i == 3) {
                    archive.addMark(PracticePictures.mark(JUPITER, fit, lone, 300, 8));
                }
            }
        }
    }
}
