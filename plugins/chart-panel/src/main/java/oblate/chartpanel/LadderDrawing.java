/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import oblate.report.ChartContent;
import oblate.report.ladder.LadderChart;
import oblate.report.ladder.LadderFrame;
import oblate.workbench.look.Figures;
import oblate.workbench.words.Texts;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeriesCollection;

/** Draws ladders of map strips. Stateless. */
final class LadderDrawing implements Drawing {
    private static final Texts TEXTS = Texts.of(LadderDrawing.class);
    private static final double LEAST_SPAN_MS = 86_400_000;

    @Override
    public boolean draws(ChartContent content) {
        return content instanceof LadderChart;
    }

    @Override
    public void draw(ChartContent content, ChartWish look, Graphics2D graphics, Rectangle2D area) {
        LadderChart ladder = (LadderChart) content;
        List<BufferedImage> pictures = StripPictures.of(ladder, look);
        // How many strips find room is known once the plot's size is: a first drawing, seen by nobody, tells.
        BufferedImage nowhere = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB);
        Graphics2D scratch = nowhere.createGraphics();
        ChartRenderingInfo info = new ChartRenderingInfo();
        JFreeChart first = chart(ladder, pictures, look, 1);
        first.draw(scratch, area, info);
        scratch.dispose();
        PlotSpace space = PlotSpace.of(first.getXYPlot(), info.getPlotInfo().getDataArea());
        int leftOut = StripsMark.layout(ladder, space).leftOut();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        chart(ladder, pictures, look, leftOut).draw(graphics, area);
    }

    private static JFreeChart chart(LadderChart ladder, List<BufferedImage> pictures, ChartWish look, int leftOut) {
        double first = ladder.strips().get(0).midUtc().toEpochMilli();
        double last = ladder.strips().get(ladder.strips().size() - 1).midUtc().toEpochMilli();
        double room = Math.max(LEAST_SPAN_MS, (last - first) * 0.04);
        XYPlot plot = plot(ladder, pictures, Axes.dates(first - room, last + room, true, look), look);
        String names =
                String.join(", ", ladder.features().stream().map(Tracks::brief).toList());
        JFreeChart chart = TimeCharts.framed(
                plot,
                List.of(),
                look.of(
                        TEXTS.text(
                                "ladder.title",
                                names.isEmpty() ? ladder.frame().planet().label() : names),
                        ""));
        words(chart, ladder, look, leftOut);
        return chart;
    }

    /** The plot of a ladder over an axis of time that runs down. */
    static XYPlot plot(LadderChart ladder, List<BufferedImage> pictures, DateAxis dates, ChartWish look) {
        LadderFrame frame = ladder.frame();
        NumberAxis offsets =
                new NumberAxis(TEXTS.text("axis.frame", frame.system().label()));
        offsets.setRange(-frame.widthDeg() / 2, frame.widthDeg() / 2);
        offsets.setInverted(frame.eastSign() < 0 != ladder.southUp());
        offsets.setNumberFormatOverride(new Axes.DegreeFormat(false));
        Axes.style(offsets, look);
        XYPlot plot = new XYPlot(new XYSeriesCollection(), dates, offsets, new XYLineAndShapeRenderer(false, false));
        plot.setOrientation(PlotOrientation.HORIZONTAL);
        plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
        TimePlot.style(plot, look);
        plot.setAxisOffset(new RectangleInsets(4, StripsMark.GUTTER, 4, 4));
        plot.setDomainGridlinesVisible(false);
        plot.addAnnotation(new StripsMark(ladder, pictures, look));
        return plot;
    }

    /** What the drawing shows, in sentences. */
    static List<String> sentences(LadderChart ladder, int leftOut) {
        LadderFrame frame = ladder.frame();
        List<String> words = new ArrayList<>();
        words.add(frame.words() + ".");
        words.add(TEXTS.text(
                        ladder.southUp() ? "ladder.view.south" : "ladder.view.north",
                        Figures.fixed(frame.southDeg(), 1),
                        Figures.fixed(frame.northDeg(), 1))
                + " " + drawn(ladder.strips().size() - leftOut, leftOut));
        if (!ladder.remarks().isEmpty()) {
            words.add(TEXTS.text("ladder.left", String.join("; ", ladder.remarks())));
        }
        return words;
    }

    private static String drawn(int strips, int leftOut) {
        if (leftOut > 0) {
            return strips == 1
                    ? TEXTS.text("ladder.strips.left.one", Integer.toString(leftOut))
                    : TEXTS.text("ladder.strips.left", Integer.toString(strips), Integer.toString(leftOut));
        }
        return strips == 1
                ? TEXTS.text("ladder.strips.one")
                : TEXTS.text("ladder.strips.many", Integer.toString(strips));
    }

    private static void words(JFreeChart chart, LadderChart ladder, ChartWish look, int leftOut) {
        for (String sentence : sentences(ladder, leftOut)) {
            TextTitle title =
                    new TextTitle(sentence, look.font().deriveFont(look.font().getSize2D() - 1));
            title.setPaint(look.ink());
            title.setPosition(RectangleEdge.TOP);
            title.setHorizontalAlignment(HorizontalAlignment.LEFT);
            title.setTextAlignment(HorizontalAlignment.LEFT);
            title.setPadding(new RectangleInsets(1, 6, 1, 6));
            chart.addSubtitle(title);
        }
    }
}
