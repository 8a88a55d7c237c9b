/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import static oblate.tables.RoundTripTest.written;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import oblate.base.PluginHost;
import oblate.report.Column;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import org.junit.jupiter.api.Test;

class TextFormatTest {
    private static final List<Column> COLUMNS = List.of(
            new Column("feature", "Feature", "", "", "name", -1),
            new Column("lon_deg", "Lon", "deg", "", "longitude", 2),
            new Column("rejected", "Left out", "", "", "count", 0),
            new Column("empty", "Nothing", "", "", "never there", -1));

    private static ReportTable table() {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("planet", "Jupiter");
        facts.put("systems", "System II");
        return new ReportTable(
                "Drifts",
                facts,
                COLUMNS,
                List.of(Arrays.asList("GRS", -7.125, 2L, null), Arrays.asList("白斑 1", 123.4, 12L, null), Arrays.asList("x", null, null, null)));
    }

    @Test
    void numbersStandBelowEachOtherAndWideSignsCountTwice() {
        assertThat(written(new TextFormat(), table()))
                .isEqualTo(
                        """
                        Drifts

                        planet   Jupiter
                        systems  System II

                        Feature     Lon  Left out
                                    deg
                        -------  ------  --------
                        GRS       -7.12         2
                        白斑 1   123.40        12
                        x
                        """);
    }

    @Test
    void wideTableIsBrokenIntoBlocksWithRowNumbers() {
        List<Column> columns = List.of(
                new Column("a", "A", "", "", "", -1), new Column("b", "B", "", "", "", -1), new Column("c", "C", "", "", "", -1));
        String text = written(
                new TextFormat(40), new ReportTable("", Map.of(), columns, List.of(List.of("a".repeat(25), "b".repeat(25), "c".repeat(5)))));
        assertThat(text)
                .isEqualTo(
                        """
                        #  A
                        -  -------------------------
                        1  aaaaaaaaaaaaaaaaaaaaaaaaa

                        #  B                          C
                        -  -------------------------  -----
                        1  bbbbbbbbbbbbbbbbbbbbbbbbb  ccccc
                        """);
    }

    @Test
    void noRowsAreSaid() {
        assertThat(written(new TextFormat(), new ReportTable("Drifts", Map.of(), COLUMNS, List.of())))
                .isEqualTo("Drifts\n\n(no rows)\n");
    }

    @Test
    void formatsAreFoundByThePluginHost() {
        try (PluginHost host = PluginHost.bundledOnly()) {
            assertThat(host.load(ReportFormat.class)).extracting(ReportFormat::id).contains("text", "csv", "json");
            assertThat(host.refusals()).isEmpty();
        }
    }
}
