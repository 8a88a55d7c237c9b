/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import static oblate.tables.RoundTripTest.written;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkFile;
import oblate.drift.SystemNames;
import oblate.planet.jupiter.Jupiter;
import oblate.report.Column;
import oblate.report.DriftTable;
import oblate.report.ReportTable;
import org.junit.jupiter.api.Test;

/** The examples in the documents are what the program does. */
class DocumentedExamplesTest {
    private static final Path DOCS = Path.of("..", "..", "docs");

    /**
     * The result block was compared with a weighted least-squares line computed by an independent program without the false mark: 0.286778 ± 0.006241 deg per day, longitude 359.8753 ±
     * 0.1361, root mean square 0.3334, −7.443 m/s. The stated error of the rate holds besides what the choice among the kinds of motion leaves open.
     */
    @Test
    void driftExample() throws IOException {
        String page = Files.readString(DOCS.resolve("drift.md"));
        Jupiter jupiter = new Jupiter();
        List<LongitudeSeries> series = MarkFile.read(
                        new StringReader(block(page, "csv")), "drift.md", jupiter, SystemNames.named(jupiter, "II"))
                .series();
        assertThat(series).hasSize(1);
        Drift drift = new DriftFitter().fit(series.get(0));
        ReportTable table = DriftTable.of(jupiter, List.of(drift));
        List<String> header = csvLine(table, 0);
        List<String> values = csvLine(table, 1);
        String result = block(page, "result");
        assertThat(result.lines()).hasSize(12).allSatisfy(line -> {
            String[] pair = line.split(" +");
            assertThat(values.get(header.indexOf(pair[0]))).as(pair[0]).isEqualTo(pair[1]);
        });
        assertThat(drift.states().get(6).used()).isFalse();
        assertThat(drift.curve().sigmaMeanRateDegPerDay(drift.firstUtc(), drift.lastUtc()))
                .as("error of the line alone")
                .isCloseTo(0.006241, within(1e-5));
    }

    @Test
    void reportExample() throws IOException {
        String page = Files.readString(DOCS.resolve("report.md"));
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("planet", "Jupiter");
        facts.put("longitudes", "System II, west");
        ReportTable table = new ReportTable(
                "",
                facts,
                List.of(
                        new Column("feature", "Feature", "", "meta.id", "name", -1),
                        new Column("rate_deg_per_30d", "deg/30 d", "0.03333333deg/d", "phys.veloc.ang", "drift", 1),
                        new Column("marks", "Marks", "", "meta.number", "count", 0)),
                List.of(Arrays.asList("Oval 1", -0.25, 3L), Arrays.asList("=x", 12.375, null)));
        assertThat(written(new TextFormat(), table)).isEqualTo(block(page, "text"));
        assertThat(written(new CsvFormat(), table).replace("\r\n", "\n")).isEqualTo(block(page, "csv"));
    }

    private static List<String> csvLine(ReportTable table, int index) {
        return Arrays.asList(
                written(new CsvFormat(), table).split("\r\n")[index].split(",", -1));
    }

    /** The first fenced block of a kind. */
    private static String block(String page, String kind) {
        String opened = page.replace("\r\n", "\n").split("```" + kind + "\n", 2)[1];
        return opened.substring(0, opened.indexOf("```"));
    }
}
