/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BasicStroke;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import oblate.sky.event.EventKind;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.timeline.SpanFill;
import oblate.workbench.words.Texts;

/** One line that tells what the marks in the rows are; what has no room is left out at its end. */
record RowLegend(Palette colours) {
    private static final Texts TEXTS = Texts.of(RowLegend.class);
    private static final int SWATCH_PX = 22;
    private static final int GAP_PX = 18;

    void paint(Graphics2D g, double leftPx, double topPx, double rightPx) {
        g.setFont(Theme.bodyFont(-2));
        FontMetrics m = g.getFontMetrics();
        double x = leftPx;
        double y = topPx + 14;
        for (int i = 0; i <= EventKind.values().length; i++) {
            String text = TEXTS.text(i == 0 ? "legend.crossing" : "legend." + EventKind.values()[i - 1].id());
            double w = SWATCH_PX + 6 + m.stringWidth(text);
            if (x + w > rightPx - 8) {
                return;
            }
            if (i == 0) {
                g.setColor(colours.quietInk());
                g.setStroke(new BasicStroke(1.2f));
                g.draw(new Line2D.Double(x, y, x + SWATCH_PX, y));
                SpanFill.FILLED.paint(g, new Rectangle2D.Double(x + 8, y - 5, 6, 10), colours.accent());
            } else {
                SpanFill.of(EventKind.values()[i - 1])
                        .paint(g, new Rectangle2D.Double(x, y - 4, SWATCH_PX, 8), colours.ink());
            }
            g.setColor(colours.quietInk());
            g.drawString(text, (float) (x + SWATCH_PX + 6), (float) (y + m.getAscent() / 2.0 - 1));
            x += w + GAP_PX;
        }
    }
}
