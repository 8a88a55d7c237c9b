/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import oblate.drift.timing.NightClock;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.TimedPoint;
import oblate.drift.timing.Timing;
import oblate.planet.jupiter.Jupiter;
import oblate.report.ChartOrder;
import oblate.report.TimingsChart;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.junit.jupiter.api.Test;

class TimingChartTest {
    private static final Jupiter JUPITER = new Jupiter();
    private static final LocalDate NIGHT = LocalDate.parse("2031-03-24");

    private static Timing timing(int moon, LocalDate night, double oMinusPS, double sigmaS, String... doubts) {
        Instant at = Instant.parse(night + "T21:00:00Z");
        return new Timing(
                night,
                "observer-1",
                Optional.empty(),
                JUPITER.moons().get(moon),
                moon == 0 ? Phenomenon.TRANSIT : Phenomenon.ECLIPSE,
                TimedPoint.MID,
                Timing.Method.PLACE,
                Optional.of(at),
                Optional.of(at),
                oMinusPS,
                new Timing.Errors(sigmaS, sigmaS, 0, 0, 0, 0, 0),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of("p"),
                0,
                List.of(doubts));
    }

    private static TimingsChart content() {
        return new TimingsChart(
                JUPITER,
                List.of(
                        timing(0, NIGHT, 12, 5),
                        timing(1, NIGHT, -20, 8),
                        timing(1, NIGHT.plusDays(10), 900, 9, "900 standard errors off")),
                List.of(new NightClock(NIGHT, "observer-1", 3, 4, 1, 2, List.of("Io", "Europa"), List.of())));
    }

    @Test
    void pointsStandAtTheirValuesWithTheirErrors() {
        JFreeChart chart = TimingChart.of(content(), ChartWish.forPaper("O − P", ""));
        XYPlot plot = chart.getXYPlot();
        XYIntervalSeriesCollection data = (XYIntervalSeriesCollection) plot.getDataset();
        assertThat(data.getSeriesCount()).isEqualTo(3);
        assertThat(data.getYValue(0, 0)).isEqualTo(12);
        assertThat(data.getStartYValue(0, 0)).isEqualTo(7);
        assertThat(data.getEndYValue(0, 0)).isEqualTo(17);
        assertThat(data.getXValue(0, 0)).isLessThan(data.getXValue(1, 0));
        XYErrorRenderer renderer = (XYErrorRenderer) plot.getRenderer();
        assertThat(renderer.getSeriesShapesFilled(0)).isTrue();
        assertThat(renderer.getSeriesShapesFilled(2)).isFalse();
        assertThat(renderer.getSeriesPaint(0)).isNotEqualTo(renderer.getSeriesPaint(1));
        assertThat(renderer.getSeriesPaint(1)).isEqualTo(renderer.getSeriesPaint(2));
    }

    /** One point in doubt at 900 s must not press all others to the zero line. */
    @Test
    void whatIsInDoubtDoesNotStretchTheScaleAndIsCounted() throws IOException {
        JFreeChart chart = TimingChart.of(content(), ChartWish.forPaper("O − P", ""));
        assertThat(chart.getXYPlot().getRangeAxis().getRange().getLength()).isLessThan(80);
        assertThat(chart.getXYPlot().getRangeAxis().getRange().contains(0)).isTrue();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new ChartFiles()
                .write(
                        new ChartOrder(
                                content(),
                                new ChartOrder.Size(900, 500, 1),
                                ChartOrder.Theme.PRINT,
                                ChartOrder.Format.SVG),
                        out);
        String svg = out.toString(StandardCharsets.UTF_8);
        assertThat(svg)
                .contains("1 beyond the scale")
                .contains("hollow: in doubt")
                .contains("Europa")
                .contains("eclipse");
    }
}
