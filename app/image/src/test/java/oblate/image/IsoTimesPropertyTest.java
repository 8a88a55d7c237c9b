/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.StringLength;

/** Any instant written into a name comes back, and no text is too strange to look at. */
class IsoTimesPropertyTest {
    private static final CaptureTimes TIMES = new CaptureTimes();
    private static final PictureHeader NOTHING = new PictureHeader("png", 1, 1, 1, 8, false, List.of());

    private static Instant found(String name) {
        return TIMES.find(Path.of("no-such-folder", name), NOTHING, TimeWish.none())
                .time()
                .orElseThrow()
                .midUtc();
    }

    @Property(tries = 500, seed = "11")
    void instantsComeBackFromNames(
            @ForAll @LongRange(min = -300_000_000L, max = 2_840_000_000L) long second,
            @ForAll @IntRange(max = 999) int millis,
            @ForAll @IntRange(min = -56, max = 56) int quarters,
            @ForAll boolean extended,
            @ForAll @StringLength(max = 6) @CharRange(from = 'a', to = 'y') String before) {
        Instant instant = Instant.ofEpochSecond(second, millis * 1_000_000L);
        ZoneOffset offset = ZoneOffset.ofTotalSeconds(quarters * 900);
        String pattern = extended ? "uuuu-MM-dd'T'HH:mm:ss.SSSXXX" : "uuuuMMdd'T'HHmmss.SSSXX";
        String name = before + "_"
                + DateTimeFormatter.ofPattern(pattern, Locale.ROOT).format(instant.atOffset(offset)) + ".png";
        assertThat(found(name)).isEqualTo(instant);
    }

    @Property(tries = 300, seed = "12")
    void tenthsOfMinutesComeBackFromNames(
            @ForAll @LongRange(min = 0, max = 470_000_000L) long tenthMinutes, @ForAll boolean comma) {
        LocalDateTime clock = LocalDateTime.ofEpochSecond(tenthMinutes * 6, 0, ZoneOffset.UTC);
        String name = DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmm", Locale.ROOT)
                        .format(clock) + (comma ? "," : ".") + clock.getSecond() / 6 + "Z.tif";
        assertThat(Duration.between(found(name), clock.toInstant(ZoneOffset.UTC)))
                .isZero();
    }

    @Property(tries = 1500, seed = "13")
    void noTextThrows(@ForAll @StringLength(max = 60) @CharRange(from = ' ', to = 'z') String text) {
        IsoTimes.find(text, IsoTimes.Manner.NAME).forEach(t -> assertThat(text).contains(t.text()));
        IsoTimes.find(text, IsoTimes.Manner.WORDS).forEach(t -> assertThat(text).contains(t.text()));
        IsoTimes.whole(text);
    }

    @Property(tries = 1500, seed = "14")
    void noTextLikeATimeThrows(
            @ForAll @StringLength(min = 10, max = 40) @CharRange(from = '0', to = '3') String digits,
            @ForAll long shape) {
        StringBuilder text = new StringBuilder(digits);
        String marks = "T:-Z+.,T 6924";
        for (int i = 0; i < 12; i++) {
            int at = (int) Math.floorMod(shape >> (3 * i), (long) text.length());
            text.insert(at, marks.charAt((int) Math.floorMod(shape >> (4 * i), (long) marks.length())));
        }
        for (IsoTimes.Manner manner : IsoTimes.Manner.values()) {
            for (IsoTime time : IsoTimes.find("20310324T" + text, manner)) {
                assertThat(time.fault().isPresent() || time.clock().getYear() >= 0)
                        .isTrue();
            }
        }
    }

    @Property(tries = 800, seed = "15")
    void noHeaderValueThrows(
            @ForAll @StringLength(max = 40) String value, @ForAll @StringLength(max = 12) String other) {
        PictureHeader header = new PictureHeader(
                "x",
                1,
                1,
                1,
                8,
                false,
                List.of(
                        new HeaderFact("FITS", "DATE-OBS", value),
                        new HeaderFact("FITS", "MJD-AVG", other),
                        new HeaderFact("FITS", "TIMESYS", other),
                        new HeaderFact("FITS", "TELAPSE", value),
                        new HeaderFact("Exif", "DateTimeOriginal", value),
                        new HeaderFact("Exif", "OffsetTimeOriginal", other),
                        new HeaderFact("Exif", "SubSecTimeOriginal", other),
                        new HeaderFact("Exif", "GPSDateStamp", value),
                        new HeaderFact("Exif", "GPSTimeStamp", other),
                        new HeaderFact("Exif", "ExposureTime", other),
                        new HeaderFact("XMP", "exif:DateTimeOriginal", value)));
        TimeWish wish = new TimeWish(
                Optional.empty(),
                Optional.of(ZoneOffset.UTC),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        TimeFinding finding = TIMES.find(Path.of("a.png"), header, wish);
        assertThat(finding.time().isPresent() || finding.whyNone().isPresent()).isTrue();
    }
}
