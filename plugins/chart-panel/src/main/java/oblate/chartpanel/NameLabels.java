/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Color;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import oblate.drift.LongitudePoint;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.TextAnchor;

/** Writes each feature's name under its last point, further down where another name stands already. */
final class NameLabels {
    /** Room of a letter and of a line, as shares of the chart's width and height; generous, since the size is not known yet. */
    private static final double LETTER_SHARE = 0.0108;

    private static final double LINE_SHARE = 0.021;
    private final XYPlot plot;
    private final ChartWish wish;
    private final List<Rectangle2D> taken = new ArrayList<>();

    NameLabels(XYPlot plot, ChartWish wish) {
        this.plot = plot;
        this.wish = wish;
    }

    void add(List<Fitted> shown, IntFunction<Color> colours) {
        double lineMs = plot.getRangeAxis().getRange().getLength() * LINE_SHARE;
        double letterDeg = plot.getDomainAxis().getRange().getLength() * LETTER_SHARE;
        for (int i = 0; i < shown.size(); i++) {
            Fitted fitted = shown.get(i);
            int index = i;
            fitted.series().points().stream()
                    .max(java.util.Comparator.comparing(LongitudePoint::time))
                    .ifPresent(last -> place(fitted.name(), last, letterDeg, lineMs, colours.apply(index)));
        }
    }

    private void place(String name, LongitudePoint last, double letterDeg, double lineMs, Color colour) {
        double width = name.length() * letterDeg;
        double middle = Math.max(width / 2, Math.min(360 - width / 2, Turns.reduced(last.lonDeg())));
        Rectangle2D box =
                new Rectangle2D.Double(middle - width / 2, last.time().toEpochMilli() + 0.5 * lineMs, width, lineMs);
        for (int line = 0; line < 6 && taken.stream().anyMatch(box::intersects); line++) {
            box = new Rectangle2D.Double(box.getX(), box.getY() + lineMs, width, lineMs);
        }
        taken.add(box);
        XYTextAnnotation text = new XYTextAnnotation(name, middle, box.getY());
        text.setPaint(colour);
        text.setFont(wish.font().deriveFont(Font.BOLD, wish.font().getSize2D() - 1));
        text.setTextAnchor(TextAnchor.TOP_CENTER);
        plot.addAnnotation(text);
    }
}
