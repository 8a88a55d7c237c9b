/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How sure a time is, and how start and end become the middle. */
class TimePrecisionTest {
    private static final Path NAMELESS = Path.of("no-such-folder", "picture.png");

    private static TimeFinding find(String... groupKeyValue) {
        List<HeaderFact> facts = new ArrayList<>();
        for (int i = 0; i < groupKeyValue.length; i += 3) {
            facts.add(new HeaderFact(groupKeyValue[i], groupKeyValue[i + 1], groupKeyValue[i + 2]));
        }
        PictureHeader header = new PictureHeader("x", 1, 1, 1, 8, false, facts);
        return new CaptureTimes().find(NAMELESS, header, TimeWish.none());
    }

    /** Half the last digit over the square root of three: the standard deviation of an even spread. */
    @ParameterizedTest
    @CsvSource({
        "DATE-AVG, 2031-03-24T21:05, 30",
        "DATE-AVG, 2031-03-24T21:05:30, 0.5",
        "DATE-AVG, 2031-03-24T21:05:30.2, 0.05",
        "DATE-AVG, 2031-03-24T21:05:30.250, 0.0005",
        "MJD-AVG, 63311.87, 432",
        "MJD-AVG, 63311.87882, 0.432",
    })
    void theLastDigitSaysHowSureFitsIs(String key, String value, double halfDigitS) {
        assertThat(find("FITS", key, value).time().orElseThrow().uncertaintyS())
                .isCloseTo(halfDigitS / Math.sqrt(3), within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"'', 0.5", "7, 0.05", "25, 0.005", "250, 0.0005"})
    void theLastDigitSaysHowSureExifIs(String fraction, double halfDigitS) {
        TimeFinding finding = find(
                "Exif",
                "DateTimeOriginal",
                "2031:03:24 22:05:30",
                "Exif",
                "OffsetTimeOriginal",
                "+01:00",
                "Exif",
                "SubSecTimeOriginal",
                fraction);
        CaptureTime time = finding.time().orElseThrow();
        assertThat(time.uncertaintyS()).isCloseTo(halfDigitS / Math.sqrt(3), within(1e-9));
        double seconds = fraction.isEmpty() ? 0 : Double.parseDouble("0." + fraction);
        assertThat(time.midUtc())
                .isEqualTo(Instant.parse("2031-03-24T21:05:30Z").plusMillis(Math.round(seconds * 1000)));
    }

    @Test
    void anOffsetThatDoesNotExistIsToldAndNotUsed() {
        TimeFinding finding =
                find("Exif", "DateTimeOriginal", "2031:03:24 22:05:30", "Exif", "OffsetTimeOriginal", "+19:00");
        assertThat(finding.time()).isEmpty();
        assertThat(finding.whyNone().orElseThrow()).contains("+19:00").contains("no such offset");
    }

    @Test
    void aCameraClockThatTheSatellitesContradictIsTold() {
        TimeFinding finding = find(
                "Exif",
                "DateTimeOriginal",
                "2031:03:24 22:05:30",
                "Exif",
                "OffsetTimeOriginal",
                "+00:00",
                "Exif",
                "GPSDateStamp",
                "2031:03:24",
                "Exif",
                "GPSTimeStamp",
                "21:05:30");
        assertThat(finding.time().orElseThrow().place()).isEqualTo("DateTimeOriginal");
        assertThat(finding.disagreements())
                .singleElement()
                .asString()
                .contains("GPSTimeStamp")
                .contains("one hour, likely a zone");
    }

    @Property(tries = 200, seed = "71")
    void startAndEndAreHalfALengthFromTheMiddle(
            @ForAll @LongRange(min = 0, max = 2_000_000_000L) long second,
            @ForAll @IntRange(min = 1, max = 7_200) int lengthS,
            @ForAll boolean start) {
        LocalDateTime clock = LocalDateTime.ofEpochSecond(second, 0, ZoneOffset.UTC);
        String text = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss", Locale.ROOT)
                .format(clock);
        CaptureTime time = find(
                        "FITS", start ? "DATE-BEG" : "DATE-END", text, "FITS", "XPOSURE", Integer.toString(lengthS))
                .time()
                .orElseThrow();
        assertThat(Duration.between(clock.toInstant(ZoneOffset.UTC), time.midUtc()))
                .isEqualTo(Duration.ofMillis((start ? 500L : -500L) * lengthS));
        assertThat(time.meaningAssumed()).isFalse();
        assertThat(time.statedMeaning()).isEqualTo(start ? TimeMeaning.START : TimeMeaning.END);
    }
}
