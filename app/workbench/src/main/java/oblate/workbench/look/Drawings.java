/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** The line drawings of the rail and the tool bars, on a field of 24 × 24 units. */
public final class Drawings {
    private Drawings() {}

    /** Four small discs: pictures by night. */
    public static void nights(Graphics2D g) {
        for (int i = 0; i < 4; i++) {
            g.draw(new Ellipse2D.Double(3.5 + 10.5 * (i % 2), 4.5 + 9.5 * (i / 2), 7, 6));
        }
    }

    /** A flattened disc with its axis and a point on it. */
    public static void measure(Graphics2D g) {
        g.draw(new Ellipse2D.Double(3, 4.5, 18, 15.5));
        g.draw(new Arc2D.Double(8, 4.5, 8, 15.5, 90, 180, Arc2D.OPEN));
        g.draw(new Line2D.Double(3, 12.2, 21, 12.2));
        g.fill(new Ellipse2D.Double(14, 14, 3.6, 3.6));
    }

    /** Points along a slanted line between two axes. */
    public static void drift(Graphics2D g) {
        Path2D axes = new Path2D.Double();
        axes.moveTo(4, 3);
        axes.lineTo(4, 20.5);
        axes.lineTo(21, 20.5);
        g.draw(axes);
        g.draw(new Line2D.Double(8, 16.5, 19, 6));
        g.fill(new Ellipse2D.Double(8, 12.6, 3.4, 3.4));
        g.fill(new Ellipse2D.Double(12.4, 11.4, 3.4, 3.4));
        g.fill(new Ellipse2D.Double(15, 5.4, 3.4, 3.4));
    }

    /** A page with lines of a table. */
    public static void report(Graphics2D g) {
        g.draw(new Rectangle2D.Double(5, 3.5, 14, 17));
        for (int i = 0; i < 4; i++) {
            double y = 7.5 + 3.2 * i;
            g.draw(new Line2D.Double(8, y, 11, y));
            g.draw(new Line2D.Double(13, y, 16, y));
        }
    }

    /** A block with a peg and a hole. */
    public static void plugins(Graphics2D g) {
        Path2D block = new Path2D.Double();
        block.moveTo(4, 8);
        block.lineTo(9, 8);
        block.curveTo(7.5, 3.5, 14.5, 3.5, 13, 8);
        block.lineTo(18, 8);
        block.lineTo(18, 12.5);
        block.curveTo(22.5, 11, 22.5, 18, 18, 16.5);
        block.lineTo(18, 20.5);
        block.lineTo(4, 20.5);
        block.closePath();
        g.draw(block);
    }

    /** Half dark, half light disc: the look of the window. */
    public static void theme(Graphics2D g) {
        g.draw(new Ellipse2D.Double(4, 4, 16, 16));
        g.fill(new Arc2D.Double(4, 4, 16, 16, 90, 180, Arc2D.PIE));
    }

    /** An arrow upward: north. */
    public static void north(Graphics2D g) {
        g.draw(new Line2D.Double(12, 20, 12, 5));
        Path2D head = new Path2D.Double();
        head.moveTo(7, 10);
        head.lineTo(12, 4.5);
        head.lineTo(17, 10);
        g.draw(head);
    }

    /** A disc seized by four corners: fit. */
    public static void fit(Graphics2D g) {
        g.draw(new Ellipse2D.Double(7, 7.8, 10, 8.4));
        for (int i = 0; i < 4; i++) {
            double sx = i % 2 == 0 ? 1 : -1;
            double sy = i < 2 ? 1 : -1;
            Path2D corner = new Path2D.Double();
            corner.moveTo(12 - 9 * sx, 12 - 4.5 * sy);
            corner.lineTo(12 - 9 * sx, 12 - 8.5 * sy);
            corner.lineTo(12 - 5 * sx, 12 - 8.5 * sy);
            g.draw(corner);
        }
    }

    /** A plus on a page: add pictures. */
    public static void add(Graphics2D g) {
        g.draw(new Line2D.Double(12, 5, 12, 19));
        g.draw(new Line2D.Double(5, 12, 19, 12));
    }
}
