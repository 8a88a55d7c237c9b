/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Builds a plot of tracks against time: time is its domain, the values its range; turned by its orientation. Stateless. */
final class TimePlot {
    static final int DOTS = 0;
    static final int LINES = 1;

    private TimePlot() {}

    /** Name of a dataset's series, so that it can be traced to its track. */
    record Key(int track, boolean used) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            return Integer.compare(track * 2 + (used ? 0 : 1), other.track * 2 + (other.used ? 0 : 1));
        }
    }

    /**
     * A plot.
     *
     * @param round whether the values are longitudes that go round 0…360
     */
    static XYPlot of(
            List<Track> tracks, ValueAxis times, ValueAxis values, boolean timeDown, boolean round, Inks inks) {
        XYPlot plot = new XYPlot();
        plot.setOrientation(timeDown ? PlotOrientation.HORIZONTAL : PlotOrientation.VERTICAL);
        plot.setDomainAxis(times);
        plot.setRangeAxis(values);
        plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
        XYErrorRenderer dots = dotRenderer(inks.wish());
        XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
        lines.setDrawSeriesLineAsPath(true);
        XYIntervalSeriesCollection dotData = new XYIntervalSeriesCollection();
        XYSeriesCollection lineData = new XYSeriesCollection();
        List<Color> tagColours = new ArrayList<>();
        for (int i = 0; i < tracks.size(); i++) {
            Color colour = inks.colour(i);
            tagColours.add(inks.tag(i));
            addDots(dotData, dots, tracks.get(i), i, round, inks);
            for (Track.Run run : tracks.get(i).runs()) {
                addRun(lineData, lines, run, colour, round);
            }
            for (Track.Band band : tracks.get(i).bands()) {
                lines.addAnnotation(new BandMark(band, colour, round), Layer.BACKGROUND);
            }
            if (!round) {
                plot.addAnnotation(new EdgeArrows(tracks.get(i), colour));
            }
        }
        Font bold = inks.wish().font().deriveFont(Font.BOLD, inks.wish().font().getSize2D() - 1);
        plot.addAnnotation(new NameTags(
                tracks,
                tagColours,
                i -> inks.stands(i) ? bold : bold.deriveFont(Font.PLAIN),
                inks.wish().ground(),
                v -> round ? Turns.reduced(v) : v));
        plot.setDataset(DOTS, dotData);
        plot.setRenderer(DOTS, dots);
        plot.setDataset(LINES, lineData);
        plot.setRenderer(LINES, lines);
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        style(plot, inks.wish());
        return plot;
    }

    /**
     * Look and colours of a plot.
     *
     * @param wish the look
     * @param first place of the first track among all features: its colour and shape
     * @param chosen the track that stands out; the others are drawn paler
     */
    record Inks(ChartWish wish, int first, Optional<Integer> chosen) {
        private static final double PALE = 0.42;

        Color colour(int track) {
            Color full = wish.colours().get((first + track) % wish.colours().size());
            return stands(track) ? full : mixed(full, wish.ground(), PALE);
        }

        /** Whether a track stands out, as all do when none is chosen. */
        boolean stands(int track) {
            return chosen.isEmpty() || chosen.get() == track;
        }

        private static Color mixed(Color a, Color b, double share) {
            return new Color(
                    (int) Math.round(share * a.getRed() + (1 - share) * b.getRed()),
                    (int) Math.round(share * a.getGreen() + (1 - share) * b.getGreen()),
                    (int) Math.round(share * a.getBlue() + (1 - share) * b.getBlue()));
        }

        /** What a track's name is written in: its colour, drawn toward the ink until it reads on the ground (WCAG AA). */
        Color tag(int track) {
            Color full = wish.colours().get((first + track) % wish.colours().size());
            Color read = full;
            for (int step = 1; step <= 10 && contrast(read, wish.ground()) < 4.5; step++) {
                read = mixed(full, wish.ink(), 1 - step / 10.0);
            }
            return read;
        }

        private static double contrast(Color a, Color b) {
            double light = Math.max(luminance(a), luminance(b));
            double dark = Math.min(luminance(a), luminance(b));
            return (light + 0.05) / (dark + 0.05);
        }

        private static double luminance(Color c) {
            return 0.2126 * linear(c.getRed()) + 0.7152 * linear(c.getGreen()) + 0.0722 * linear(c.getBlue());
        }

        private static double linear(int part) {
            double v = part / 255.0;
            return v <= 0.03928 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
        }

        Shape shape(int track) {
            return switch ((first + track) / wish.colours().size() % 3) {
                case 0 -> new Ellipse2D.Double(-3.6, -3.6, 7.2, 7.2);
                case 1 -> new Rectangle2D.Double(-3.3, -3.3, 6.6, 6.6);
                default -> diamond();
            };
        }
    }

    static void style(XYPlot plot, ChartWish wish) {
        plot.setBackgroundPaint(wish.ground());
        plot.setDomainGridlinePaint(wish.quiet());
        plot.setRangeGridlinePaint(wish.quiet());
        plot.setDomainGridlineStroke(new BasicStroke(1f));
        plot.setRangeGridlineStroke(new BasicStroke(1f));
        plot.setRangeZeroBaselineVisible(false);
        plot.setOutlinePaint(wish.quiet());
        plot.setAxisOffset(new RectangleInsets(4, 4, 4, 4));
    }

    private static XYErrorRenderer dotRenderer(ChartWish wish) {
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setDrawXError(false);
        renderer.setDrawYError(true);
        renderer.setCapLength(0);
        renderer.setErrorStroke(new BasicStroke(1.2f));
        renderer.setErrorPaint(null);
        renderer.setUseFillPaint(true);
        renderer.setDefaultFillPaint(wish.ground());
        renderer.setDrawOutlines(true);
        return renderer;
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

    private static void addDots(
            XYIntervalSeriesCollection data,
            XYErrorRenderer renderer,
            Track track,
            int index,
            boolean round,
            Inks inks) {
        XYIntervalSeries used = new XYIntervalSeries(new Key(index, true), false, true);
        XYIntervalSeries leftOut = new XYIntervalSeries(new Key(index, false), false, true);
        for (Track.Dot dot : track.dots()) {
            double t = dot.time().toEpochMilli();
            double v = round ? Turns.reduced(dot.value()) : dot.value();
            (dot.used() ? used : leftOut).add(t, t, t, v, v - dot.sigma(), v + dot.sigma());
        }
        data.addSeries(used);
        data.addSeries(leftOut);
        for (int s = 2 * index; s < 2 * index + 2; s++) {
            renderer.setSeriesPaint(s, inks.colour(index));
            renderer.setSeriesShape(s, inks.shape(index));
            renderer.setSeriesOutlinePaint(s, inks.colour(index));
            renderer.setSeriesOutlineStroke(s, new BasicStroke(1.4f));
        }
        // Hollow is filled with the ground, so that no error bar shows through.
        renderer.setSeriesFillPaint(2 * index, inks.colour(index));
        renderer.setSeriesFillPaint(2 * index + 1, inks.wish().ground());
    }

    private static void addRun(
            XYSeriesCollection data, XYLineAndShapeRenderer renderer, Track.Run run, Color colour, boolean round) {
        for (List<Turns.Point> piece : round ? Turns.path(run.points()) : List.of(run.points())) {
            int s = data.getSeriesCount();
            XYSeries series = new XYSeries(s, false, true);
            piece.forEach(p -> series.add(p.timeMs(), p.lonDeg()));
            data.addSeries(series);
            renderer.setSeriesPaint(s, new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), 190));
            renderer.setSeriesStroke(s, stroke(run.style()));
        }
    }

    private static Stroke stroke(Track.Style style) {
        return switch (style) {
            case SOLID -> new BasicStroke(1.6f);
            case DOTTED -> dashes(1.6f, 1.6f, 4f);
            case DASHED -> dashes(1.4f, 6f, 4f);
            case THIN -> dashes(0.9f, 10f, 3f);
        };
    }

    private static Stroke dashes(float width, float on, float off) {
        return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {on, off}, 0);
    }
}
