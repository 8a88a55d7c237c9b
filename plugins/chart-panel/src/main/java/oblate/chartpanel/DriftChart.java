/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.text.SimpleDateFormat;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import oblate.drift.Drift;
import oblate.drift.DriftModel;
import oblate.drift.LongitudePoint;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Builds the chart of longitude against date: points with errors, fitted lines and curves, rejected marks hollow. Stateless. */
public final class DriftChart {
    private static final double LEAST_SPAN_DEG = 12;
    private static final double ROOM_MS = 2 * 86_400_000.0;
    private static final int CURVE_STEPS = 120;
    private static final Stroke BAR = new BasicStroke(1f);

    private DriftChart() {}

    /** Name of a dataset's series, so that a click can be traced to its feature and point. */
    record Key(int feature, boolean used) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            return Integer.compare(feature * 2 + (used ? 0 : 1), other.feature * 2 + (other.used ? 0 : 1));
        }
    }

    /** The chart of some features. */
    public static JFreeChart of(List<Fitted> fits, ChartWish wish) {
        List<Fitted> shown = fits.stream()
                .filter(f -> wish.alone().isEmpty() || wish.alone().get().equals(f.name()))
                .toList();
        boolean unwrapped = wish.alone().isPresent();
        XYPlot plot = new XYPlot();
        plot.setDomainAxis(longitudeAxis(shown, wish, unwrapped));
        plot.setRangeAxis(dateAxis(shown, wish));
        XYIntervalSeriesCollection points = new XYIntervalSeriesCollection();
        XYErrorRenderer pointRenderer = pointRenderer();
        XYSeriesCollection lines = new XYSeriesCollection();
        XYLineAndShapeRenderer lineRenderer = new XYLineAndShapeRenderer(true, false);
        lineRenderer.setDrawSeriesLineAsPath(true);
        for (int i = 0; i < shown.size(); i++) {
            Color colour = colour(i, wish);
            addPoints(points, pointRenderer, shown.get(i), i, colour, unwrapped, wish);
            addLine(lines, lineRenderer, shown.get(i), i, colour, unwrapped);
        }
        if (!unwrapped) {
            new NameLabels(plot, wish).add(shown, i -> colour(i, wish));
        }
        plot.setDataset(0, points);
        plot.setRenderer(0, pointRenderer);
        plot.setDataset(1, lines);
        plot.setRenderer(1, lineRenderer);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        plot.setBackgroundPaint(wish.ground());
        plot.setDomainGridlinePaint(wish.quiet());
        plot.setRangeGridlinePaint(wish.quiet());
        plot.setDomainGridlineStroke(BAR);
        plot.setRangeGridlineStroke(BAR);
        plot.setOutlinePaint(wish.quiet());
        plot.setAxisOffset(new RectangleInsets(4, 4, 4, 4));
        JFreeChart chart = new JFreeChart(
                wish.title().isEmpty() ? null : wish.title(), wish.font().deriveFont(15f), plot, false);
        chart.setBackgroundPaint(wish.ground());
        chart.setPadding(new RectangleInsets(8, 8, 8, 16));
        if (chart.getTitle() != null) {
            chart.getTitle().setPaint(wish.ink());
        }
        return chart;
    }

    private static XYErrorRenderer pointRenderer() {
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setDrawXError(true);
        renderer.setDrawYError(false);
        renderer.setCapLength(0);
        renderer.setErrorStroke(new BasicStroke(1.2f));
        return renderer;
    }

    private static Color colour(int index, ChartWish wish) {
        return wish.colours().get(index % wish.colours().size());
    }

    private static Shape shape(int index) {
        return switch (index % 3) {
            case 0 -> new Ellipse2D.Double(-3.6, -3.6, 7.2, 7.2);
            case 1 -> new Rectangle2D.Double(-3.3, -3.3, 6.6, 6.6);
            default -> diamond();
        };
    }

    private static Shape diamond() {
        Path2D d = new Path2D.Double();
        d.moveTo(-4.6, 0);
        d.lineTo(0, -4.6);
        d.lineTo(4.6, 0);
        d.lineTo(0, 4.6);
        d.closePath();
        return d;
    }

    private static void addPoints(
            XYIntervalSeriesCollection points,
            XYErrorRenderer renderer,
            Fitted fitted,
            int index,
            Color colour,
            boolean unwrapped,
            ChartWish wish) {
        XYIntervalSeries used = new XYIntervalSeries(new Key(index, true), false, true);
        XYIntervalSeries rejected = new XYIntervalSeries(new Key(index, false), false, true);
        List<LongitudePoint> all = fitted.series().points();
        for (int i = 0; i < all.size(); i++) {
            LongitudePoint p = all.get(i);
            double lon = unwrapped ? unwrapped(fitted, i) : Turns.reduced(p.lonDeg());
            double t = p.time().toEpochMilli();
            boolean counts = fitted.drift().isEmpty()
                    || fitted.drift().get().states().get(i).used();
            (counts ? used : rejected).add(lon, lon - p.sigmaDeg(), lon + p.sigmaDeg(), t, t, t);
        }
        points.addSeries(used);
        points.addSeries(rejected);
        for (int s = 2 * index; s < 2 * index + 2; s++) {
            renderer.setSeriesPaint(s, colour);
            renderer.setSeriesShape(s, shape(index / wish.colours().size()));
            renderer.setSeriesShapesFilled(s, s == 2 * index);
            renderer.setSeriesOutlinePaint(s, colour);
            renderer.setSeriesStroke(s, new BasicStroke(1.4f));
        }
        renderer.setErrorPaint(null);
        renderer.setDefaultFillPaint(wish.ground());
    }

    private static double unwrapped(Fitted fitted, int i) {
        return fitted.drift()
                .map(d -> d.states().get(i).unwrappedLonDeg())
                .orElse(fitted.series().points().get(i).lonDeg());
    }

    private static void addLine(
            XYSeriesCollection lines,
            XYLineAndShapeRenderer renderer,
            Fitted fitted,
            int index,
            Color colour,
            boolean unwrapped) {
        if (fitted.drift().isEmpty()) {
            return;
        }
        Drift drift = fitted.drift().get();
        List<Turns.Point> points = curve(drift);
        List<List<Turns.Point>> pieces = unwrapped ? List.of(points) : Turns.path(points);
        for (int k = 0; k < pieces.size(); k++) {
            XYSeries series = new XYSeries(index + "." + k, false, true);
            pieces.get(k).forEach(p -> series.add(p.lonDeg(), p.timeMs()));
            lines.addSeries(series);
            renderer.setSeriesPaint(
                    lines.getSeriesCount() - 1, new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), 170));
            renderer.setSeriesStroke(lines.getSeriesCount() - 1, new BasicStroke(1.6f));
        }
    }

    /** Points of the fitted motion over its arc: the two ends of a straight line, more of a curve. */
    private static List<Turns.Point> curve(Drift drift) {
        int steps = drift.motion() instanceof DriftModel.ConstantRate ? 1 : CURVE_STEPS;
        long spanMs = Duration.between(drift.firstUtc(), drift.lastUtc()).toMillis();
        List<Turns.Point> points = new ArrayList<>(steps + 1);
        for (int k = 0; k < steps; k++) {
            points.add(at(drift, drift.firstUtc().plusMillis(spanMs * k / steps)));
        }
        points.add(at(drift, drift.lastUtc()));
        return points;
    }

    private static Turns.Point at(Drift drift, Instant time) {
        return new Turns.Point(drift.unwrappedLonDegAt(time), time.toEpochMilli());
    }

    private static NumberAxis longitudeAxis(List<Fitted> shown, ChartWish wish, boolean unwrapped) {
        NumberAxis axis = new NumberAxis("Longitude, " + wish.system());
        axis.setInverted(wish.growsLeft());
        axis.setNumberFormatOverride(new DegreeFormat());
        axis.setAutoRangeIncludesZero(false);
        if (unwrapped && !shown.isEmpty() && !shown.get(0).series().points().isEmpty()) {
            Fitted one = shown.get(0);
            double least = Double.MAX_VALUE;
            double most = -Double.MAX_VALUE;
            for (int i = 0; i < one.series().points().size(); i++) {
                least = Math.min(least, unwrapped(one, i));
                most = Math.max(most, unwrapped(one, i));
            }
            double room = Math.max(LEAST_SPAN_DEG - (most - least), (most - least) * 0.16) / 2;
            axis.setRange(least - room, most + room);
        } else {
            axis.setRange(0, 360);
            axis.setTickUnit(new org.jfree.chart.axis.NumberTickUnit(30));
        }
        style(axis, wish);
        return axis;
    }

    private static DateAxis dateAxis(List<Fitted> shown, ChartWish wish) {
        TimeZone utc = TimeZone.getTimeZone("UTC");
        DateAxis axis = new DateAxis("Date, UTC", utc, Locale.ENGLISH);
        axis.setInverted(true);
        SimpleDateFormat day = new SimpleDateFormat("d MMM yyyy", Locale.ENGLISH);
        day.setTimeZone(utc);
        axis.setDateFormatOverride(day);
        double first = shown.stream()
                .flatMap(f -> f.series().points().stream())
                .mapToDouble(p -> p.time().toEpochMilli())
                .min()
                .orElse(0);
        double last = shown.stream()
                .flatMap(f -> f.series().points().stream())
                .mapToDouble(p -> p.time().toEpochMilli())
                .max()
                .orElse(1);
        double room = Math.max(ROOM_MS, (last - first) * 0.05);
        axis.setRange(new Date((long) (first - room)), new Date((long) (last + 1.6 * room)));
        style(axis, wish);
        return axis;
    }

    static void style(org.jfree.chart.axis.ValueAxis axis, ChartWish wish) {
        axis.setLabelPaint(wish.ink());
        axis.setTickLabelPaint(wish.ink());
        axis.setAxisLinePaint(wish.quiet());
        axis.setTickMarkPaint(wish.quiet());
        axis.setLabelFont(wish.font());
        axis.setTickLabelFont(wish.font().deriveFont(wish.font().getSize2D() - 1));
    }

    /** Longitudes of any turn, written 0°…360°. */
    private static final class DegreeFormat extends NumberFormat {
        private static final long serialVersionUID = 1L;
        private final DecimalFormat digits =
                new DecimalFormat("0.#", java.text.DecimalFormatSymbols.getInstance(Locale.ROOT));

        @Override
        public StringBuffer format(double number, StringBuffer to, FieldPosition position) {
            double lon = number == 360 ? 360 : Turns.reduced(number);
            return to.append(digits.format(lon)).append('°');
        }

        @Override
        public StringBuffer format(long number, StringBuffer to, FieldPosition position) {
            return format((double) number, to, position);
        }

        @Override
        public Number parse(String source, ParsePosition position) {
            return digits.parse(source, position);
        }
    }
}
