/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import oblate.image.CaptureTime;
import oblate.image.PictureHeader;
import oblate.image.TimeClaim;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import oblate.image.TimeWish;
import oblate.sky.PlanetModel;

/** An archive of very many pictures for tests of the window: rows entered straight, all files links to one small picture. */
public final class ManyPictures {
    private static final String[] FILTERS = {"RGB", "infrared 742 nm", "methane 889 nm", "red", "green", "blue"};
    private static final int PER_NIGHT = 25;
    private static final int BLOCK = 1000;

    private ManyPictures() {}

    /**
     * Makes one.
     *
     * @param folder a new folder
     * @param count how many pictures, 25 a night, a night every third day
     * @param picture a small picture file
     */
    public static void make(Path folder, int count, Path picture, List<PlanetModel> planets) throws IOException {
        Clock clock = Clock.systemUTC();
        Archive.create(folder, planets, clock).close();
        Files.createDirectories(folder.resolve("pictures/many"));
        Path first = Files.copy(picture, folder.resolve("pictures/many/row-0.png"));
        for (int i = 1; i < count; i++) {
            Files.createLink(folder.resolve("pictures/many/row-" + i + ".png"), first);
        }
        Random random = new Random(1);
        try (Catalog catalog = CatalogOpening.inFolder(folder, false, CatalogOpening.PATIENCE, clock)) {
            PictureEntering entering = new PictureEntering();
            for (int start = 0; start < count; start += BLOCK) {
                int from = start;
                catalog.write(handle -> {
                    for (int i = from; i < Math.min(count, from + BLOCK); i++) {
                        entering.enter(handle, entry(i, random), clock.instant());
                    }
                    return from;
                });
            }
        }
    }

    private static PictureEntry entry(int i, Random random) {
        Instant mid = Instant.parse("2021-01-01T20:00:00Z")
                .plusSeconds(3L * 86_400 * (i / PER_NIGHT) + 180L * (i % PER_NIGHT));
        String utc = mid.toString();
        CaptureTime time = new CaptureTime(
                mid,
                OptionalDouble.of(90),
                TimeSource.FILE_NAME,
                "file name",
                utc,
                TimeMeaning.MIDDLE,
                false,
                false,
                0.3,
                List.of());
        TimeClaim claim = new TimeClaim(
                TimeSource.FILE_NAME,
                "file name",
                utc,
                LocalDateTime.ofInstant(mid, ZoneOffset.UTC),
                Optional.of(ZoneOffset.UTC),
                TimeMeaning.MIDDLE,
                OptionalDouble.of(90),
                0.5);
        byte[] sha = new byte[32];
        random.nextBytes(sha);
        double meridian = (i % PER_NIGHT * 1.8 + i / PER_NIGHT * 87.0) % 360;
        FilingFacts facts = new FilingFacts(
                Optional.empty(),
                Optional.empty(),
                Optional.of("observer " + i % 7),
                Optional.of("kit " + i % 5),
                Optional.of(FILTERS[i % FILTERS.length]),
                Optional.of(new Rating(Integer.toString(1 + i % 9), "Pickering")),
                Optional.empty(),
                Optional.empty(),
                TimeWish.none(),
                false);
        return new PictureEntry(
                HexFormat.of().formatHex(sha),
                1000,
                "pictures/many/row-" + i + ".png",
                "row-" + i + ".png",
                new PictureHeader("png", 40, 30, 1, 8, false, List.of()),
                Optional.of("jupiter"),
                Optional.of(time),
                Optional.of(Evening.of(mid, Optional.empty())),
                Map.of("1", meridian, "2", meridian, "3", meridian),
                List.of(claim),
                List.of(),
                facts);
    }
}
