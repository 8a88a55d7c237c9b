/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.FilingFacts;
import oblate.archive.MarkSearch;
import oblate.archive.Rating;
import oblate.archive.Site;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.archive.testing.PracticePictures;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables and series of a real archive with pictures, fits and marks. */
class ArchiveTablesTest {
    private static final PlanetModel JUPITER = new Jupiter();
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2025-01-01T00:00:00Z"), ZoneOffset.UTC);
    private static final double OVAL_IAU_DEG = 120;
    private static final double OVAL_RATE_IAU = 0.266 - 0.5;
    private static final Instant START = Instant.parse("2024-12-01T21:00:00Z");

    @TempDir
    static Path folder;

    private static Archive archive;
    private static long withdrawn;

    @BeforeAll
    static void fill() throws IOException {
        archive = Archive.create(folder.resolve("archive"), List.of(JUPITER), CLOCK);
        archive.keepSite(new Site("Garden", 50, 10, 200, Optional.empty()));
        PracticePictures pictures = new PracticePictures(archive, List.of(JUPITER), folder);
        Feature oval = feature("Oval 1", "oval", Optional.of("bright"));
        Feature shadow = feature("A shadow", "shadow", Optional.of("dark"));
        Feature bar = feature("Bar", "bar", Optional.empty());
        for (int i = 0; i < 6; i++) {
            Instant time = START.plusSeconds(i * 5 * 86_400L);
            StoredFit fit = pictures.fitted(pictures.filed(i, facts(time)));
            double lon = OVAL_IAU_DEG + OVAL_RATE_IAU * 5 * i;
            archive.addMark(PracticePictures.mark(JUPITER, fit, Optional.of(oval.id()), lon, -33));
            archive.addMark(PracticePictures.mark(JUPITER, fit, Optional.of(shadow.id()), 10, 5));
            if (i < 2) {
                archive.addMark(PracticePictures.mark(JUPITER, fit, Optional.of(bar.id()), 200, 16, "preceding end"));
            }
            if (i == 3) {
                archive.addMark(PracticePictures.mark(JUPITER, fit, Optional.empty(), 33, 3));
                StoredMark slip =
                        archive.addMark(PracticePictures.mark(JUPITER, fit, Optional.of(oval.id()), 300, -33));
                archive.withdrawMark(slip.id(), "a slip of the hand");
                withdrawn = slip.id();
            }
        }
    }

    @AfterAll
    static void close() {
        archive.close();
    }

    private static Feature feature(String name, String kind, Optional<String> tone) {
        return archive.addFeature(new Feature(0, "jupiter", name, kind, tone, Optional.empty(), Optional.empty()));
    }

    private static FilingFacts facts(Instant time) {
        return new FilingFacts(
                Optional.of("jupiter"),
                Optional.of("Garden"),
                Optional.of("A. Observer"),
                Optional.of("Long tube"),
                Optional.of("green"),
                Optional.of(new Rating("7", "Pickering")),
                Optional.empty(),
                Optional.empty(),
                PracticePictures.takenAt(time),
                false);
    }

    @Test
    void seriesAreOfNamedFeaturesOfTheSurface() {
        List<LongitudeSeries> series = new MarkSeries().ofArchive(archive, JUPITER, Optional.empty());
        assertThat(series).extracting(LongitudeSeries::feature).containsExactly("Bar", "Oval 1");
        assertThat(series.get(1).points()).hasSize(6).allSatisfy(p -> {
            assertThat(p.sigmaDeg()).isEqualTo(0.4);
            assertThat(p.sigmaLatDeg()).hasValue(0.3);
        });
        assertThat(series.get(1).system().id()).isEqualTo("2");
    }

    @Test
    void driftOfArchivedMarksIsTheOneTheyWereMadeWith() {
        LongitudeSeries oval =
                new MarkSeries().ofArchive(archive, JUPITER, Optional.empty()).get(1);
        Drift drift = new DriftFitter().fit(oval);
        // Made as 0.266 − 0.5 deg per day in System III, which is −0.5 in System II; the light time changes by 1e-4 of
        // the systems' difference at most.
        assertThat(drift.rateDegPerDay()).isCloseTo(-0.5, within(1e-4));
        LongitudeSeries inThree = new MarkSeries()
                .ofArchive(archive, JUPITER, JUPITER.globe().system("3"))
                .get(1);
        assertThat(inThree.points().get(0).lonDeg()).isCloseTo(OVAL_IAU_DEG, within(1e-6));
        assertThat(new DriftFitter().fit(inThree).rateDegPerDay()).isCloseTo(OVAL_RATE_IAU, within(1e-6));
    }

    @Test
    void positionsAreTraceableAndCurrentOnly() {
        ReportTable table = new Reports().positions(archive, JUPITER, MarkSearch.all(), Optional.empty());
        assertThat(table.rows()).hasSize(6 + 6 + 2 + 1);
        assertThat(column(table, "mark")).doesNotContain(withdrawn);
        assertThat(column(table, "sha256")).allMatch(v -> ((String) v).matches("[0-9a-f]{64}"));
        assertThat(column(table, "mid_time_utc")).isSortedAccordingTo((a, b) -> ((Instant) a).compareTo((Instant) b));
        int oval = column(table, "feature").indexOf("Oval 1");
        List<Object> row = table.rows().get(oval);
        assertThat(cell(table, row, "lon_sys3_deg")).isEqualTo(120.0);
        assertThat(cell(table, row, "system")).isEqualTo("System II");
        assertThat(cell(table, row, "lon_deg")).isEqualTo(cell(table, row, "lon_sys2_deg"));
        assertThat(cell(table, row, "lat_graphic_deg")).isEqualTo(-33.0);
        // tan c = (66854/71492)² tan g: −29.59 for −33.
        assertThat(cell(table, row, "lat_centric_deg")).isEqualTo(-29.59);
        assertThat(cell(table, row, "tone")).isEqualTo("bright");
        assertThat(cell(table, row, "seeing")).isEqualTo("7");
        assertThat(cell(table, row, "observer")).isEqualTo("A. Observer");
        assertThat(cell(table, row, "fit_trust")).isEqualTo("trusted");
        assertThat(cell(table, row, "time_source")).isEqualTo("user");
        assertThat(table.facts()).containsEntry("ephemeris", "DE405").containsEntry("sites", "Garden");
        assertThat(table.facts().get("times")).contains("middle of the capture");
    }

    @Test
    void equatorialMarkIsStatedInSystemOneUnlessAskedOtherwise() {
        MarkSearch shadow = new MarkSearch(
                Optional.empty(), Optional.empty(), Optional.of("A shadow"), Optional.empty(), Optional.empty(), false);
        ReportTable custom = new Reports().positions(archive, JUPITER, shadow, Optional.empty());
        assertThat(column(custom, "system")).hasSize(6).containsOnly("System I");
        ReportTable wished = new Reports()
                .positions(archive, JUPITER, shadow, JUPITER.globe().system("3"));
        assertThat(column(wished, "lon_deg")).containsOnly(10.0);
        // The central meridian is the picture's, in the row's system.
        ArchivedPicture first = archive.pictureCalled("jupiter-0.png");
        assertThat((Double) column(wished, "cm_deg").get(0))
                .isCloseTo(first.centralMeridians().get("3"), within(0.005));
    }

    private static List<Object> column(ReportTable table, String name) {
        List<Object> values = new ArrayList<>();
        table.rows().forEach(row -> values.add(cell(table, row, name)));
        return values;
    }

    private static Object cell(ReportTable table, List<Object> row, String name) {
        return row.get(table.columns().stream().map(Column::name).toList().indexOf(name));
    }
}
