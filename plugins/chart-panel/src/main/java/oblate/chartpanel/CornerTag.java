/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** Words in the upper left corner of a plot, on the plot's ground. */
final class CornerTag extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private final String words;
    private final Color colour;
    private final Color ground;
    private final Font font;

    CornerTag(String words, Color colour, ChartWish wish) {
        this.words = words;
        this.colour = colour;
        ground = wish.ground();
        font = wish.font().deriveFont(Font.BOLD, wish.font().getSize2D() - 1);
    }

    @Override
    @SuppressWarnings("checkstyle:ParameterNumber") // the library's signature
    public void draw(
            Graphics2D g,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis times,
            ValueAxis values,
            int renderer,
            PlotRenderingInfo info) {
        if (words.isEmpty()) {
            return;
        }
        g.setFont(font);
        var size = g.getFontMetrics();
        double x = area.getX() + 6;
        double y = area.getY() + 3;
        g.setPaint(ground);
        g.fill(new Rectangle2D.Double(x - 2, y, size.stringWidth(words) + 4.0, size.getHeight()));
        g.setPaint(colour);
        g.drawString(words, (float) x, (float) (y + size.getAscent()));
    }
}
