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
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.planet.jupiter.Jupiter;
import oblate.report.SeriesChart;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeriesCollection;
import org.junit.jupiter.api.Test;

class ChartTest {
    private static final Instant START = Instant.parse("2031-01-01T20:00:00Z");
    private static final TimeCharts.Manner DOWN =
            new TimeCharts.Manner(SeriesChart.TimeAxis.DOWN, 14, Optional.empty());
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
        XYPlot plot = TimeCharts.longitudes(List.of(fitted), DOWN, ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYDataset lines = plot.getDataset(1);
        int near = 0;
        for (int s = 0; s < lines.getSeriesCount(); s++) {
            for (int k = 0; k < lines.getItemCount(s); k++) {
                double day = (lines.getXValue(s, k) - START.toEpochMilli()) / 86_400_000.0;
                double truth = 10 - 0.9 * day + 0.01 * day * day;
                assertThat(Math.IEEEremainder(lines.getYValue(s, k) - truth, 360))
                        .isCloseTo(0, offset(0.05));
                assertThat(lines.getYValue(s, k)).isBetween(-1e-9, 360 + 1e-9);
                near++;
            }
        }
        assertThat(near).isGreaterThan(100);
    }

    @Test
    void longitudeGrowsToTheLeftAndTimeRunsDown() {
        JFreeChart chart = TimeCharts.longitudes(
                List.of(Fitted.of(series("oval A", 100, -0.5, 12, false))), DOWN, ChartWish.forPaper("", "System II"));
        XYPlot plot = chart.getXYPlot();
        assertThat(plot.getOrientation()).isEqualTo(PlotOrientation.HORIZONTAL);
        assertThat(plot.getDomainAxis().isInverted()).isTrue();
        assertThat(plot.getRangeAxis().isInverted()).isTrue();
        assertThat(plot.getRangeAxis().getRange().getLowerBound()).isZero();
        assertThat(plot.getRangeAxis().getRange().getUpperBound()).isEqualTo(360);
        assertThat(plot.getRangeAxis().getLabel()).contains("System II");
        DateAxis dates = (DateAxis) plot.getDomainAxis();
        assertThat(dates.getDateFormatOverride().format(java.util.Date.from(Instant.parse("2031-01-01T23:30:00Z"))))
                .isEqualTo("1 Jan 2031");
    }

    @Test
    void aFalseMarkIsDrawnHollowAndNotLeftOut() {
        Fitted fitted = Fitted.of(series("oval A", 100, -0.5, 15, true));
        assertThat(fitted.drift().orElseThrow().rejected()).isEqualTo(1);
        XYPlot plot = TimeCharts.longitudes(List.of(fitted), DOWN, ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYIntervalSeriesCollection points = (XYIntervalSeriesCollection) plot.getDataset(0);
        assertThat(points.getItemCount(0)).isEqualTo(14);
        assertThat(points.getItemCount(1)).isEqualTo(1);
        var renderer = (org.jfree.chart.renderer.xy.XYErrorRenderer) plot.getRenderer(0);
        assertThat(renderer.getItemFillPaint(0, 0)).isEqualTo(renderer.getItemPaint(0, 0));
        assertThat(renderer.getItemFillPaint(1, 0)).isEqualTo(java.awt.Color.WHITE);
    }

    @Test
    void errorBarsAreOneSigmaToEachSide() {
        XYPlot plot = TimeCharts.longitudes(
                        List.of(Fitted.of(series("oval A", 100, -0.5, 8, false))),
                        DOWN,
                        ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYIntervalSeriesCollection points = (XYIntervalSeriesCollection) plot.getDataset(0);
        assertThat(points.getEndYValue(0, 0) - points.getStartYValue(0, 0)).isEqualTo(1.0, offset(1e-9));
    }

    @Test
    void theLineFollowsTheMarksAcrossZero() {
        // From 20° down through 0° to 336°.
        XYPlot plot = TimeCharts.longitudes(
                        List.of(Fitted.of(series("oval A", 20, -1, 12, false))),
                        DOWN,
                        ChartWish.forPaper("", "System II"))
                .getXYPlot();
        XYSeriesCollection lines = (XYSeriesCollection) plot.getDataset(1);
        assertThat(lines.getSeriesCount()).isEqualTo(2);
        assertThat(lines.getYValue(0, 0)).isEqualTo(20, offset(0.2));
        assertThat(lines.getYValue(0, 1)).isEqualTo(0, offset(1e-9));
        assertThat(lines.getYValue(1, 0)).isEqualTo(360, offset(1e-9));
        assertThat(lines.getYValue(1, 1)).isEqualTo(336, offset(0.2));
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
        XYPlot plot = TimeCharts.longitudes(
                        List.of(
                                Fitted.of(series("oval A", 20, -1, 12, false)),
                                Fitted.of(series("bar", 200, 0.1, 9, false))),
                        DOWN,
                        alone)
                .getXYPlot();
        assertThat(plot.getRangeAxis().isInverted()).isFalse();
        assertThat(plot.getRangeAxis().getRange().getLength()).isBetween(44.0, 60.0);
        assertThat(plot.getDataset(0).getSeriesCount()).isEqualTo(2);
    }

    @Test
    void aFeatureWithOneMarkIsDrawnWithoutALineAndSaysWhy() {
        Fitted one = Fitted.of(series("lonely", 50, 0, 1, false));
        assertThat(one.drift()).isEmpty();
        assertThat(one.why()).contains("lonely");
        XYPlot plot = TimeCharts.longitudes(List.of(one), DOWN, ChartWish.forPaper("", "System II"))
                .getXYPlot();
        assertThat(((XYIntervalSeriesCollection) plot.getDataset(0)).getItemCount(0))
                .isEqualTo(1);
        assertThat(plot.getDataset(1).getSeriesCount()).isZero();
    }

    @Test
    void theLineIsDottedAcrossAGapAndSolidElsewhere() {
        // Twelve marks four days apart, then none for 20 days, then six more.
        List<LongitudePoint> points =
                new ArrayList<>(series("oval A", 100, -0.5, 12, false).points());
        for (int i = 0; i < 6; i++) {
            double day = 64 + 4.0 * i;
            points.add(new LongitudePoint(
                    START.plus(Duration.ofDays((long) day)),
                    100 - 0.5 * day,
                    0.5,
                    OptionalDouble.of(-20),
                    OptionalDouble.of(0.5)));
        }
        Fitted fitted = Fitted.of(new LongitudeSeries(
                "oval A", jupiter, jupiter.globe().system("2").orElseThrow(), points));
        Track track = Tracks.longitudes(fitted, 14, Optional.empty());
        assertThat(track.runs())
                .extracting(Track.Run::style)
                .containsExactly(Track.Style.SOLID, Track.Style.DOTTED, Track.Style.SOLID);
        List<Turns.Point> gap = track.runs().get(1).points();
        assertThat(gap.get(0).timeMs())
                .isEqualTo(START.plus(Duration.ofDays(44)).toEpochMilli());
        assertThat(gap.get(1).timeMs())
                .isEqualTo(START.plus(Duration.ofDays(64)).toEpochMilli());
        assertThat(Tracks.longitudes(fitted, 30, Optional.empty()).hasGap()).isFalse();
    }

    @Test
    void timeRunsToTheRightWhenAskedTo() {
        XYPlot plot = TimeCharts.longitudes(
                        List.of(Fitted.of(series("oval A", 100, -0.5, 12, false))),
                        new TimeCharts.Manner(SeriesChart.TimeAxis.RIGHT, 14, Optional.empty()),
                        ChartWish.forPaper("", "System II"))
                .getXYPlot();
        assertThat(plot.getOrientation()).isEqualTo(PlotOrientation.VERTICAL);
        assertThat(plot.getDomainAxis().isInverted()).isFalse();
        PlotSpace space = PlotSpace.of(plot, new java.awt.geom.Rectangle2D.Double(0, 0, 400, 300));
        double early = space.at(START.toEpochMilli(), 100).getX();
        double late =
                space.at(START.plus(Duration.ofDays(40)).toEpochMilli(), 80).getX();
        assertThat(late).isGreaterThan(early + 200);
    }

    @Test
    void residualsAreMeasuredMinusFittedAndWhatWasLeftOutLiesBeyond() {
        Fitted fitted = Fitted.of(series("oval A", 100, -0.5, 15, true));
        Track track = Tracks.residuals(fitted, 14);
        assertThat(track.dots()).filteredOn(d -> !d.used()).singleElement().satisfies(d -> {
            assertThat(d.value()).isEqualTo(40, offset(0.1));
            assertThat(d.index()).isEqualTo(7);
        });
        assertThat(track.dots()).filteredOn(Track.Dot::used).allSatisfy(d -> assertThat(d.value())
                .isEqualTo(0, offset(0.1)));
        assertThat(Axes.residuals("", List.of(track), ChartWish.forPaper("", ""))
                        .getRange()
                        .contains(40))
                .isFalse();
    }

    @Test
    void latitudesHaveTheirMeanAndTheirSlope() {
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            points.add(new LongitudePoint(
                    START.plus(Duration.ofDays(4L * i)),
                    100,
                    0.5,
                    OptionalDouble.of(-20 + 0.01 * 4 * i),
                    OptionalDouble.of(0.3)));
        }
        Track track = Tracks.latitudes(
                Fitted.of(new LongitudeSeries(
                        "oval A", jupiter, jupiter.globe().system("2").orElseThrow(), points)),
                14);
        // A hundredth of a degree a day over 60 days, 0.3 deg in 30 days, -19.7 in the middle.
        assertThat(track.tag()).contains("−19.70° ± 0.08").contains("+0.30 ± ");
        Track.Run slope = track.runs().get(1);
        assertThat(slope.points().get(0).lonDeg()).isEqualTo(-20, offset(1e-6));
        assertThat(slope.points().get(1).lonDeg()).isEqualTo(-19.4, offset(1e-6));
        assertThat(track.runs().get(0).style()).isEqualTo(Track.Style.THIN);
    }

    @Test
    void aPredictionIsFilledOneSigmaToEachSide() {
        Fitted fitted = Fitted.of(series("oval A", 100, -0.5, 15, false));
        Instant until = START.plus(Duration.ofDays(90));
        Track track = Tracks.longitudes(fitted, 14, Optional.of(until));
        Track.Band band = track.bands().get(0);
        int end = band.low().size() - 1;
        double sigma = fitted.drift().orElseThrow().at(until).sigmaLonDeg();
        assertThat(band.high().get(end).lonDeg() - band.low().get(end).lonDeg()).isEqualTo(2 * sigma, offset(1e-9));
        assertThat(band.low().get(end).timeMs()).isEqualTo(until.toEpochMilli());
    }
}
