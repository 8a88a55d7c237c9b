/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import oblate.drift.Drift;
import oblate.drift.Prediction;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Draws where features are expected after their last mark: the middle dashed, one standard error on both sides thin. */
final class PredictionBand {
    private static final int STEPS = 80;
    private static final BasicStroke MIDDLE =
            new BasicStroke(1.4f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {6, 4}, 0);
    private static final BasicStroke EDGE = new BasicStroke(0.8f);
    private final ChartWish wish;
    private final XYSeriesCollection lines = new XYSeriesCollection();
    private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);

    PredictionBand(ChartWish wish) {
        this.wish = wish;
        renderer.setDrawSeriesLineAsPath(true);
    }

    void add(XYPlot plot, List<Fitted> fits, Instant until) {
        for (int i = 0; i < fits.size(); i++) {
            Color colour = wish.colours().get(i % wish.colours().size());
            fits.get(i).drift().filter(d -> d.lastUtc().isBefore(until)).ifPresent(d -> {
                addLine(d, until, 0, colour, MIDDLE);
                addLine(d, until, -1, colour, EDGE);
                addLine(d, until, 1, colour, EDGE);
            });
        }
        DateAxis axis = (DateAxis) plot.getRangeAxis();
        double last = Math.max(axis.getRange().getUpperBound(), until.toEpochMilli());
        double room = (last - axis.getRange().getLowerBound()) * 0.03;
        if (last > axis.getRange().getUpperBound()) {
            axis.setRange(axis.getMinimumDate(), new Date((long) (last + room)));
        }
        plot.setDataset(2, lines);
        plot.setRenderer(2, renderer);
    }

    private void addLine(Drift drift, Instant until, int sigmas, Color colour, BasicStroke stroke) {
        long spanMs = Duration.between(drift.lastUtc(), until).toMillis();
        List<Turns.Point> points = new ArrayList<>();
        for (int k = 0; k <= STEPS; k++) {
            Instant time = drift.lastUtc().plusMillis(spanMs * k / STEPS);
            Prediction p = drift.at(time);
            points.add(new Turns.Point(p.lonDeg() + sigmas * p.sigmaLonDeg(), time.toEpochMilli()));
        }
        for (List<Turns.Point> piece : Turns.path(points)) {
            XYSeries series = new XYSeries("p" + lines.getSeriesCount(), false, true);
            piece.forEach(p -> series.add(p.lonDeg(), p.timeMs()));
            lines.addSeries(series);
            renderer.setSeriesPaint(lines.getSeriesCount() - 1, colour);
            renderer.setSeriesStroke(lines.getSeriesCount() - 1, stroke);
        }
    }
}
