/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.report.SeriesChart.TimeAxis;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;

/** Builds the charts against time: longitude, latitude, residuals. Stateless. */
final class TimeCharts {
    private static final Texts TEXTS = Texts.of(TimeCharts.class);
    private static final double LEAST_LATITUDES_DEG = 4;

    private TimeCharts() {}

    /**
     * How a chart against time is drawn.
     *
     * @param timeAxis which way time runs
     * @param gapDays lines are dotted where no mark is for longer
     * @param until instant up to which motions are predicted
     */
    record Manner(TimeAxis timeAxis, double gapDays, Optional<Instant> until) {
        boolean down() {
            return timeAxis == TimeAxis.DOWN;
        }
    }

    /** Longitudes on the whole circle, or of the one feature the wish names, unwrapped on a scale of its own. */
    static JFreeChart longitudes(List<Fitted> fits, Manner manner, ChartWish wish) {
        List<Track> tracks = fits.stream()
                .filter(f -> wish.alone().isEmpty() || wish.alone().get().equals(f.name()))
                .map(f -> Tracks.longitudes(f, manner.gapDays(), manner.until()))
                .toList();
        boolean alone = wish.alone().isPresent() && !tracks.isEmpty();
        NumberAxis lons = alone ? Axes.turn(tracks.get(0), wish, manner.down()) : Axes.circle(wish, manner.down());
        DateAxis dates = Axes.dates(tracks, manner.until(), manner.down(), wish);
        int first = alone
                ? Math.max(
                        0,
                        fits.stream()
                                .map(Fitted::name)
                                .toList()
                                .indexOf(wish.alone().get()))
                : 0;
        XYPlot plot = TimePlot.of(
                tracks, dates, lons, manner.down(), !alone, new TimePlot.Inks(wish, first, Optional.empty()));
        return framed(plot, notes(tracks, manner), wish);
    }

    /** Planetographic latitudes. */
    static JFreeChart latitudes(List<Fitted> fits, Manner manner, ChartWish wish) {
        List<Track> tracks =
                fits.stream().map(f -> Tracks.latitudes(f, manner.gapDays())).toList();
        NumberAxis lats = Axes.around(TEXTS.text("axis.latitude"), tracks, LEAST_LATITUDES_DEG, wish);
        DateAxis dates = Axes.dates(tracks, Optional.empty(), manner.down(), wish);
        XYPlot plot =
                TimePlot.of(tracks, dates, lats, manner.down(), false, new TimePlot.Inks(wish, 0, Optional.empty()));
        List<String> notes = new ArrayList<>();
        notes.add(TEXTS.text("note.latitudes"));
        notes.addAll(notes(tracks, manner));
        return framed(plot, notes, wish);
    }

    /** Residuals, a plot for each feature over one axis of time. */
    static JFreeChart residuals(List<Fitted> fits, Manner manner, ChartWish wish) {
        List<Track> tracks =
                fits.stream().map(f -> Tracks.residuals(f, manner.gapDays())).toList();
        CombinedDomainXYPlot all = new CombinedDomainXYPlot(Axes.dates(tracks, Optional.empty(), manner.down(), wish));
        all.setOrientation(manner.down() ? PlotOrientation.HORIZONTAL : PlotOrientation.VERTICAL);
        all.setGap(manner.down() ? 14 : 8);
        for (int i = 0; i < tracks.size(); i++) {
            XYPlot one = residualPlot(tracks.get(i), null, manner.down(), new TimePlot.Inks(wish, i, Optional.empty()));
            all.add(one);
        }
        all.setOrientation(manner.down() ? PlotOrientation.HORIZONTAL : PlotOrientation.VERTICAL);
        List<String> notes = new ArrayList<>(notes(tracks, manner));
        if (tracks.stream().flatMap(t -> t.dots().stream()).anyMatch(d -> !d.used())) {
            notes.add(TEXTS.text("note.arrow"));
        }
        return framed(all, notes, wish);
    }

    /** One feature's residuals. */
    static XYPlot residualPlot(Track track, DateAxis dates, boolean down, TimePlot.Inks inks) {
        String label =
                down ? TEXTS.text("axis.residuals.of", Tracks.brief(track.name())) : TEXTS.text("axis.residuals");
        Track quiet = new Track(track.name(), "", track.dots(), track.runs(), List.of());
        XYPlot plot = TimePlot.of(
                List.of(quiet), dates, Axes.residuals(label, List.of(track), inks.wish()), down, false, inks);
        plot.addAnnotation(new CornerTag(down ? "" : track.tag(), inks.tag(0), inks.wish()));
        return plot;
    }

    private static List<String> notes(List<Track> tracks, Manner manner) {
        List<String> notes = new ArrayList<>();
        if (tracks.stream().flatMap(t -> t.dots().stream()).anyMatch(d -> !d.used())) {
            notes.add(TEXTS.text("note.hollow"));
        }
        if (tracks.stream().anyMatch(Track::hasGap)) {
            notes.add(TEXTS.text("note.dotted", Figures.fixed(manner.gapDays(), 0)));
        }
        if (tracks.stream().anyMatch(t -> !t.bands().isEmpty())) {
            notes.add(TEXTS.text("note.dashed"));
        }
        return notes;
    }

    /** A plot with the wish's title above and notes below. */
    static JFreeChart framed(Plot plot, List<String> notes, ChartWish wish) {
        JFreeChart chart = new JFreeChart(
                wish.title().isEmpty() ? null : wish.title(), wish.font().deriveFont(15f), plot, false);
        chart.setBackgroundPaint(wish.ground());
        chart.setPadding(new RectangleInsets(8, 8, 8, 16));
        if (chart.getTitle() != null) {
            chart.getTitle().setPaint(wish.ink());
        }
        if (!notes.isEmpty()) {
            String words = String.join("; ", notes);
            TextTitle below = new TextTitle(
                    words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1) + ".",
                    wish.font().deriveFont(wish.font().getSize2D() - 1));
            below.setPaint(wish.ink());
            below.setPosition(RectangleEdge.BOTTOM);
            below.setHorizontalAlignment(HorizontalAlignment.LEFT);
            below.setTextAlignment(HorizontalAlignment.LEFT);
            below.setPadding(new RectangleInsets(2, 6, 2, 6));
            chart.addSubtitle(below);
        }
        return chart;
    }
}
