/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import oblate.disc.PixelPoint;

/**
 * How a picture lies on the canvas. Immutable; painting and hit-testing share one.
 *
 * @param widthPx width of the canvas (screen px)
 * @param heightPx height of the canvas (screen px)
 * @param centreXPx picture pixel in the middle of the canvas, to the right
 * @param centreYPx the same, down
 * @param scale screen pixels per picture pixel, {@value #LEAST_SCALE}…{@value #MOST_SCALE}
 * @param turnDeg angle the picture is turned by, clockwise (deg)
 * @param flipped whether right and left of the turned picture are exchanged
 */
public record CanvasView(
        double widthPx,
        double heightPx,
        double centreXPx,
        double centreYPx,
        double scale,
        double turnDeg,
        boolean flipped) {
    static final double LEAST_SCALE = 0.02;
    static final double MOST_SCALE = 64;

    /** Keeps the scale in its range and the angle in −180…180. */
    public CanvasView {
        if (!Double.isFinite(centreXPx + centreYPx + scale + turnDeg)) {
            throw new IllegalArgumentException(centreXPx + " " + centreYPx + " " + scale + " " + turnDeg);
        }
        scale = Math.max(LEAST_SCALE, Math.min(MOST_SCALE, scale));
        turnDeg = Math.IEEEremainder(turnDeg, 360);
    }

    /** Not flipped. */
    public CanvasView(
            double widthPx, double heightPx, double centreXPx, double centreYPx, double scale, double turnDeg) {
        this(widthPx, heightPx, centreXPx, centreYPx, scale, turnDeg, false);
    }

    private int hand() {
        return flipped ? -1 : 1;
    }

    /** Shows a circle of the picture whole, with a little room. */
    public static CanvasView showing(
            double widthPx, double heightPx, PixelPoint middle, double radiusPx, double turnDeg, boolean flipped) {
        double scale = Math.min(widthPx, heightPx) / (2.16 * Math.max(1, radiusPx));
        return new CanvasView(widthPx, heightPx, middle.xPx(), middle.yPx(), scale, turnDeg, flipped);
    }

    /** From picture pixels (pixel centres are whole numbers) to screen pixels. */
    public AffineTransform transform() {
        AffineTransform t = new AffineTransform();
        t.translate(widthPx / 2, heightPx / 2);
        t.scale(hand() * scale, scale);
        t.rotate(Math.toRadians(turnDeg));
        t.translate(-centreXPx, -centreYPx);
        return t;
    }

    /** Where a place of the picture is on the canvas. */
    public Point2D.Double toScreen(PixelPoint p) {
        double cos = Math.cos(Math.toRadians(turnDeg));
        double sin = Math.sin(Math.toRadians(turnDeg));
        double dx = p.xPx() - centreXPx;
        double dy = p.yPx() - centreYPx;
        return new Point2D.Double(
                widthPx / 2 + hand() * scale * (dx * cos - dy * sin), heightPx / 2 + scale * (dx * sin + dy * cos));
    }

    /** Which place of the picture is at a point of the canvas. */
    public PixelPoint toPicture(double xPx, double yPx) {
        double cos = Math.cos(Math.toRadians(turnDeg));
        double sin = Math.sin(Math.toRadians(turnDeg));
        double dx = hand() * (xPx - widthPx / 2) / scale;
        double dy = (yPx - heightPx / 2) / scale;
        return new PixelPoint(centreXPx + dx * cos + dy * sin, centreYPx - dx * sin + dy * cos);
    }

    /** Zoomed about a point of the canvas, whose place in the picture stays under it. */
    public CanvasView zoomedAt(double xPx, double yPx, double factor) {
        PixelPoint kept = toPicture(xPx, yPx);
        CanvasView zoomed = new CanvasView(widthPx, heightPx, centreXPx, centreYPx, scale * factor, turnDeg, flipped);
        Point2D.Double now = zoomed.toScreen(kept);
        return zoomed.movedBy(xPx - now.x, yPx - now.y);
    }

    /** With the picture moved along on the canvas (screen px). */
    public CanvasView movedBy(double dxPx, double dyPx) {
        PixelPoint middle = toPicture(widthPx / 2 - dxPx, heightPx / 2 - dyPx);
        return new CanvasView(widthPx, heightPx, middle.xPx(), middle.yPx(), scale, turnDeg, flipped);
    }

    /** On a canvas of another size, with the same place in the middle. */
    public CanvasView resized(double newWidthPx, double newHeightPx) {
        return new CanvasView(newWidthPx, newHeightPx, centreXPx, centreYPx, scale, turnDeg, flipped);
    }

    /** Turned otherwise, with the same place in the middle. */
    public CanvasView turnedTo(double newTurnDeg) {
        return new CanvasView(widthPx, heightPx, centreXPx, centreYPx, scale, newTurnDeg, flipped);
    }

    /** Flipped or not, with the same place in the middle. */
    public CanvasView flippedTo(boolean flip) {
        return new CanvasView(widthPx, heightPx, centreXPx, centreYPx, scale, turnDeg, flip);
    }

    /** A step on the screen as a step in the picture (px). */
    public PixelPoint stepInPicture(double dxScreen, double dyScreen) {
        PixelPoint from = toPicture(0, 0);
        PixelPoint to = toPicture(dxScreen * scale, dyScreen * scale);
        return new PixelPoint(to.xPx() - from.xPx(), to.yPx() - from.yPx());
    }
}
