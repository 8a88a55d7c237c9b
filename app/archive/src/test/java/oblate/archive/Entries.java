/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

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

/** Rows for a catalog without the files: for tests of searching that need many of them. */
final class Entries {
    static final FilingFacts NOTHING_SAID = new FilingFacts(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            TimeWish.none(),
            false);

    private Entries() {}

    static FilingFacts facts(String observer, String kit, String filter, String notes) {
        return new FilingFacts(
                Optional.empty(),
                Optional.empty(),
                Optional.ofNullable(observer),
                Optional.ofNullable(kit),
                Optional.ofNullable(filter),
                Optional.empty(),
                Optional.empty(),
                Optional.ofNullable(notes),
                TimeWish.none(),
                false);
    }

    static PictureEntry dated(int seed, String utc, Map<String, Double> meridians, FilingFacts facts) {
        Instant mid = Instant.parse(utc);
        LocalDateTime stated = LocalDateTime.ofInstant(mid, ZoneOffset.UTC);
        CaptureTime time = new CaptureTime(
                mid,
                OptionalDouble.of(90),
                TimeSource.FITS,
                "DATE-AVG",
                utc,
                TimeMeaning.MIDDLE,
                false,
                true,
                0.29,
                List.of("a note on the time"));
        TimeClaim claim = new TimeClaim(
                TimeSource.FITS,
                "DATE-AVG",
                utc,
                stated,
                Optional.of(ZoneOffset.ofHours(2)),
                TimeMeaning.MIDDLE,
                OptionalDouble.of(90),
                0.5);
        TimeClaim other = new TimeClaim(
                TimeSource.FILE_NAME,
                "file name",
                "another time",
                stated.plusHours(1),
                Optional.empty(),
                TimeMeaning.UNSTATED,
                OptionalDouble.empty(),
                30);
        return new PictureEntry(
                sha(seed),
                1000 + seed,
                "pictures/row-" + seed + ".png",
                "came as " + seed + ".png",
                header(),
                Optional.of("jupiter"),
                Optional.of(time),
                Optional.of(Evening.of(mid, Optional.empty())),
                meridians,
                List.of(claim, other),
                List.of("file name and DATE-AVG differ by 3600 s"),
                facts);
    }

    static PictureEntry undated(int seed) {
        return new PictureEntry(
                sha(seed),
                1000 + seed,
                "pictures/undated/row-" + seed + ".png",
                "came as " + seed + ".png",
                header(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Map.of(),
                List.of(),
                List.of(),
                NOTHING_SAID);
    }

    private static PictureHeader header() {
        return new PictureHeader("png", 40, 30, 1, 8, false, List.of());
    }

    private static String sha(int seed) {
        byte[] bytes = new byte[32];
        new Random(seed).nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }
}
