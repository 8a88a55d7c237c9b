/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which source is believed, and what each of them means. */
class CaptureTimesTest {
    private static final CaptureTimes TIMES = new CaptureTimes();

    @TempDir
    Path folder;

    private static PictureHeader header(String... groupKeyValue) {
        List<HeaderFact> facts = new ArrayList<>();
        for (int i = 0; i < groupKeyValue.length; i += 3) {
            facts.add(new HeaderFact(groupKeyValue[i], groupKeyValue[i + 1], groupKeyValue[i + 2]));
        }
        return new PictureHeader("test", 1, 1, 1, 8, false, facts);
    }

    private static PictureHeader fits(String... keyValue) {
        List<HeaderFact> facts = new ArrayList<>();
        for (int i = 0; i < keyValue.length; i += 2) {
            facts.add(new HeaderFact("FITS", keyValue[i], keyValue[i + 1]));
        }
        return new PictureHeader("fits", 1, 1, 1, 16, false, facts);
    }

    private static PictureHeader exif(String... keyValue) {
        List<HeaderFact> facts = new ArrayList<>();
        for (int i = 0; i < keyValue.length; i += 2) {
            facts.add(new HeaderFact("Exif", keyValue[i], keyValue[i + 1]));
        }
        return new PictureHeader("jpeg", 1, 1, 3, 8, false, facts);
    }

    private static TimeWish wish(String time) {
        return new TimeWish(
                Optional.of(time), Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.empty());
    }

    private static TimeWish zone(String zone) {
        return new TimeWish(
                Optional.empty(),
                Optional.of(ZoneId.of(zone)),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    private static TimeWish meaning(TimeMeaning meaning, double exposureS) {
        return new TimeWish(
                Optional.empty(),
                Optional.empty(),
                Optional.of(meaning),
                OptionalDouble.of(exposureS),
                Optional.empty());
    }

    private static TimeWish pattern(String pattern) {
        return new TimeWish(
                Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty(), Optional.of(pattern));
    }

    private TimeFinding find(String name, PictureHeader header, TimeWish wish) {
        return TIMES.find(folder.resolve(name), header, wish);
    }

    private CaptureTime time(String name, PictureHeader header, TimeWish wish) {
        TimeFinding finding = find(name, header, wish);
        assertThat(finding.time()).as("%s", finding.whyNone()).isPresent();
        return finding.time().get();
    }

    private CaptureTime time(PictureHeader header) {
        return time("picture.fits", header, TimeWish.none());
    }

    private static Instant utc(String text) {
        return Instant.parse(text);
    }

    @Test
    void theUsersWordBeatsAllAndDisagreementsAreTold() {
        TimeFinding finding = find(
                "20310324T210530Z.fits", fits("DATE-AVG", "2031-03-24T20:05:30"), wish("2031-03-24T22:05:30+01:00"));
        CaptureTime time = finding.time().orElseThrow();
        assertThat(time.source()).isEqualTo(TimeSource.USER);
        assertThat(time.midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(finding.claims())
                .extracting(TimeClaim::source)
                .containsExactly(TimeSource.USER, TimeSource.FITS, TimeSource.FILE_NAME);
        assertThat(finding.disagreements())
                .singleElement()
                .asString()
                .contains("DATE-AVG")
                .contains("3600 s")
                .contains("one hour, likely a zone");
    }

    @Test
    void theUsersWordMustBeATime() {
        for (String bad : List.of(
                "2031-02-30T21:05:30Z",
                "2031-03-24T24:00:00Z",
                "2031-03-24T21:60:00Z",
                "2031-03-24T21:05:30",
                "24.03.2031 21:05",
                "yesterday",
                "",
                "2031-03-24",
                "2031-03-24T23:59:60Z",
                "2031-03-24T21:05:61Z",
                "2031-03-24T21:05:30+19:00",
                "2031-03-24T21:05:30ZZ")) {
            ProblemException refusal =
                    catchThrowableOfType(ProblemException.class, () -> find("a.png", header(), wish(bad)));
            assertThat(refusal).as(bad).isNotNull();
            assertThat(refusal.kind()).as(bad).isEqualTo(ImageProblem.BAD_TIME);
            assertThat(refusal).hasMessageContaining("a.png").hasMessageContaining("2031-03-24T21:05:30Z");
        }
    }

    @Test
    void meanAndMiddleOfFits() {
        CaptureTime mean = time(
                fits("DATE-OBS", "2031-03-24T21:04:30", "DATE-AVG", "2031-03-24T21:05:30.250", "EXPTIME", "120.5"));
        assertThat(mean.midUtc()).isEqualTo(utc("2031-03-24T21:05:30.250Z"));
        assertThat(mean.statedMeaning()).isEqualTo(TimeMeaning.MIDDLE);
        assertThat(mean.meaningAssumed()).isFalse();
        assertThat(mean.exposureS()).hasValue(120.5);
        CaptureTime span = time(fits("DATE-BEG", "2031-03-24T21:04:30", "DATE-END", "2031-03-24T21:06:30"));
        assertThat(span.midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(span.exposureS()).hasValue(120);
        assertThat(span.place()).isEqualTo("DATE-BEG and DATE-END");
        CaptureTime end = time(fits("DATE-END", "2031-03-24T21:06:30", "XPOSURE", "60"));
        assertThat(end.midUtc()).isEqualTo(utc("2031-03-24T21:06:00Z"));
        CaptureTime elapsed = time(fits("DATE-BEG", "2031-03-24T21:04:30", "XPOSURE", "60", "TELAPSE", "120"));
        assertThat(elapsed.midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
    }

    /** MJD 51544.5 is 2000-01-01T12:00 (IAU: J2000.0 is JD 2451545.0, MJD is JD less 2400000.5). */
    @Test
    void modifiedJulianDates() {
        assertThat(time(fits("MJD-AVG", "51544.5")).midUtc()).isEqualTo(utc("2000-01-01T12:00:00Z"));
        assertThat(time(fits("MJD-AVG", "5.15445D4")).midUtc()).isEqualTo(utc("2000-01-01T12:00:00Z"));
        CaptureTime later = time(fits("MJD-AVG", "51544.50001157407"));
        assertThat(java.time.Duration.between(utc("2000-01-01T12:00:01Z"), later.midUtc())
                        .abs()
                        .toNanos())
                .isLessThan(1_000);
        TimeFinding two =
                find("a.fits", fits("DATE-AVG", "2000-01-01T12:00:00", "MJD-AVG", "51544.50010"), TimeWish.none());
        assertThat(two.disagreements()).singleElement().asString().contains("MJD-AVG");
    }

    @Test
    void dateObsIsTheStartByCustomAndThatIsSaid() {
        CaptureTime time = time(fits("DATE-OBS", "2031-03-24T21:04:30.00", "EXPTIME", "120"));
        assertThat(time.midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(time.statedMeaning()).isEqualTo(TimeMeaning.START);
        assertThat(time.meaningAssumed()).isTrue();
        assertThat(time.uncertaintyS()).isCloseTo(60 / Math.sqrt(3), within(0.01));
        assertThat(time.notes()).anyMatch(n -> n.contains("DATE-OBS") && n.contains("start"));
        CaptureTime told = time(
                "a.fits", fits("DATE-OBS", "2031-03-24T21:04:30.00", "EXPTIME", "120"), meaning(TimeMeaning.MIDDLE, 9));
        assertThat(told.midUtc()).isEqualTo(utc("2031-03-24T21:04:30Z"));
        assertThat(told.meaningAssumed()).isFalse();
        assertThat(told.uncertaintyS()).isLessThan(0.01);
        PictureHeader commented = header(
                "FITS",
                "DATE-OBS",
                "2031-03-24T21:04:30",
                "FITS",
                "EXPTIME",
                "120",
                "FITS comment",
                "DATE-OBS",
                "UTC start of exposure");
        assertThat(time(commented).meaningAssumed()).isFalse();
        assertThat(time(commented).midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
    }

    @Test
    void dateObsWithoutALengthIsUncertain() {
        CaptureTime time = time(fits("DATE-OBS", "2031-03-24T21:04:30"));
        assertThat(time.midUtc()).isEqualTo(utc("2031-03-24T21:04:30Z"));
        assertThat(time.uncertaintyS()).isBetween(59.0, 61.0);
        CaptureTime frame = time(fits("DATE-OBS", "2031-03-24T21:04:30", "EXPTIME", "0.01"));
        assertThat(frame.exposureS()).isEmpty();
        assertThat(frame.notes()).anyMatch(n -> n.contains("one frame"));
    }

    @Test
    void fitsDatesThatAreNoTimes() {
        for (String bad : List.of("24/03/31", "2031-03-24", "2031-02-30T01:02:03", "2031-03-24T24:00:00", "noon")) {
            TimeFinding finding = find("a.fits", fits("DATE-OBS", bad), TimeWish.none());
            assertThat(finding.time()).as(bad).isEmpty();
            assertThat(finding.whyNone().orElseThrow())
                    .as(bad)
                    .contains("DATE-OBS")
                    .contains(bad)
                    .contains("20310324T210530Z");
        }
        assertThat(time(fits("DATE-OBS", "2031-03-24", "TIME-OBS", "21:04:30.5", "EXPTIME", "60"))
                        .midUtc())
                .isEqualTo(utc("2031-03-24T21:05:00.500Z"));
    }

    @Test
    void otherTimeScalesAreNotTakenForUtc() {
        TimeFinding finding =
                find("a.fits", fits("DATE-AVG", "2031-03-24T21:05:30", "TIMESYS", "TT"), zone("Europe/Berlin"));
        assertThat(finding.time()).isEmpty();
        assertThat(finding.whyNone().orElseThrow()).contains("TIMESYS").contains("TT");
        assertThat(time(fits("DATE-AVG", "2031-03-24T21:05:30", "TIMESYS", "UTC"))
                        .midUtc())
                .isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(time(fits("DATE-AVG", "2031-03-24T21:05:30", "TIMSYER", "3", "TIMRDER", "4"))
                        .uncertaintyS())
                .isCloseTo(5, within(0.02));
    }

    @Test
    void exifNeedsItsOffset() {
        CaptureTime time = time(
                "a.jpg",
                exif(
                        "DateTimeOriginal",
                        "2031:03:24 22:05:30",
                        "OffsetTimeOriginal",
                        "+01:00",
                        "SubSecTimeOriginal",
                        "05"),
                TimeWish.none());
        assertThat(time.midUtc()).isEqualTo(utc("2031-03-24T21:05:30.050Z"));
        assertThat(time.meaningAssumed()).isTrue();
        assertThat(time.statedMeaning()).isEqualTo(TimeMeaning.UNSTATED);
        TimeFinding without = find("a.jpg", exif("DateTimeOriginal", "2031:03:24 22:05:30"), TimeWish.none());
        assertThat(without.time()).isEmpty();
        assertThat(without.claims()).singleElement().satisfies(c -> assertThat(c.offset())
                .isEmpty());
        assertThat(without.whyNone().orElseThrow()).contains("no zone");
        CaptureTime assumed = time("a.jpg", exif("DateTimeOriginal", "2031:07:24 22:05:30"), zone("Europe/Berlin"));
        assertThat(assumed.midUtc()).as("summer time").isEqualTo(utc("2031-07-24T20:05:30Z"));
        assertThat(assumed.zoneAssumed()).isTrue();
    }

    @Test
    void exifWithoutOffsetBesideANameWithOne() {
        TimeFinding finding =
                find("20310324T210530Z.jpg", exif("DateTimeOriginal", "2031:03:24 22:05:31"), TimeWish.none());
        CaptureTime time = finding.time().orElseThrow();
        assertThat(time.source()).isEqualTo(TimeSource.FILE_NAME);
        assertThat(time.notes()).anyMatch(n -> n.contains("zone +01:00"));
        assertThat(finding.disagreements()).isEmpty();
    }

    @Test
    void satelliteClockAndXmp() {
        assertThat(time(
                                "a.jpg",
                                exif(
                                        "DateTimeOriginal", "2031:03:24 22:05:30",
                                        "GPSDateStamp", "2031:03:24",
                                        "GPSTimeStamp", "21:05:30.5"),
                                TimeWish.none())
                        .midUtc())
                .isEqualTo(utc("2031-03-24T21:05:30.500Z"));
        CaptureTime xmp = time(
                "a.jpg",
                header(
                        "XMP",
                        "exif:DateTimeOriginal",
                        "2031-03-24T22:05:30+01:00",
                        "Exif",
                        "DateTimeOriginal",
                        "2031:03:24 22:05:30"),
                TimeWish.none());
        assertThat(xmp.midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(xmp.place()).startsWith("XMP");
    }

    @Test
    void timesOfProcessingAndUnsetOnesAreNotLookedAt() {
        TimeFinding finding = find(
                "a.jpg",
                exif(
                        "DateTime",
                        "2031:03:24 22:05:30",
                        "OffsetTime",
                        "+00:00",
                        "DateTimeDigitized",
                        "2031:03:24 22:05:30",
                        "DateTimeOriginal",
                        "0000:00:00 00:00:00"),
                TimeWish.none());
        assertThat(finding.claims()).isEmpty();
        assertThat(finding.time()).isEmpty();
    }

    @Test
    void clocksPutForwardAndBack() {
        TimeFinding gap = find("a.jpg", exif("DateTimeOriginal", "2024:03:31 02:30:00"), zone("Europe/Berlin"));
        assertThat(gap.time()).isEmpty();
        assertThat(gap.whyNone().orElseThrow()).contains("forward");
        TimeFinding twice = find("a.jpg", exif("DateTimeOriginal", "2024:10:27 02:30:00"), zone("Europe/Berlin"));
        assertThat(twice.time()).isEmpty();
        assertThat(twice.whyNone().orElseThrow())
                .contains("twice")
                .contains("+02:00")
                .contains("+01:00");
        assertThat(time("a.jpg", exif("DateTimeOriginal", "2024:10:27 03:30:00"), zone("Europe/Berlin"))
                        .midUtc())
                .isEqualTo(utc("2024-10-27T02:30:00Z"));
    }

    @Test
    void namesInBasicAndExtendedForm() {
        assertThat(time("x_20040312T075218Z.png", header(), TimeWish.none()).midUtc())
                .isEqualTo(utc("2004-03-12T07:52:18Z"));
        CaptureTime tenth = time("pj_20120104T1822.5Z.tif", header(), TimeWish.none());
        assertThat(tenth.midUtc()).isEqualTo(utc("2012-01-04T18:22:30Z"));
        assertThat(tenth.uncertaintyS()).isCloseTo(3 / Math.sqrt(3), within(1e-9));
        assertThat(time("a2031-03-24T21:05:30.25+05:30b.png", header(), TimeWish.none())
                        .midUtc())
                .isEqualTo(utc("2031-03-24T15:35:30.250Z"));
        assertThat(time("20310324T2105Z-green.png", header(), TimeWish.none()).midUtc())
                .isEqualTo(utc("2031-03-24T21:05:00Z"));
        assertThat(time("20310324T210530+0130.png", header(), TimeWish.none()).midUtc())
                .isEqualTo(utc("2031-03-24T19:35:30Z"));
    }

    @Test
    void namesThatAreNoTimesOrHaveNoZone() {
        assertThat(find("20310324T210530.png", header(), TimeWish.none())
                        .whyNone()
                        .orElseThrow())
                .contains("no zone");
        assertThat(time("20310324T210530.png", header(), zone("UTC")).midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(find("20310230T210530Z.png", header(), TimeWish.none())
                        .whyNone()
                        .orElseThrow())
                .contains("no such day");
        TimeFinding counted = find("20310324T210530-12.png", header(), TimeWish.none());
        assertThat(counted.time()).isEmpty();
        assertThat(counted.whyNone().orElseThrow()).contains("running number");
        for (String name :
                List.of("2031-03-24T21-05-30Z.png", "120310324T210530Z.png", "20310324T2105300Z.png", "IMG_0001.png")) {
            assertThat(find(name, header(), TimeWish.none()).claims()).as(name).isEmpty();
        }
    }

    @Test
    void theUsersPatternComesFirst() {
        assertThat(time("jup 24.03.31 at 21h05m30 UT.png", header(), pattern("dd.MM.yy 'at' HH'h'mm'm'ss 'UT'"))
                        .midUtc())
                .isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(time("n2031-03-24-2105_1+01.png", header(), pattern("yyyy-MM-dd-HHmm'_1'x"))
                        .midUtc())
                .isEqualTo(utc("2031-03-24T20:05:00Z"));
        assertThat(find("x2031-02-30-210530.png", header(), pattern("yyyy-MM-dd-HHmmss"))
                        .claims())
                .isEmpty();
        assertThat(time("20310324T210530Z.png", header(), pattern("yyyy/MM/dd HH"))
                        .source())
                .isEqualTo(TimeSource.FILE_NAME);
        ProblemException refusal =
                catchThrowableOfType(ProblemException.class, () -> find("a.png", header(), pattern("yyyy-qqqqqqqq{")));
        assertThat(refusal.kind()).isEqualTo(ImageProblem.BAD_TIME);
        CaptureTime minutes = time("2031-03-24-2105Z.png", header(), pattern("yyyy-MM-dd-HHmmX"));
        assertThat(minutes.uncertaintyS()).isCloseTo(30 / Math.sqrt(3), within(1e-9));
    }

    @Test
    void notesBesideThePicture() throws IOException {
        Files.writeString(
                folder.resolve("night.txt"),
                "Seeing 6/10.\nStart 2031-03-24T21:04:30Z, exposure 120 s, filter green\n");
        CaptureTime start = time("night.png", header(), TimeWish.none());
        assertThat(start.source()).isEqualTo(TimeSource.SIDE_NOTE);
        assertThat(start.place()).isEqualTo("night.txt line 2");
        assertThat(start.midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(start.meaningAssumed()).isFalse();
        Files.writeString(folder.resolve("b.png.txt"), "begin 2031-03-24 21:04 UT\nend 2031-03-24 21:07 UT");
        CaptureTime span = time("b.png", header(), TimeWish.none());
        assertThat(span.midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        assertThat(span.exposureS()).hasValue(180);
        Files.writeString(folder.resolve("c.txt"), "2031-03-24T21:05:30Z mid-time; written 2031-03-25T01:00:00Z");
        assertThat(time("c.png", header(), TimeWish.none()).midUtc()).isEqualTo(utc("2031-03-24T21:05:30Z"));
        Files.write(folder.resolve("d.txt"), new byte[] {(byte) 0xff, 0, 1, 2, (byte) 0xfe});
        assertThat(find("d.png", header(), TimeWish.none()).time()).isEmpty();
        Files.writeString(folder.resolve("e_20310324T210430Z.txt"), "capture length 2 min");
        CaptureTime lengthOnly = time("e_20310324T210430Z.png", header(), meaning(TimeMeaning.START, 9));
        assertThat(lengthOnly.midUtc()).as("the note's length beats the wish").isEqualTo(utc("2031-03-24T21:05:30Z"));
    }

    @Test
    void causesOfDisagreement() {
        assertThat(cause("2031-03-24T21:05:30", "20310325T210530Z", "120")).contains("one day");
        assertThat(cause("2031-03-24T21:05:30", "20310324T210430Z", "120")).contains("half the capture's length");
        assertThat(cause("2031-03-24T21:05:30", "20310324T210330Z", "120")).contains("whole length");
        assertThat(cause("2031-03-24T21:05:30", "20310324T230530Z", "120")).contains("2 hours, likely a zone");
        assertThat(cause("2031-03-24T21:05:30", "20310325T023530Z", "120")).contains("half an hour");
        assertThat(cause("2031-03-24T21:05:30", "20310324T211213Z", "120")).contains("no usual reason");
        assertThat(find("20310324T2105.5Z.fits", fits("DATE-AVG", "2031-03-24T21:05:33.1"), TimeWish.none())
                        .disagreements())
                .isEmpty();
    }

    private String cause(String mean, String name, String exposure) {
        List<String> told = find(name + ".fits", fits("DATE-AVG", mean, "EXPTIME", exposure), TimeWish.none())
                .disagreements();
        assertThat(told).hasSize(1);
        return told.get(0);
    }

    /** 2016-12-31T23:59:60 was a leap second (IERS Bulletin C 52). */
    @Test
    void leapSeconds() {
        CaptureTime time = time("a.png", header(), wish("2016-12-31T23:59:60Z"));
        assertThat(time.midUtc()).isEqualTo(utc("2017-01-01T00:00:00Z"));
        assertThat(time.notes()).anyMatch(n -> n.contains("leap second"));
        assertThat(time("a.png", header(), wish("2017-01-01T00:59:60+01:00")).midUtc())
                .isEqualTo(utc("2017-01-01T00:00:00Z"));
        assertThat(time("20161231T235960Z.png", header(), TimeWish.none()).midUtc())
                .isEqualTo(utc("2017-01-01T00:00:00Z"));
        assertThat(find("20171231T235960Z.png", header(), TimeWish.none()).time())
                .isEmpty();
    }

    @Test
    void assumedMiddleIsUncertainByTheLengthWhenItIsKnown() {
        TimeWish length = new TimeWish(
                Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.of(120), Optional.empty());
        CaptureTime time = time("20310324T210530Z.png", header(), length);
        assertThat(time.uncertaintyS()).isCloseTo(Math.hypot(60 / Math.sqrt(3), 0.5 / Math.sqrt(3)), within(1e-9));
        CaptureTime end = time("20310324T210530Z.png", header(), meaning(TimeMeaning.END, 120));
        assertThat(end.midUtc()).isEqualTo(utc("2031-03-24T21:04:30Z"));
        assertThat(end.uncertaintyS()).isCloseTo(0.5 / Math.sqrt(3), within(1e-9));
    }
}
