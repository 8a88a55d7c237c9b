/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

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

/** A small archive of invented marks: one feature followed for five weeks, one marked once, one never, one only on two pictures of an hour. */
final class FollowedSeason {
    /** Longitude in System III of the followed feature at the first picture (deg); it falls evenly. */
    static final double LON_DEG = 120;

    /** Its drift in System III (deg per day). */
    static final double DEG_PER_DAY = -0.234;

    /** Time of the first picture. */
    static final Instant START = Instant.parse("2024-11-01T21:00:00Z");

    private static final PlanetModel JUPITER = new Jupiter();

    private FollowedSeason() {}

    /** Made under a folder; returns the archive's own. */
    static Path in(Path work) throws IOException {
        return made(work, true);
    }

    /** The same with marks that have no feature's name. */
    static Path unnamedIn(Path work) throws IOException {
        return made(work, false);
    }

    private static Path made(Path work, boolean named) throws IOException {
        Path folder = work.resolve("season");
        Clock clock = Clock.fixed(Instant.parse("2024-12-08T00:00:00Z"), ZoneOffset.UTC);
        try (Archive archive = Archive.create(folder, List.of(JUPITER), clock)) {
            archive.keepSite(new Site("Garden", 48.2, 16.3, 170, Optional.empty()));
            PracticePictures pictures = new PracticePictures(archive, List.of(JUPITER), work);
            Optional<Long> oval = named(named, pictures, "Oval, \"A\"; 1");
            Optional<Long> lone = named(named, pictures, "Lone");
            Optional<Long> brief = named(named, pictures, "Brief");
            pictures.feature("Unmarked", "oval", Optional.of("3"));
            for (int i = 0; i < 9; i++) {
                double day = i == 8 ? 1 / 24.0 : 5 * i;
                Instant time = START.plusSeconds(Math.round(day * 86_400));
                StoredFit fit = pictures.fitted(pictures.filed(
                        i, PracticePictures.facts(time, Optional.of("Garden"), Optional.of("Long tube"))));
                archive.addMark(PracticePictures.mark(JUPITER, fit, oval, LON_DEG + DEG_PER_DAY * day, -22));
                if (i == 3) {
                    archive.addMark(PracticePictures.mark(JUPITER, fit, lone, 300, 8));
                }
                if (i == 0 || i == 8) {
                    archive.addMark(PracticePictures.mark(JUPITER, fit, brief, 33, 3));
                }
            }
        }
        return folder;
    }

    private static Optional<Long> named(boolean named, PracticePictures pictures, String name) {
        return named ? Optional.of(pictures.feature(name, "oval", Optional.of("3"))) : Optional.empty();
    }
}
