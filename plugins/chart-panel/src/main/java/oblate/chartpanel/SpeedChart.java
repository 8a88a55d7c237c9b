/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.drift.Drift;
import oblate.drift.WindProfile;
import oblate.sky.PlanetModel;
import oblate.workbench.words.Texts;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Builds the chart of speed (m/s, to the right) against planetographic latitude (deg, upward), beside a published profile. Stateless. */
final class SpeedChart {
    private static final Texts TEXTS = Texts.of(SpeedChart.class);
    private static final double ROOM_DEG = 10;

    private SpeedChart() {}

    /** The chart of those drifts that have a speed and a latitude. */
    static JFreeChart of(PlanetModel planet, List<Drift> drifts, ChartWish wish) {
        List<Drift> shown = drifts.stream()
                .filter(d -> d.speedMS().isPresent() && d.meanLatDeg().isPresent())
                .toList();
        XYPlot plot = new XYPlot();
        NumberAxis speeds =
                axis(TEXTS.text("axis.speed", planet.globe().iauSystem().label()), wish);
        NumberAxis latitudes = axis(TEXTS.text("axis.latitude.deg"), wish);
        plot.setDomainAxis(speeds);
        plot.setRangeAxis(latitudes);
        setLatitudes(latitudes, shown);
        Optional<WindProfile> profile = WindProfile.of(planet);
        plot.setDataset(0, points(shown));
        plot.setRenderer(0, pointRenderer(shown.size(), wish));
        profile.ifPresent(p -> {
            plot.setDataset(1, line(p, latitudes));
            XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
            renderer.setDrawSeriesLineAsPath(true);
            renderer.setSeriesPaint(0, wish.ink());
            renderer.setSeriesStroke(0, new BasicStroke(1.1f));
            plot.setRenderer(1, renderer);
        });
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        plot.setBackgroundPaint(wish.ground());
        plot.setDomainGridlinePaint(wish.quiet());
        plot.setRangeGridlinePaint(wish.quiet());
        plot.setDomainGridlineStroke(new BasicStroke(1f));
        plot.setRangeGridlineStroke(new BasicStroke(1f));
        plot.setOutlinePaint(wish.quiet());
        plot.setAxisOffset(new RectangleInsets(4, 4, 4, 4));
        addNames(plot, speeds, latitudes, shown, wish);
        return framed(plot, profile, wish);
    }

    private static JFreeChart framed(XYPlot plot, Optional<WindProfile> profile, ChartWish wish) {
        JFreeChart chart = new JFreeChart(
                wish.title().isEmpty() ? null : wish.title(), wish.font().deriveFont(15f), plot, false);
        if (chart.getTitle() != null) {
            chart.getTitle().setPaint(wish.ink());
        }
        profile.ifPresent(p -> chart.addSubtitle(new TextTitle(
                TEXTS.text("speed.line", p.source()),
                wish.font(),
                wish.ink(),
                TextTitle.DEFAULT_POSITION,
                TextTitle.DEFAULT_HORIZONTAL_ALIGNMENT,
                TextTitle.DEFAULT_VERTICAL_ALIGNMENT,
                TextTitle.DEFAULT_PADDING)));
        chart.setBackgroundPaint(wish.ground());
        chart.setPadding(new RectangleInsets(8, 8, 8, 16));
        return chart;
    }

    private static void setLatitudes(NumberAxis axis, List<Drift> shown) {
        double least = shown.stream()
                .mapToDouble(d -> d.meanLatDeg().getAsDouble())
                .min()
                .orElse(-90);
        double most = shown.stream()
                .mapToDouble(d -> d.meanLatDeg().getAsDouble())
                .max()
                .orElse(90);
        axis.setRange(Math.max(-90, least - ROOM_DEG), Math.min(90, most + ROOM_DEG));
    }

    private static XYIntervalSeriesCollection points(List<Drift> shown) {
        XYIntervalSeriesCollection points = new XYIntervalSeriesCollection();
        for (int i = 0; i < shown.size(); i++) {
            Drift d = shown.get(i);
            double speed = d.speedMS().getAsDouble();
            double lat = d.meanLatDeg().getAsDouble();
            double sigmaSpeed = d.sigmaSpeedMS().orElse(0);
            double sigmaLat = d.sigmaMeanLatDeg().orElse(0);
            XYIntervalSeries one = new XYIntervalSeries(i + " " + d.series().feature(), false, true);
            one.add(speed, speed - sigmaSpeed, speed + sigmaSpeed, lat, lat - sigmaLat, lat + sigmaLat);
            points.addSeries(one);
        }
        return points;
    }

    private static XYErrorRenderer pointRenderer(int count, ChartWish wish) {
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setCapLength(0);
        renderer.setErrorStroke(new BasicStroke(1.2f));
        for (int i = 0; i < count; i++) {
            renderer.setSeriesPaint(i, wish.colours().get(i % wish.colours().size()));
            renderer.setSeriesShape(i, new Ellipse2D.Double(-3.6, -3.6, 7.2, 7.2));
        }
        return renderer;
    }

    private static XYSeriesCollection line(WindProfile profile, NumberAxis latitudes) {
        XYSeries line = new XYSeries("profile", false, true);
        profile.rows().stream()
                .filter(r -> latitudes.getRange().contains(r.latGraphicDeg()))
                .forEach(r -> line.add(r.windMS(), r.latGraphicDeg()));
        return new XYSeriesCollection(line);
    }

    /** Each name beside its point, or near it with a line to it where another stands already. */
    private static void addNames(
            XYPlot plot, NumberAxis speeds, NumberAxis latitudes, List<Drift> shown, ChartWish wish) {
        double perLetter = speeds.getRange().getLength() * 0.0105;
        double line = latitudes.getRange().getLength() * 0.026;
        List<Rectangle2D> taken = new ArrayList<>();
        for (Drift d : shown) {
            taken.add(new Rectangle2D.Double(
                    d.speedMS().getAsDouble() - 0.4 * perLetter,
                    d.meanLatDeg().getAsDouble() - 0.2 * line,
                    0.8 * perLetter,
                    0.4 * line));
        }
        for (int i = 0; i < shown.size(); i++) {
            Drift d = shown.get(i);
            double speed = d.speedMS().getAsDouble();
            double lat = d.meanLatDeg().getAsDouble();
            Rectangle2D box = free(taken, speeds, d, perLetter, line);
            taken.add(box);
            boolean left = box.getCenterX() < speed;
            double x = left ? box.getMaxX() : box.getX();
            Color colour = wish.colours().get(i % wish.colours().size());
            if (Math.abs(box.getCenterY() - lat) > 0.6 * line) {
                plot.addAnnotation(
                        new XYLineAnnotation(speed, lat, x, box.getCenterY(), new BasicStroke(0.7f), colour));
            }
            XYTextAnnotation text = new XYTextAnnotation(Tracks.brief(d.series().feature()), x, box.getCenterY());
            text.setPaint(colour);
            text.setFont(wish.font().deriveFont(Font.BOLD, wish.font().getSize2D() - 1));
            text.setTextAnchor(left ? TextAnchor.CENTER_RIGHT : TextAnchor.CENTER_LEFT);
            plot.addAnnotation(text);
        }
    }

    /** Room for a name: right or left of the point, then ever further up and down. */
    private static Rectangle2D free(
            List<Rectangle2D> taken, NumberAxis speeds, Drift drift, double perLetter, double line) {
        double speed = drift.speedMS().getAsDouble();
        double width = Tracks.brief(drift.series().feature()).length() * perLetter;
        double first = drift.meanLatDeg().getAsDouble() - line / 2;
        Rectangle2D box = null;
        for (int k = 0; k < 13; k++) {
            double y = first + (k % 2 == 0 ? -1 : 1) * ((k + 1) / 2) * line;
            double away = (k == 0 ? 1 : 2.5) * perLetter;
            for (double x : new double[] {speed + away, speed - away - width}) {
                box = new Rectangle2D.Double(x, y, width, line);
                boolean inside =
                        speeds.getRange().contains(x) && speeds.getRange().contains(x + width);
                if (inside && taken.stream().noneMatch(box::intersects)) {
                    return box;
                }
            }
        }
        return box;
    }

    private static NumberAxis axis(String label, ChartWish wish) {
        NumberAxis axis = new NumberAxis(label);
        axis.setAutoRangeIncludesZero(false);
        axis.setNumberFormatOverride(new Axes.DegreeFormat(false, ""));
        Axes.style(axis, wish);
        return axis;
    }
}
