/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.planet.jupiter.Jupiter;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeriesCollection;
import org.junit.jupiter.api.Test;

class ChartTest {
    private static final Instant START = Instant.parse("2031-01-01T20:00:00Z");
    private final Jupiter jupiter = new Jupiter();

    /** Marks every four days on a straight line, with one false mark if wished. */
    private LongitudeSeries series(String name, double lonDeg, double ratePerDay, int marks, boolean oneFalse) {
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < marks; i++) {
            double off = oneFalse && i == marks / 2 ? 40 : 0;
            double lon = Turns.reduced(lonDeg + ratePerDay * 4 * i + off);
            points.add(new LongitudePoint(
                    START.plus(Duration.ofDays(4L * i)), lon, 0.5, OptionalDouble.of(-20), OptionalDouble.of(0.5)));
        }
        return new LongitudeSeries(name, jupiter, jupiter.globe().system("2").orElseThrow(), points);
    }

    @Property(tries = 300)
    void piecesStayOnTheCircleAndJoinToTheWholeLine(
            @ForAll @DoubleRange(min = -800, max = 800) double from,
            @ForAll @DoubleRange(min = 1, max = 1500) double length,
            @ForAll boolean backward) {
        double to = backward ? from - length : from + length;
        List<List<Turns.Point>> pieces = Turns.pieces(new Turns.Point(from, 0), new Turns.Point(to, 1000));
        double sum = 0;
        double time = 0;
        for (List<Turns.Point> piece : pieces) {
            assertThat(piece.get(0).lonDeg()).isBetween(-1e-9, 360 + 1e-9);
            assertThat(piece.get(1).lonDeg()).isBetween(-1e-9, 360 + 1e-9);
            assertThat(piece.get(0).timeMs()).isEqualTo(time, offset(1e-6));
            time = piece.get(1).timeMs();
            sum += piece.get(1).lonDeg() - piece.get(0).lonDeg();
        }
        assertThat(time).isEqualTo(1000, offset(1e-6));
        assertThat(sum).isEqualTo(to - from, offset(1e-6));
    }

    @Test
    void aChangingRateIsDrawnAsACurveThroughItsMarks() {
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            double day = 3.0 * i;
            double lon = 10 - 0.9 * day + 0.01 * day * day;
            points.add(new LongitudePoint(
                    START.plus(Duration.ofDays(3L * i)),
                    Turns.reduced(lon),
                    0.5,
                    OptionalDouble.empty(),
                    OptionalDouble.empty()));
        }
        Fitted fitted = Fitted.of(
                new LongitudeSeries("spot", jupiter, jupiter.globe().system("2").orElseThrow(), points));
        assertThat(fitted.drift().orElseThrow().model()).isEqualTo("acceleration");
        XYPlot plot = DriftChart.of(List.of(fitted), ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYDataset lines = plot.getDataset(1);
        int near = 0;
        for (int s = 0; s < lines.getSeriesCount(); s++) {
            for (int k = 0; k < lines.getItemCount(s); k++) {
                double day = (lines.getYValue(s, k) - START.toEpochMilli()) / 86_400_000.0;
                double truth = 10 - 0.9 * day + 0.01 * day * day;
                assertThat(Math.IEEEremainder(lines.getXValue(s, k) - truth, 360))
                        .isCloseTo(0, offset(0.05));
                assertThat(lines.getXValue(s, k)).isBetween(-1e-9, 360 + 1e-9);
                near++;
            }
        }
        assertThat(near).isGreaterThan(100);
    }

    @Test
    void longitudeGrowsToTheLeftAndTimeRunsDown() {
        JFreeChart chart = DriftChart.of(
                List.of(Fitted.of(series("oval A", 100, -0.5, 12, false))), ChartWish.forPaper("", "System II"));
        XYPlot plot = chart.getXYPlot();
        assertThat(plot.getDomainAxis().isInverted()).isTrue();
        assertThat(plot.getRangeAxis().isInverted()).isTrue();
        assertThat(plot.getDomainAxis().getRange().getLowerBound()).isZero();
        assertThat(plot.getDomainAxis().getRange().getUpperBound()).isEqualTo(360);
        assertThat(plot.getDomainAxis().getLabel()).contains("System II");
        DateAxis dates = (DateAxis) plot.getRangeAxis();
        assertThat(dates.getDateFormatOverride().format(java.util.Date.from(Instant.parse("2031-01-01T23:30:00Z"))))
                .isEqualTo("1 Jan 2031");
    }

    @Test
    void aFalseMarkIsDrawnHollowAndNotLeftOut() {
        Fitted fitted = Fitted.of(series("oval A", 100, -0.5, 15, true));
        assertThat(fitted.drift().orElseThrow().rejected()).isEqualTo(1);
        XYPlot plot = DriftChart.of(List.of(fitted), ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYIntervalSeriesCollection points = (XYIntervalSeriesCollection) plot.getDataset(0);
        assertThat(points.getItemCount(0)).isEqualTo(14);
        assertThat(points.getItemCount(1)).isEqualTo(1);
        var renderer = (org.jfree.chart.renderer.xy.XYErrorRenderer) plot.getRenderer(0);
        assertThat(renderer.getItemShapeFilled(0, 0)).isTrue();
        assertThat(renderer.getItemShapeFilled(1, 0)).isFalse();
    }

    @Test
    void errorBarsAreOneSigmaToEachSide() {
        XYPlot plot = DriftChart.of(
                        List.of(Fitted.of(series("oval A", 100, -0.5, 8, false))), ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYIntervalSeriesCollection points = (XYIntervalSeriesCollection) plot.getDataset(0);
        assertThat(points.getEndXValue(0, 0) - points.getStartXValue(0, 0)).isEqualTo(1.0, offset(1e-9));
    }

    @Test
    void theLineFollowsTheMarksAcrossZero() {
        // From 20° down through 0° to 336°.
        XYPlot plot = DriftChart.of(
                        List.of(Fitted.of(series("oval A", 20, -1, 12, false))), ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYSeriesCollection lines = (XYSeriesCollection) plot.getDataset(1);
        assertThat(lines.getSeriesCount()).isEqualTo(2);
        assertThat(lines.getXValue(0, 0)).isEqualTo(20, offset(0.2));
        assertThat(lines.getXValue(0, 1)).isEqualTo(0, offset(1e-9));
        assertThat(lines.getXValue(1, 0)).isEqualTo(360, offset(1e-9));
        assertThat(lines.getXValue(1, 1)).isEqualTo(336, offset(0.2));
    }

    @Test
    void oneFeatureAloneIsUnwrappedOnAScaleOfItsOwn() {
        ChartWish all = ChartWish.forPaper("", "System II");
        ChartWish alone = new ChartWish(
                "",
                "System II",
                false,
                Optional.of("oval A"),
                all.ground(),
                all.ink(),
                all.quiet(),
                all.font(),
                all.colours());
        XYPlot plot = DriftChart.of(
                        List.of(
                                Fitted.of(series("oval A", 20, -1, 12, false)),
                                Fitted.of(series("bar", 200, 0.1, 9, false))),
                        alone)
                .getXYPlot();
        assertThat(plot.getDomainAxis().isInverted()).isFalse();
        assertThat(plot.getDomainAxis().getRange().getLength()).isBetween(44.0, 60.0);
        assertThat(plot.getDataset(0).getSeriesCount()).isEqualTo(2);
    }

    @Test
    void aFeatureWithOneMarkIsDrawnWithoutALineAndSaysWhy() {
        Fitted one = Fitted.of(series("lonely", 50, 0, 1, false));
        assertThat(one.drift()).isEmpty();
        assertThat(one.why()).contains("lonely");
        XYPlot plot =
                DriftChart.of(List.of(one), ChartWish.forPaper("", "System II")).getXYPlot();
        assertThat(((XYIntervalSeriesCollection) plot.getDataset(0)).getItemCount(0))
                .isEqualTo(1);
        assertThat(plot.getDataset(1).getSeriesCount()).isZero();
    }

    @Test
    void thePictureFileIsAPngOfTheSizeAskedAndTheSameEveryTime() throws IOException {
        List<LongitudeSeries> all =
                List.of(series("oval A", 100, -0.5, 12, false), series("oval B", 250, -0.6, 12, true));
        ByteArrayOutputStream first = new ByteArrayOutputStream();
        ByteArrayOutputStream second = new ByteArrayOutputStream();
        ChartImage.writePng(all, ChartWish.forPaper("Jupiter", "System II"), 900, 700, first);
        ChartImage.writePng(all, ChartWish.forPaper("Jupiter", "System II"), 900, 700, second);
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(first.toByteArray()));
        assertThat(image.getWidth()).isEqualTo(900);
        assertThat(image.getHeight()).isEqualTo(700);
        assertThat(first.toByteArray()).isEqualTo(second.toByteArray());
        assertThatThrownBy(() -> ChartImage.writePng(all, ChartWish.forPaper("", "System II"), 10, 700, first))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
