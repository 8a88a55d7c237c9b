/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.Point;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.util.Optional;
import javax.swing.SwingUtilities;
import oblate.disc.PixelPoint;

/** Turns what the mouse does on the canvas into zooming, dragging, circles, clicks and a tool's handles. */
final class CanvasMouse extends MouseAdapter {
    private static final int CLICK_SLACK = 4;
    private static final int LEAST_CIRCLE_PX = 12;
    private static final double NOTCH = 1.25;
    private final DiscCanvas canvas;
    private final DiscCanvas.Events events;
    private Point from = new Point();
    private boolean dragged;
    private Optional<CanvasTool> held = Optional.empty();

    CanvasMouse(DiscCanvas canvas, DiscCanvas.Events events) {
        this.canvas = canvas;
        this.events = events;
    }

    void listen() {
        canvas.addMouseListener(this);
        canvas.addMouseMotionListener(this);
        canvas.addMouseWheelListener(this);
    }

    private PixelPoint pixel(MouseEvent e) {
        return canvas.view().toPicture(e.getX(), e.getY());
    }

    @Override
    public void mousePressed(MouseEvent e) {
        canvas.requestFocusInWindow();
        from = e.getPoint();
        dragged = false;
        held = canvas.tool().filter(t -> t.grabs(e.getPoint(), canvas.view()));
        canvas.setCircle(
                held.isEmpty() && e.isControlDown() && canvas.hasPicture()
                        ? Optional.of(new DiscCanvas.Circle(pixel(e), 0))
                        : Optional.empty());
    }

    @Override
    public void mouseDragged(MouseEvent e) {
        if (held.isPresent()) {
            held.get().draggedTo(pixel(e));
            canvas.hold(Optional.of(pixel(e)));
            canvas.repaint();
        } else if (canvas.circle().isPresent()) {
            PixelPoint centre = canvas.circle().get().centre();
            PixelPoint edge = pixel(e);
            double radius = Math.hypot(edge.xPx() - centre.xPx(), edge.yPx() - centre.yPx());
            canvas.setCircle(Optional.of(new DiscCanvas.Circle(centre, radius)));
        } else if (dragged || from.distance(e.getPoint()) > CLICK_SLACK) {
            dragged = true;
            canvas.pan(e.getX() - from.x, e.getY() - from.y);
            from = e.getPoint();
        }
    }

    @Override
    public void mouseReleased(MouseEvent e) {
        if (held.isPresent()) {
            held.get().released();
            held = Optional.empty();
        } else if (canvas.circle().isPresent()) {
            DiscCanvas.Circle drawn = canvas.circle().get();
            canvas.setCircle(Optional.empty());
            if (drawn.radiusPx() * canvas.view().scale() > LEAST_CIRCLE_PX) {
                events.circled(drawn.centre(), drawn.radiusPx());
            }
        } else if (!dragged && SwingUtilities.isLeftMouseButton(e) && canvas.hasPicture()) {
            events.clicked(pixel(e), e.getPoint());
        }
    }

    @Override
    public void mouseMoved(MouseEvent e) {
        canvas.pointAt(Optional.of(pixel(e)));
    }

    @Override
    public void mouseExited(MouseEvent e) {
        canvas.pointAt(Optional.empty());
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent e) {
        canvas.zoomAt(e.getX(), e.getY(), Math.pow(NOTCH, -e.getPreciseWheelRotation()));
    }
}
