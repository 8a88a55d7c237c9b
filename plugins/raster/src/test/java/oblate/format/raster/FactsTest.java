/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import static org.assertj.core.api.Assertions.assertThat;

import oblate.image.HeaderFact;
import oblate.image.PictureHeader;
import org.junit.jupiter.api.Test;

/** What the files of {@code make_samples.py} say about themselves. */
class FactsTest {

    @Test
    void pngTellsExifXmpTextsAndItsOwnDate() {
        PictureHeader header = SampleFilesTest.decode("facts.png").header();
        assertThat(header.fact("Exif", "DateTimeOriginal")).contains("2031:03:24 22:05:30");
        assertThat(header.fact("Exif", "OffsetTimeOriginal")).contains("+01:00");
        assertThat(header.fact("Exif", "SubSecTimeOriginal")).contains("25");
        assertThat(header.fact("Exif", "ExposureTime")).contains("0.02");
        assertThat(header.fact("Exif", "Make")).contains("maker");
        assertThat(header.fact("Exif", "Software")).contains("make_samples");
        assertThat(header.fact("Exif", "Orientation")).contains("6");
        assertThat(header.fact("XMP", "exif:DateTimeOriginal")).contains("2031-03-24T22:05:30.25+01:00");
        assertThat(header.fact("XMP", "dc:creator")).contains("A. Observer");
        assertThat(header.fact("PNG", "Title")).contains("an invented planet");
        assertThat(header.fact("PNG", "Comment")).contains("seeing fair");
        assertThat(header.fact("PNG", "tIME")).contains("2031-03-25T01:02:03Z");
        assertThat(header.widthPx()).as("orientation 6 exchanges the sides").isEqualTo(SampleFilesTest.HEIGHT);
    }

    @Test
    void jpegTellsExifAndTheSatelliteClock() {
        PictureHeader header = SampleFilesTest.decode("facts.jpg").header();
        assertThat(header.fact("Exif", "DateTimeOriginal")).contains("2031:03:24 21:05:30");
        assertThat(header.fact("Exif", "OffsetTimeOriginal")).isEmpty();
        assertThat(header.fact("Exif", "ExposureTime")).contains("120");
        assertThat(header.fact("Exif", "GPSDateStamp")).contains("2031:03:24");
        assertThat(header.fact("Exif", "GPSTimeStamp")).contains("21:05:30.5");
        assertThat(header.fact("Exif", "Artist")).contains("A. Observer");
        assertThat(header.fact("Exif", "ImageDescription")).contains("an invented planet");
    }

    @Test
    void tiffTellsItsTagsAndThatItHasMorePages() {
        PictureHeader header = SampleFilesTest.decode("pages3.tif").header();
        assertThat(header.fact("Exif", "ImageDescription")).contains("an invented planet");
        assertThat(header.fact("Exif", "Software")).contains("make_samples");
        assertThat(header.fact("Exif", "DateTime")).contains("2031:03:24 23:00:00");
        assertThat(header.fact("TIFF", "Pages").orElseThrow()).startsWith("3,");
    }

    @Test
    void entitiesAreNotResolvedAndTextsDoNotSwell() {
        PictureHeader header = SampleFilesTest.decode("entities.png").header();
        assertThat(header.facts()).extracting(HeaderFact::value).noneMatch(v -> v.contains("boom"));
        assertThat(header.fact("XMP", "dc:title")).isEmpty();
        assertThat(header.fact("PNG", "Bomb").orElseThrow()).hasSize(2000);
    }
}
