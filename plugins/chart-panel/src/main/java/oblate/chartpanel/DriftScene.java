/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import oblate.report.ladder.LadderChart;
import oblate.report.ladder.LadderFrame;
import oblate.workbench.words.Texts;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleInsets;

/**
 * What the panel of drifts shows: longitudes, beside them the ladder on the same axis of time, below them residuals of the chosen feature. Immutable; drawn in the
 * background into a picture.
 *
 * @param widthPx width
 * @param heightPx height
 * @param scale pixels of the screen for one of these
 * @param fits features
 * @param chosen name of the chosen one; the others are drawn paler
 * @param manner how time runs, gaps, prediction
 * @param look colours; with {@code alone} set only that feature is shown, unwrapped
 * @param range what is shown of time; empty for all
 * @param ladder the ladder; empty while there is none
 * @param ladderWords said in its place; empty for no ladder at all
 * @param ladderPx width of the ladder's place; 0 for no room
 */
record DriftScene(
        int widthPx,
        int heightPx,
        double scale,
        List<Fitted> fits,
        Optional<String> chosen,
        TimeCharts.Manner manner,
        ChartWish look,
        Optional<Range> range,
        Optional<LadderChart> ladder,
        String ladderWords,
        int ladderPx) {
    private static final Texts TEXTS = Texts.of(DriftScene.class);
    private static final double RESIDUAL_SHARE = 0.24;
    private static final int ROOMY_PX = 290;

    /**
     * A stretch of time.
     *
     * @param fromMs its beginning (ms since 1970)
     * @param toMs its end
     */
    record Range(double fromMs, double toMs) {}

    /**
     * The scene as drawn.
     *
     * @param scene what was drawn
     * @param image its pixels
     * @param tracks tracks of longitude, one per feature shown
     * @param round whether they are on the whole circle
     * @param longitudes where they are
     * @param residuals the chosen feature's residuals
     * @param residualSpace where they are
     * @param ladderSpace where the ladder is
     * @param shown the stretch of time shown
     */
    record Drawn(
            DriftScene scene,
            BufferedImage image,
            List<Track> tracks,
            boolean round,
            PlotSpace longitudes,
            Optional<Track> residuals,
            Optional<PlotSpace> residualSpace,
            Optional<PlotSpace> ladderSpace,
            Range shown) {}

    /** About how many strips of the usual shape find room in a ladder of such a width in a scene of such a height. */
    static int stripsWithRoom(int ladderPx, int heightPx) {
        double strip = (ladderPx - 70) * 2 * LadderFrame.USUAL_HALF_HEIGHT_DEG / LadderFrame.USUAL_WIDTH_DEG;
        double room = heightPx * (1 - RESIDUAL_SHARE) - 60;
        return (int) Math.max(4, Math.min(60, room / Math.max(12, strip + 3)));
    }

    /** Whether the ladder, or words about it, have a place. */
    boolean hasLadder() {
        return ladderPx > 0 && (ladder.isPresent() || !ladderWords.isEmpty());
    }

    private Optional<Fitted> chosenFit() {
        return chosen.flatMap(
                name -> fits.stream().filter(f -> f.name().equals(name)).findFirst());
    }

    Drawn draw() {
        BufferedImage image = new BufferedImage(
                (int) Math.ceil(widthPx * scale), (int) Math.ceil(heightPx * scale), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.scale(scale, scale);
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setPaint(look.ground());
        g.fillRect(0, 0, widthPx, heightPx);
        Optional<Fitted> withResiduals = chosenFit().filter(f -> f.drift().isPresent());
        double below = withResiduals.isPresent() ? Math.max(100, Math.min(200, heightPx * RESIDUAL_SHARE)) : 0;
        double beside = hasLadder() ? ladderPx : 0;
        Rectangle2D left = new Rectangle2D.Double(0, 0, widthPx - beside, heightPx - below);
        Rectangle2D right = new Rectangle2D.Double(widthPx - beside, 0, beside, heightPx - below);

        List<Track> tracks = shown().stream()
                .map(f -> Tracks.longitudes(f, manner.gapDays(), manner.until()))
                .toList();
        DateAxis dates = ranged(Axes.dates(tracks, manner.until(), manner.down(), look));
        boolean alone = look.alone().isPresent() && !tracks.isEmpty();
        NumberAxis lons = alone ? Axes.turn(tracks.get(0), look, manner.down()) : Axes.circle(look, manner.down());
        if (!alone) {
            Axes.room(lons, manner.down() ? left.getWidth() : left.getHeight());
        }
        Axes.tick(dates, ticks(manner.down(), left));
        XYPlot plot = TimePlot.of(tracks, dates, lons, manner.down(), !alone, inks(alone));
        PlotSpace space = PlotSpace.of(plot, drawn(plot, g, left));
        Optional<PlotSpace> ladderSpace = drawLadder(g, right, dates);
        Optional<Track> residuals = withResiduals.map(f -> Tracks.residuals(f, manner.gapDays()));
        Optional<PlotSpace> residualSpace = residuals.map(track -> {
            DateAxis own = Axes.dates(dates.getLowerBound(), dates.getUpperBound(), false, look);
            own.setLabel(null);
            XYPlot below2 = TimeCharts.residualPlot(track, own, false, inks(true));
            return PlotSpace.of(below2, drawn(below2, g, new Rectangle2D.Double(0, heightPx - below, widthPx, below)));
        });
        g.dispose();
        return new Drawn(
                this,
                image,
                tracks,
                !alone,
                space,
                residuals,
                residualSpace,
                ladderSpace,
                new Range(dates.getLowerBound(), dates.getUpperBound()));
    }

    private List<Fitted> shown() {
        return fits.stream()
                .filter(f -> look.alone().isEmpty() || look.alone().get().equals(f.name()))
                .toList();
    }

    private TimePlot.Inks inks(boolean chosenOnly) {
        List<String> names = fits.stream().map(Fitted::name).toList();
        int at = chosen.map(names::indexOf).orElse(-1);
        return chosenOnly
                ? new TimePlot.Inks(look, Math.max(0, at), Optional.empty())
                : new TimePlot.Inks(look, 0, at < 0 ? Optional.empty() : Optional.of(at));
    }

    private DateAxis ranged(DateAxis axis) {
        range.ifPresent(r -> axis.setRange(r.fromMs(), r.toMs()));
        return axis;
    }

    private static int ticks(boolean down, Rectangle2D area) {
        return (int) Math.max(2, down ? area.getHeight() / 34 : 1 + (area.getWidth() - 110) / 95);
    }

    private Optional<PlotSpace> drawLadder(Graphics2D g, Rectangle2D right, DateAxis dates) {
        if (!hasLadder()) {
            return Optional.empty();
        }
        if (ladder.isPresent()) {
            DateAxis own = Axes.dates(dates.getLowerBound(), dates.getUpperBound(), true, look);
            own.setLabel(null);
            Axes.tick(own, ticks(true, right));
            // Beside the chart the dates stand there already.
            own.setTickLabelsVisible(!manner.down());
            XYPlot plot = LadderDrawing.plot(ladder.get(), StripPictures.of(ladder.get(), look), own, look);
            plot.getRangeAxis()
                    .setLabel(TEXTS.text(
                            ladderPx < ROOMY_PX ? "axis.frame.briefest" : "axis.frame.brief", look.system()));
            return Optional.of(PlotSpace.of(plot, drawn(plot, g, right)));
        }
        if (!ladderWords.isEmpty()) {
            g.setPaint(new Color(look.ink().getRGB()));
            g.setFont(look.font());
            List<String> lines = wrapped(ladderWords, Math.max(10, (int) (right.getWidth() / 8.5)));
            double y = right.getCenterY() - lines.size() * 9.0;
            for (String line : lines) {
                double width = g.getFontMetrics().stringWidth(line);
                g.drawString(line, (float) (right.getCenterX() - width / 2), (float) y);
                y += 18;
            }
        }
        return Optional.empty();
    }

    private static List<String> wrapped(String words, int letters) {
        List<String> lines = new java.util.ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.split(" ")) {
            if (line.length() > 0 && line.length() + word.length() + 1 > letters) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** Draws a plot into an area and tells where its data are. */
    private Rectangle2D drawn(XYPlot plot, Graphics2D g, Rectangle2D area) {
        JFreeChart chart = TimeCharts.framed(plot, List.of(), look);
        chart.setPadding(new RectangleInsets(4, 8, 4, 12));
        ChartRenderingInfo info = new ChartRenderingInfo();
        chart.draw(g, area, info);
        return info.getPlotInfo().getDataArea();
    }
}
