/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.planet.jupiter.Jupiter;
import oblate.report.SeriesChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

class SpeedChartTest {
    private static final Instant START = Instant.parse("2031-01-01T20:00:00Z");
    private final Jupiter jupiter = new Jupiter();

    private Drift drift(String name, double degPerDay, OptionalDouble lat) {
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            points.add(new LongitudePoint(
                    START.plus(Duration.ofDays(4L * i)),
                    Turns.reduced(100 + degPerDay * 4 * i),
                    0.5,
                    lat,
                    lat.isPresent() ? OptionalDouble.of(0.5) : OptionalDouble.empty()));
        }
        return new DriftFitter()
                .fit(new LongitudeSeries(name, jupiter, jupiter.globe().iauSystem(), points));
    }

    @Test
    void aPointStandsAtItsLatitudeAndSpeed() {
        XYPlot plot = SpeedChart.of(
                        jupiter,
                        List.of(
                                drift("without latitude", 0.1, OptionalDouble.empty()),
                                drift("oval", -1, OptionalDouble.of(-20))),
                        ChartWish.forPaper("", "System III"))
                .getXYPlot();
        XYDataset points = plot.getDataset(0);
        assertThat(points.getSeriesCount()).isEqualTo(1);
        // One degree a day ahead of the IAU's system on the parallel at 20 degrees, of an ellipse of 71492 and 66854
        // km.
        double lat = Math.toRadians(-20);
        double a = 71_492_000;
        double b = 66_854_000;
        double radius = a * a * Math.cos(lat) / Math.hypot(a * Math.cos(lat), b * Math.sin(lat));
        assertThat(points.getXValue(0, 0)).isEqualTo(Math.toRadians(1) * radius / 86_400, offset(0.05));
        assertThat(points.getYValue(0, 0)).isEqualTo(-20, offset(1e-6));
        assertThat(plot.getRangeAxis().getRange().contains(-20)).isTrue();
        // The published profile lies beside it, within the latitudes shown.
        XYDataset line = plot.getDataset(1);
        assertThat(line.getItemCount(0)).isGreaterThan(10);
        assertThat(line.getYValue(0, 0)).isBetween(-30.0, -10.0);
    }

    @Test
    void aPredictionStaysOnTheCircleAndReachesItsEnd() {
        Fitted fitted = Fitted.of(drift("runner", 9, OptionalDouble.of(-20)).series());
        ChartWish wish = ChartWish.forPaper("", "System III");
        Instant until = START.plus(Duration.ofDays(100));
        XYPlot plot = TimeCharts.longitudes(
                        List.of(fitted), new TimeCharts.Manner(SeriesChart.TimeAxis.DOWN, 14, Optional.of(until)), wish)
                .getXYPlot();
        XYDataset lines = plot.getDataset(TimePlot.LINES);
        double last = 0;
        for (int s = 0; s < lines.getSeriesCount(); s++) {
            for (int k = 0; k < lines.getItemCount(s); k++) {
                assertThat(lines.getYValue(s, k)).isBetween(-1e-6, 360 + 1e-6);
                last = Math.max(last, lines.getXValue(s, k));
                if (k > 0 && lines.getItemCount(s) > 2) {
                    assertThat(Math.abs(lines.getYValue(s, k) - lines.getYValue(s, k - 1)))
                            .isLessThan(180);
                }
            }
        }
        assertThat(last).isEqualTo(until.toEpochMilli(), offset(1.0));
        assertThat(plot.getDomainAxis().getRange().contains(last)).isTrue();
    }
}
