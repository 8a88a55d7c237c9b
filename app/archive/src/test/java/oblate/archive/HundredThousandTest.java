/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Predicate;
import java.util.function.Supplier;
import oblate.image.CaptureTime;
import oblate.image.PictureHeader;
import oblate.image.TimeMeaning;
import oblate.image.TimeSource;
import oblate.image.TimeWish;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Fills an archive's catalog with 100 000 invented pictures and says how long searches take; it asserts what they find, not the times. Left out
 * of the usual run by its tag, since it takes minutes: {@code -DexcludedTags=whole-table}.
 */
@Tag("large")
class HundredThousandTest {
    private static final int PICTURES = 100_000;
    private static final String[] PLANETS = {"jupiter", "saturn", "mars"};
    private static final String[] FILTERS = {"RGB", "infrared 742 nm", "methane 889 nm", "red", "green", "blue"};
    private static final String[] WORDS = {
        "oval", "storm", "soft", "sharp", "wind", "dew", "haze", "festoon", "first light"
    };

    @TempDir
    Path temp;

    @Test
    void searchesFindWhatAPlainLookFinds() throws IOException {
        time("make an archive", () -> {
            Archive.create(temp, Desk.PLANETS, Desk.CLOCK).close();
            return List.of();
        });
        time("enter " + PICTURES + " pictures, 1000 a transaction", () -> {
            fill(temp);
            return List.of();
        });
        System.out.printf(Locale.ROOT, "%12d MB catalog%n", Files.size(temp.resolve("catalog.db")) >> 20);
        time("open", () -> {
            Archive.open(temp, Desk.PLANETS, Desk.CLOCK).close();
            return List.of();
        });
        try (Archive archive = Archive.open(temp, Desk.PLANETS, Desk.CLOCK)) {
            measureSome(archive);
            List<ArchivedPicture> all = search(archive, "everything", new Wanted());
            assertThat(all).hasSize(PICTURES);
            LocalDate night = all.get(PICTURES / 2).night().orElseThrow();
            compare(search(archive, "one night", new Wanted().night(night.toString())), all, p -> p.night()
                    .equals(Optional.of(night)));
            compare(
                    search(archive, "meridian 359.5 to 0.5", new Wanted().meridian("2", 359.5, 0.5)),
                    all,
                    p -> p.centralMeridians().containsKey("2")
                            && Math.abs(Math.IEEEremainder(p.centralMeridians().get("2"), 360)) <= 0.5);
            compare(search(archive, "two words", new Wanted().words("storm haze")), all, p -> Words.of(
                            p.notes().orElseThrow())
                    .containsAll(List.of("storm", "haze")));
            compare(search(archive, "marked", new Wanted().marked(true)), all, p -> p.markCount() > 0);
            compare(
                    search(
                            archive,
                            "fitted and not marked",
                            new Wanted().fitted(true).marked(false)),
                    all,
                    p -> p.fitted() && p.markCount() == 0);
            search(archive, "planet, first 200", new Wanted().planet("mars").limit(200));
            search(
                    archive,
                    "planet and meridian, first 200",
                    new Wanted().planet("jupiter").meridian("2", 355, 5).limit(200));
            search(
                    archive,
                    "observer, first 200",
                    new Wanted().observer("Observer 7").limit(200));
            search(archive, "filter, first 200", new Wanted().filter("methane").limit(200));
            search(archive, "not fitted, first 200", new Wanted().fitted(false).limit(200));
        }
    }

    private static void measureSome(Archive archive) {
        for (long id = 50; id <= PICTURES; id += 50) {
            long fit = archive.keepFit(id, Desk.fit(20), "DE405", "Oblate").id();
            if (id % 100 == 0) {
                ArchivedPicture picture = archive.picture(id).orElseThrow();
                double lonDeg = id % 360;
                archive.addMark(Desk.mark(picture, Optional.of(fit), Optional.empty(), lonDeg));
            }
        }
    }

    private static void compare(
            List<ArchivedPicture> found, List<ArchivedPicture> all, Predicate<ArchivedPicture> wanted) {
        assertThat(found).isNotEmpty().isEqualTo(all.stream().filter(wanted).toList());
    }

    private static List<ArchivedPicture> search(Archive archive, String name, Wanted wanted) {
        for (int i = 0; i < 2; i++) {
            archive.pictures(wanted.search());
        }
        return time(name, () -> archive.pictures(wanted.search()));
    }

    private static <T> List<T> time(String name, Supplier<List<T>> work) {
        long start = System.nanoTime();
        List<T> found = work.get();
        double tookMs = (System.nanoTime() - start) / 1e6;
        System.out.printf(Locale.ROOT, "%12.2f ms  %-40s %d found%n", tookMs, name, found.size());
        return found;
    }

    private static void fill(Path folder) {
        Random random = new Random(1);
        try (Catalog catalog = CatalogOpening.inFolder(folder, false, CatalogOpening.PATIENCE, Desk.CLOCK)) {
            PictureEntering entering = new PictureEntering();
            for (int block = 0; block < PICTURES / 1000; block++) {
                int first = block * 1000;
                catalog.write(handle -> {
                    for (int i = first; i < first + 1000; i++) {
                        entering.enter(handle, entry(i, random), Desk.CLOCK.instant());
                    }
                    return first;
                });
            }
        }
    }

    private static PictureEntry entry(int i, Random random) {
        Instant mid = Instant.parse("2005-01-01T00:00:00Z")
                .plusSeconds(random.nextInt(26 * 365) * 86_400L + 64_800 + random.nextInt(43_000));
        String planet = PLANETS[random.nextInt(PLANETS.length)];
        String name = planet + "_" + i + ".png";
        Map<String, Double> meridians = planet.equals("mars")
                ? Map.of("iau", random.nextDouble() * 360)
                : Map.of(
                        "1", random.nextDouble() * 360, "2", random.nextDouble() * 360, "3", random.nextDouble() * 360);
        String notes = WORDS[random.nextInt(WORDS.length)] + " " + WORDS[random.nextInt(WORDS.length)] + " " + i;
        FilingFacts facts = new FilingFacts(
                Optional.of(planet),
                Optional.empty(),
                Optional.of("Observer " + random.nextInt(40)),
                Optional.of("Kit " + random.nextInt(10)),
                Optional.of(FILTERS[random.nextInt(FILTERS.length)]),
                Optional.of(new Rating("6", "Pickering")),
                Optional.empty(),
                Optional.of(notes),
                TimeWish.none(),
                false);
        CaptureTime time = new CaptureTime(
                mid,
                OptionalDouble.of(120),
                TimeSource.FILE_NAME,
                "file name",
                mid.toString(),
                TimeMeaning.MIDDLE,
                false,
                false,
                0.5,
                List.of());
        String evening = Evening.of(mid, Optional.empty()).toString();
        return new PictureEntry(
                String.format(Locale.ROOT, "%064x", i),
                1000,
                "pictures/" + evening.substring(0, 4) + "/" + evening + "/" + name,
                name,
                new PictureHeader("png", 640, 480, 3, 16, false, List.of()),
                Optional.of(planet),
                Optional.of(time),
                Optional.of(LocalDate.parse(evening)),
                meridians,
                List.of(),
                List.of(),
                facts);
    }
}
