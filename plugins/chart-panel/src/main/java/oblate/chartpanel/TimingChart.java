/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import oblate.drift.timing.NightClock;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.Timing;
import oblate.report.TimingsChart;
import oblate.sky.MoonFacts;
import oblate.workbench.words.Texts;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;

/**
 * Builds the chart of O−P in seconds against date: a colour for each moon, a shape for each phenomenon, hollow where in doubt; behind them each night's mean as a
 * bar, one standard error to each side. Stateless.
 */
final class TimingChart {
    private static final Texts TEXTS = Texts.of(TimingChart.class);
    private static final double DAY_MS = 86_400_000;
    /** Points of one night stand side by side, so far apart (share of the width). */
    private static final double STEP_SHARE = 0.006;

    private static final double LEAST_ROOM_S = 4;

    private TimingChart() {}

    /** The chart. */
    static JFreeChart of(TimingsChart content, ChartWish wish) {
        List<MoonFacts> moons = content.planet().moons().stream()
                .filter(m ->
                        content.timings().stream().anyMatch(t -> t.moon().id().equals(m.id())))
                .toList();
        DateAxis dates = dates(content, wish);
        double stepMs = dates.getRange().getLength() * STEP_SHARE;
        NumberAxis seconds = seconds(content.timings(), wish);
        XYIntervalSeriesCollection data = new XYIntervalSeriesCollection();
        XYErrorRenderer renderer = renderer(wish);
        Map<LocalDate, List<Timing>> nights = new LinkedHashMap<>();
        content.timings().forEach(t -> nights.computeIfAbsent(t.night(), n -> new ArrayList<>())
                .add(t));
        XYPlot plot = new XYPlot(data, dates, seconds, renderer);
        nights.forEach((night, timings) -> {
            for (int i = 0; i < timings.size(); i++) {
                double x = middleMs(night) + (i - (timings.size() - 1) / 2.0) * stepMs;
                add(
                        data,
                        renderer,
                        timings.get(i),
                        x,
                        colour(moons, timings.get(i).moon(), wish));
            }
        });
        content.nights().stream().filter(n -> n.timings() > 1).forEach(n -> {
            int width = nights.getOrDefault(n.night(), List.of()).size() + 1;
            plot.addAnnotation(mean(n, width * stepMs / 2, wish), false);
        });
        ValueMarker zero = new ValueMarker(0, wish.ink(), new BasicStroke(0.8f));
        plot.addRangeMarker(zero);
        plot.setBackgroundPaint(wish.ground());
        plot.setDomainGridlinePaint(wish.quiet());
        plot.setRangeGridlinePaint(wish.quiet());
        plot.setDomainGridlineStroke(new BasicStroke(1f));
        plot.setRangeGridlineStroke(new BasicStroke(1f));
        plot.setOutlinePaint(wish.quiet());
        plot.setAxisOffset(new RectangleInsets(4, 4, 4, 4));
        plot.setFixedLegendItems(legend(content, moons, wish));
        JFreeChart chart = TimeCharts.framed(plot, notes(content, seconds), wish);
        chart.addSubtitle(0, legendTitle(plot, wish));
        // room for half of the last date
        chart.setPadding(new RectangleInsets(8, 8, 8, 44));
        return chart;
    }

    private static double middleMs(LocalDate night) {
        return night.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant().toEpochMilli();
    }

    private static DateAxis dates(TimingsChart content, ChartWish wish) {
        double first = content.timings().stream()
                .mapToDouble(t -> middleMs(t.night()))
                .min()
                .orElseThrow();
        double last = content.timings().stream()
                .mapToDouble(t -> middleMs(t.night()))
                .max()
                .orElseThrow();
        double room = Math.max(2 * DAY_MS, (last - first) * 0.06);
        DateAxis axis = Axes.dates(first - room, last + room, false, wish);
        axis.setLabel(TEXTS.text("axis.nights"));
        return axis;
    }

    /** Zero is always in it; what is in doubt does not stretch it. */
    private static NumberAxis seconds(List<Timing> timings, ChartWish wish) {
        List<Timing> sure = timings.stream().filter(t -> t.doubts().isEmpty()).toList();
        List<Timing> shown = sure.isEmpty() ? timings : sure;
        double low = shown.stream()
                .mapToDouble(t -> t.oMinusPS() - t.errors().totalS())
                .min()
                .orElseThrow();
        double high = shown.stream()
                .mapToDouble(t -> t.oMinusPS() + t.errors().totalS())
                .max()
                .orElseThrow();
        NumberAxis axis = new NumberAxis(TEXTS.text("axis.timings"));
        double room = Math.max(LEAST_ROOM_S, 0.08 * (Math.max(high, 0) - Math.min(low, 0)));
        axis.setRange(Math.min(low, 0) - room, Math.max(high, 0) + room);
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setMinusSign('\u2212');
        axis.setNumberFormatOverride(new DecimalFormat("0.##", symbols));
        Axes.style(axis, wish);
        return axis;
    }

    private static XYErrorRenderer renderer(ChartWish wish) {
        XYErrorRenderer renderer = new XYErrorRenderer();
        renderer.setDrawXError(false);
        renderer.setDrawYError(true);
        renderer.setCapLength(0);
        renderer.setErrorStroke(new BasicStroke(1.2f));
        renderer.setErrorPaint(null);
        renderer.setDefaultFillPaint(wish.ground());
        renderer.setUseFillPaint(false);
        return renderer;
    }

    private static void add(
            XYIntervalSeriesCollection data, XYErrorRenderer renderer, Timing timing, double x, Color colour) {
        int index = data.getSeriesCount();
        XYIntervalSeries one = new XYIntervalSeries(index, false, true);
        double sigma = timing.errors().totalS();
        one.add(x, x, x, timing.oMinusPS(), timing.oMinusPS() - sigma, timing.oMinusPS() + sigma);
        data.addSeries(one);
        renderer.setSeriesPaint(index, colour);
        renderer.setSeriesShape(index, shape(timing.phenomenon()));
        renderer.setSeriesShapesFilled(index, timing.doubts().isEmpty());
        renderer.setSeriesStroke(index, new BasicStroke(1.4f));
    }

    private static Color colour(List<MoonFacts> moons, MoonFacts moon, ChartWish wish) {
        for (int i = 0; i < moons.size(); i++) {
            if (moons.get(i).id().equals(moon.id())) {
                return wish.colours().get(i % wish.colours().size());
            }
        }
        return wish.ink();
    }

    private static XYBoxAnnotation mean(NightClock night, double halfMs, ChartWish wish) {
        Color ink = wish.ink();
        return new XYBoxAnnotation(
                middleMs(night.night()) - halfMs,
                night.fastS() - night.sigmaS(),
                middleMs(night.night()) + halfMs,
                night.fastS() + night.sigmaS(),
                null,
                null,
                new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), 40));
    }

    private static Shape shape(Phenomenon phenomenon) {
        return switch (phenomenon) {
            case TRANSIT -> new Ellipse2D.Double(-3.8, -3.8, 7.6, 7.6);
            case SHADOW_TRANSIT -> new Rectangle2D.Double(-3.4, -3.4, 6.8, 6.8);
            case OCCULTATION -> polygon(-4.4, 3.6, 4.4, 3.6, 0, -4.6);
            case ECLIPSE -> polygon(-4.4, -3.6, 4.4, -3.6, 0, 4.6);
            case BESIDE -> polygon(-4.6, 0, 0, -4.6, 4.6, 0, 0, 4.6);
        };
    }

    private static Path2D polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }

    private static LegendItemCollection legend(TimingsChart content, List<MoonFacts> moons, ChartWish wish) {
        LegendItemCollection items = new LegendItemCollection();
        Shape bar = new Rectangle2D.Double(-6, -2, 12, 4);
        moons.forEach(m -> items.add(item(m.name(), bar, colour(moons, m, wish), wish)));
        for (Phenomenon each : Phenomenon.values()) {
            if (content.timings().stream().anyMatch(t -> t.phenomenon() == each)) {
                items.add(item(each.words(), shape(each), wish.ink(), wish));
            }
        }
        return items;
    }

    private static LegendItem item(String words, Shape shape, Color colour, ChartWish wish) {
        LegendItem item = new LegendItem(words, null, null, null, shape, colour);
        item.setLabelFont(wish.font());
        item.setLabelPaint(wish.ink());
        return item;
    }

    private static LegendTitle legendTitle(XYPlot plot, ChartWish wish) {
        LegendTitle legend = new LegendTitle(plot);
        legend.setPosition(RectangleEdge.TOP);
        legend.setBackgroundPaint(wish.ground());
        legend.setItemFont(wish.font());
        legend.setItemPaint(wish.ink());
        return legend;
    }

    private static List<String> notes(TimingsChart content, NumberAxis seconds) {
        List<String> notes = new ArrayList<>();
        notes.add(TEXTS.text("note.timings"));
        if (content.nights().stream().anyMatch(n -> n.timings() > 1)) {
            notes.add(TEXTS.text("note.mean"));
        }
        if (content.timings().stream().anyMatch(t -> !t.doubts().isEmpty())) {
            notes.add(TEXTS.text("note.doubt"));
        }
        long beyond = content.timings().stream()
                .filter(t -> !seconds.getRange().contains(t.oMinusPS()))
                .count();
        if (beyond > 0) {
            notes.add(TEXTS.text("note.beyond", Long.toString(beyond)));
        }
        return notes;
    }
}
