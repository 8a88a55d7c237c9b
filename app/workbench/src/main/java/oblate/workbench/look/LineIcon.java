/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.BasicStroke;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.function.Consumer;
import javax.swing.Icon;

/** A small line drawing on a field of 24 × 24 units, in the colour of the component that shows it; sharp at any size. */
public final class LineIcon implements Icon {
    private static final double FIELD = 24;
    private final int sizePx;
    private final Consumer<Graphics2D> drawing;

    /**
     * @param sizePx width and height (px)
     * @param drawing draws on a field of 24 × 24 units with a stroke of 1.6 units set
     */
    public LineIcon(int sizePx, Consumer<Graphics2D> drawing) {
        this.sizePx = sizePx;
        this.drawing = drawing;
    }

    @Override
    public void paintIcon(Component c, Graphics g, int x, int y) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.translate(x, y);
        g2.scale(sizePx / FIELD, sizePx / FIELD);
        g2.setStroke(new BasicStroke(1.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        if (c != null) {
            g2.setColor(c.isEnabled() ? c.getForeground() : c.getForeground().darker());
        }
        drawing.accept(g2);
        g2.dispose();
    }

    @Override
    public int getIconWidth() {
        return sizePx;
    }

    @Override
    public int getIconHeight() {
        return sizePx;
    }
}
