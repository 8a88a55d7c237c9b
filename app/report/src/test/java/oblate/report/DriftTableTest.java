/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.planet.jupiter.Jupiter;
import oblate.planet.uranus.Uranus;
import oblate.sky.PlanetModel;
import org.junit.jupiter.api.Test;

class DriftTableTest {
    private static final PlanetModel JUPITER = new Jupiter();

    private static Drift drift(PlanetModel planet, boolean latitudes) {
        List<LongitudePoint> points = new ArrayList<>();
        for (int day = 0; day < 40; day += 3) {
            points.add(new LongitudePoint(
                    Instant.parse("2024-11-01T22:00:00Z").plusSeconds(day * 86_400L),
                    (355 + 0.05 * day) % 360,
                    0.4,
                    latitudes ? OptionalDouble.of(-22.5) : OptionalDouble.empty(),
                    latitudes ? OptionalDouble.of(0.4) : OptionalDouble.empty()));
        }
        return new DriftFitter()
                .fit(new LongitudeSeries("Red spot", planet, planet.globe().systems().get(planet.globe().systems().size() > 1 ? 1 : 0), points));
    }

    @Test
    void fixedColumnsComeFirstInTheirOrder() {
        ReportTable table = new Reports().drifts(JUPITER, List.of(drift(JUPITER, true)));
        assertThat(table.columns())
                .extracting(Column::name)
                .startsWith(
                        "feature", "model", "marks", "first_utc", "last_utc", "epoch_utc", "lon_deg", "sigma_lon_deg", "rate_deg_per_day",
                        "sigma_rate_deg_per_day", "rate_deg_per_30d", "period_s", "sigma_period_s", "speed_m_s", "sigma_speed_m_s", "rms_deg", "rejected");
        assertThat(value(table, "rate_deg_per_30d")).isEqualTo(1.5);
        assertThat(value(table, "system")).isEqualTo("System II");
        assertThat(value(table, "lon_positive")).isEqualTo("west");
        assertThat(value(table, "marks")).isEqualTo(14L);
        // 86400 · 360 / (870.270 − 0.05) s.
        assertThat(value(table, "period_s")).isEqualTo(35742.69);
        // −(0.05 + 0.266) deg per day times 1163.5 km per degree.
        assertThat(value(table, "speed_m_s")).isEqualTo(-4.26);
        assertThat(table.facts()).containsKeys("longitudes", "latitudes", "systems", "speed", "errors", "software");
        assertThat(table.facts().get("software")).matches("Oblate \\d.*");
    }

    @Test
    void missingLatitudeLeavesTheSpeedEmpty() {
        ReportTable table = DriftTable.of(JUPITER, List.of(drift(JUPITER, false)));
        assertThat(value(table, "speed_m_s")).isNull();
        assertThat(value(table, "lat_graphic_deg")).isNull();
    }

    @Test
    void directionIsThePlanets() {
        Uranus uranus = new Uranus();
        assertThat(value(DriftTable.of(uranus, List.of(drift(uranus, true))), "lon_positive")).isEqualTo("east");
    }

    @Test
    void tableRoundsOnceAndKnowsItsKinds() {
        List<Column> columns = List.of(
                new Column("a", "", "", "", "", 2), new Column("b", "", "", "", "", -1), new Column("c", "", "", "", "", -1));
        ReportTable table = new ReportTable(
                "", Map.of(), columns, List.of(Arrays.asList(1.005, 3, " "), Arrays.asList(-0.001, Double.NaN, "x"), Arrays.asList(7, 2.5, null)));
        // 1.005 is 1.005 as written, and a half goes to the even digit.
        assertThat(table.rows()).containsExactly(Arrays.asList(1.0, 3.0, null), Arrays.asList(0.0, null, "x"), Arrays.asList(7.0, 2.5, null));
        assertThat(table.kind(0)).isEqualTo(ValueKind.NUMBER);
        assertThat(table.kind(2)).isEqualTo(ValueKind.TEXT);
        assertThat(ReportTable.digits(1.23e-7, -1)).isEqualTo("0.000000123");
        assertThat(ReportTable.digits(5, -1)).isEqualTo("5.0");
    }

    @Test
    void raggedRowsTwinColumnsAndStrangeValuesAreRefused() {
        Column column = new Column("a", "", "", "", "", 2);
        assertThatThrownBy(() -> new ReportTable("", Map.of(), List.of(column), List.of(List.of(1.0, 2.0)))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ReportTable("", Map.of(), List.of(column, column), List.of())).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ReportTable("", Map.of(), List.of(column), List.of(List.of(new StringBuilder())))).isInstanceOf(IllegalArgumentException.class);
    }

    private static Object value(ReportTable table, String column) {
        int place = table.columns().stream().map(Column::name).toList().indexOf(column);
        return table.rows().get(0).get(place);
    }
}
