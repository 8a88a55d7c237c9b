/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ReportTableTest {
    private static Column column(String name) {
        return new Column(name, name, "", "", name, -1);
    }

    @Test
    void whatAllRowsSayIsSaidOnceAndNothingElse() {
        ReportTable table = new ReportTable(
                "Title",
                Map.of("site", "here"),
                List.of(column("body"), column("ephemeris"), column("leap_seconds"), column("note")),
                List.of(Arrays.asList("sun", "A", "B", null), Arrays.asList("sun", "A", "C", null)));
        ReportTable said = table.saidOnce(Set.of("ephemeris", "leap_seconds", "note"));
        assertThat(said.facts()).isEqualTo(Map.of("site", "here", "ephemeris", "A"));
        assertThat(said.columns()).extracting(Column::name).containsExactly("body", "leap_seconds", "note");
        assertThat(said.rows()).containsExactly(Arrays.asList("sun", "B", null), Arrays.asList("sun", "C", null));
    }

    @Test
    void aFactThatIsThereAlreadyIsKept() {
        ReportTable table = new ReportTable(
                "Title",
                Map.of("leap seconds", "bundled"),
                List.of(column("leap_seconds")),
                List.of(List.<Object>of("x"), List.<Object>of("x")));
        assertThat(table.saidOnce(Set.of("leap_seconds")).facts()).isEqualTo(Map.of("leap seconds", "bundled"));
    }
}
