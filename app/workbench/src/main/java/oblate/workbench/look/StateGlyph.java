/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import oblate.workbench.words.Texts;

/** Paints how far a picture has come, by shape: hollow new, half fitted, full measured, tick reported, triangle needs a look. */
public final class StateGlyph {
    private static final Texts TEXTS = Texts.of(StateGlyph.class);
    /** How far a picture has come. */
    public enum State {
        NEW,
        FITTED,
        MEASURED,
        REPORTED,
        NEEDS_A_LOOK;

        /** What a person reads. */
        public String word() {
            return TEXTS.word("state", this);
        }
    }

    private StateGlyph() {}

    /**
     * Paints the glyph.
     *
     * @param x left edge (px)
     * @param y upper edge (px)
     * @param sizePx width and height (px)
     */
    public static void paint(Graphics2D g, State state, double x, double y, double sizePx, Color colour) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.setStroke(new BasicStroke(1.5f));
        g2.setColor(colour);
        Ellipse2D ring = new Ellipse2D.Double(x + 1, y + 1, sizePx - 2, sizePx - 2);
        switch (state) {
            case NEW -> g2.draw(ring);
            case FITTED -> {
                g2.draw(ring);
                g2.fill(new Arc2D.Double(ring.getBounds2D(), 90, 180, Arc2D.PIE));
            }
            case MEASURED -> {
                g2.draw(ring);
                g2.fill(ring);
            }
            case REPORTED -> {
                g2.draw(ring);
                g2.fill(ring);
                Path2D tick = new Path2D.Double();
                tick.moveTo(x + sizePx * 0.27, y + sizePx * 0.52);
                tick.lineTo(x + sizePx * 0.44, y + sizePx * 0.70);
                tick.lineTo(x + sizePx * 0.75, y + sizePx * 0.33);
                // Cut out of the full disc: whatever lies behind shows through as the tick.
                g2.setColor(Contrast.against(colour));
                g2.draw(tick);
            }
            case NEEDS_A_LOOK -> {
                Path2D triangle = new Path2D.Double();
                triangle.moveTo(x + sizePx / 2, y + 0.5);
                triangle.lineTo(x + sizePx - 0.5, y + sizePx - 1);
                triangle.lineTo(x + 0.5, y + sizePx - 1);
                triangle.closePath();
                g2.draw(triangle);
                g2.fill(new Ellipse2D.Double(x + sizePx / 2 - 1, y + sizePx * 0.55, 2, 2));
            }
            default -> throw new IllegalStateException(state.name());
        }
        g2.dispose();
    }
}
