/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import oblate.disc.PixelPoint;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;

/** Where the magnifier stands and what is drawn over it. */
final class Magnifier {
    static final int SIDE = 136;
    static final double TIMES = 8;
    private static final int AWAY = 28;

    private Magnifier() {}

    /** Upper left corner: beside the pointer, never over it, always inside. */
    static Point corner(Point2D pointer, Rectangle inside) {
        return corner(pointer, inside, new Rectangle());
    }

    /** The same, and not over a list that is open there, where there is room. */
    static Point corner(Point2D pointer, Rectangle inside, Rectangle avoided) {
        Point first = null;
        for (int turn = 0; turn < 4; turn++) {
            double x = turn % 2 == 0 ? pointer.getX() + AWAY : pointer.getX() - AWAY - SIDE;
            double y = turn < 2 ? pointer.getY() + AWAY : pointer.getY() - AWAY - SIDE;
            Rectangle glass = new Rectangle((int) x, (int) y, SIDE, SIDE);
            if (inside.contains(glass)) {
                if (!glass.intersects(avoided)) {
                    return glass.getLocation();
                }
                first = first == null ? glass.getLocation() : first;
            }
        }
        return first == null ? new Point(inside.x, inside.y) : first;
    }

    /** Paints the pixels about a place, with their grid, beside it. */
    static void paint(
            Graphics2D g,
            PicturePainter picture,
            CanvasView view,
            PixelPoint place,
            Rectangle avoided,
            Palette colours) {
        Rectangle all = new Rectangle(0, 0, (int) view.widthPx(), (int) view.heightPx());
        Point at = corner(view.toScreen(place), all, avoided);
        Graphics2D inner = (Graphics2D) g.create(at.x, at.y, SIDE, SIDE);
        CanvasView near = new CanvasView(SIDE, SIDE, place.xPx(), place.yPx(), TIMES, view.turnDeg(), view.flipped());
        inner.setColor(colours.night());
        inner.fillRect(0, 0, SIDE, SIDE);
        picture.paint(inner, near, 1, false);
        paintGridAndCross(inner, near, colours);
        inner.dispose();
        g.setColor(new Color(0, 0, 0, 160));
        g.setStroke(new BasicStroke(1));
        g.drawRect(at.x - 1, at.y - 1, SIDE + 1, SIDE + 1);
        g.setColor(colours.nightInk());
        g.drawRect(at.x, at.y, SIDE - 1, SIDE - 1);
    }

    private static void paintGridAndCross(Graphics2D g, CanvasView near, Palette colours) {
        Color quiet = colours.nightInk();
        g.setColor(new Color(quiet.getRed(), quiet.getGreen(), quiet.getBlue(), 40));
        g.setStroke(new BasicStroke(1));
        int reach = (int) (SIDE / TIMES) + 2;
        long cx = Math.round(near.centreXPx());
        long cy = Math.round(near.centreYPx());
        for (int i = -reach; i <= reach; i++) {
            line(g, near, cx + i - 0.5, cy - reach, cx + i - 0.5, cy + reach);
            line(g, near, cx - reach, cy + i - 0.5, cx + reach, cy + i - 0.5);
        }
        double m = SIDE / 2.0;
        for (int pass = 0; pass < 2; pass++) {
            g.setColor(pass == 0 ? new Color(0, 0, 0, 150) : colours.of(Ink.CHOSEN));
            g.setStroke(new BasicStroke(pass == 0 ? 3.2f : 1.2f));
            g.draw(new Line2D.Double(m - 22, m, m - 5, m));
            g.draw(new Line2D.Double(m + 5, m, m + 22, m));
            g.draw(new Line2D.Double(m, m - 22, m, m - 5));
            g.draw(new Line2D.Double(m, m + 5, m, m + 22));
        }
    }

    private static void line(Graphics2D g, CanvasView near, double x1, double y1, double x2, double y2) {
        g.draw(new Line2D.Double(near.toScreen(new PixelPoint(x1, y1)), near.toScreen(new PixelPoint(x2, y2))));
    }
}
