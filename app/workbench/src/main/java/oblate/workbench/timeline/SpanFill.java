/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.timeline;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import oblate.sky.event.EventKind;

/** How a stretch of time is filled, so that kinds are told apart in one colour too. */
public enum SpanFill {
    /** Filled: a moon before the disc. */
    FILLED,
    /** Slanted lines: a shadow on the disc. */
    HATCHED,
    /** Outline only: behind the disc. */
    HOLLOW,
    /** Dots within an outline: in the planet's shadow. */
    DOTTED;

    private static final double HATCH_PX = 5;
    private static final double DOT_PX = 4;

    /** The one for a kind of event. */
    public static SpanFill of(EventKind kind) {
        return switch (kind) {
            case TRANSIT -> FILLED;
            case SHADOW_TRANSIT -> HATCHED;
            case OCCULTATION -> HOLLOW;
            case ECLIPSE -> DOTTED;
        };
    }

    /** Paints a box; the clip and stroke of the graphics are put back. */
    public void paint(Graphics2D g, Rectangle2D box, Color colour) {
        Shape clip = g.getClip();
        Stroke stroke = g.getStroke();
        g.setColor(colour);
        g.setStroke(new BasicStroke(1.2f));
        if (this == FILLED) {
            g.fill(box);
        } else {
            g.clip(box);
            if (this == HATCHED) {
                hatch(g, box);
            } else if (this == DOTTED) {
                dots(g, box);
            }
            g.setClip(clip);
            g.draw(box);
        }
        g.setStroke(stroke);
    }

    private static void hatch(Graphics2D g, Rectangle2D box) {
        double h = box.getHeight();
        for (double x = box.getMinX() - h; x < box.getMaxX(); x += HATCH_PX) {
            g.draw(new Line2D.Double(x, box.getMaxY(), x + h, box.getMinY()));
        }
    }

    private static void dots(Graphics2D g, Rectangle2D box) {
        int line = 0;
        for (double y = box.getMinY() + 1.5; y < box.getMaxY(); y += DOT_PX, line++) {
            for (double x = box.getMinX() + (line % 2 == 0 ? 1 : 3); x < box.getMaxX(); x += DOT_PX) {
                g.fill(new Ellipse2D.Double(x, y, 1.6, 1.6));
            }
        }
    }
}
