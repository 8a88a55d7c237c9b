/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Cursor;
import java.awt.Point;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Point2D;
import java.util.Optional;
import java.util.OptionalInt;
import javax.swing.SwingUtilities;
import javax.swing.ToolTipManager;
import oblate.report.ladder.LadderStrip;

/** Follows the mouse on a canvas of drifts: chooses, opens and drags marks, moves and zooms time. */
final class DriftPointer extends MouseAdapter implements FocusListener {
    private static final double DRAG_PX = 5;
    private static final int DIVIDER_PX = 4;
    private static final double LEAST_SPAN_MS = 6 * 3_600_000.0;
    private static final double MOST_SPAN_MS = 60 * 366 * 86_400_000.0;
    private final DriftCanvas canvas;
    private final DriftCanvas.Events events;
    private Optional<DriftData.Point> grabbed = Optional.empty();
    private Point pressed = new Point();
    private Optional<DriftScene.Range> rangeAtPress = Optional.empty();
    private boolean dividing;

    DriftPointer(DriftCanvas canvas, DriftCanvas.Events events) {
        this.canvas = canvas;
        this.events = events;
        canvas.addMouseListener(this);
        canvas.addMouseMotionListener(this);
        canvas.addMouseWheelListener(this);
        canvas.addFocusListener(this);
        ToolTipManager.sharedInstance().registerComponent(canvas);
    }

    /** What is under a place, in words. */
    String words(Point2D at) {
        return canvas.hits()
                .flatMap(h ->
                        h.pointAt(at).map(events::words).or(() -> h.stripAt(at).map(LadderStrip::name)))
                .orElse(null);
    }

    @Override
    public void mousePressed(MouseEvent e) {
        canvas.requestFocusInWindow();
        pressed = e.getPoint();
        dividing = SwingUtilities.isLeftMouseButton(e) && isOnDivider(e.getPoint());
        if (dividing) {
            if (e.getClickCount() == 2) {
                dividing = false;
                events.ladderUsual();
            }
            grabbed = Optional.empty();
            return;
        }
        rangeAtPress = canvas.hits().map(h -> h.drawn().shown());
        grabbed = canvas.hits().flatMap(h -> h.pointAt(e.getPoint()));
        grabbed.ifPresent(events::chosen);
        popup(e);
    }

    private boolean isOnDivider(Point at) {
        OptionalInt x = canvas.divider();
        return x.isPresent() && Math.abs(at.x - x.getAsInt()) <= DIVIDER_PX;
    }

    private void popup(MouseEvent e) {
        if (e.isPopupTrigger()) {
            grabbed.ifPresent(point -> events.menu(point, e.getX(), e.getY()));
            grabbed = Optional.empty();
        }
    }

    @Override
    public void mouseClicked(MouseEvent e) {
        if (!SwingUtilities.isLeftMouseButton(e) || isOnDivider(e.getPoint())) {
            return;
        }
        Optional<DriftData.Point> point = canvas.hits().flatMap(h -> h.pointAt(e.getPoint()));
        boolean open = e.getClickCount() == 2;
        if (point.isPresent()) {
            if (open) {
                events.opened(point.get());
            }
        } else {
            canvas.hits()
                    .flatMap(h -> h.stripAt(e.getPoint()))
                    .ifPresent(strip -> events.strip(strip.pictureId(), open));
        }
    }

    @Override
    public void mouseDragged(MouseEvent e) {
        if (dividing) {
            events.ladderWide(canvas.getWidth() - e.getX(), false);
            return;
        }
        if (canvas.hits().isEmpty()
                || e.getPoint().distance(pressed) < DRAG_PX && canvas.drag().isEmpty()) {
            return;
        }
        DriftHits hits = canvas.hits().get();
        if (grabbed.isPresent()) {
            DriftData.Point point = grabbed.get();
            Optional<String> onto = hits.trackAt(e.getPoint()).filter(name -> !name.equals(point.feature()));
            canvas.setDrag(Optional.of(new DriftCanvas.Drag(point, e.getPoint(), onto)));
        } else if (rangeAtPress.isPresent() && SwingUtilities.isLeftMouseButton(e)) {
            pan(hits.drawn(), e.getPoint());
        }
    }

    private void pan(DriftScene.Drawn drawn, Point to) {
        PlotSpace space = drawn.longitudes();
        boolean down = space.timeDown();
        double length = down ? space.area().getHeight() : space.area().getWidth();
        DriftScene.Range start = rangeAtPress.orElseThrow();
        double moved = down ? to.y - pressed.y : to.x - pressed.x;
        double shift = -moved / length * (start.toMs() - start.fromMs());
        canvas.show(Optional.of(new DriftScene.Range(start.fromMs() + shift, start.toMs() + shift)));
        canvas.setCursor(Cursor.getPredefinedCursor(Cursor.MOVE_CURSOR));
        events.ranged();
    }

    @Override
    public void mouseReleased(MouseEvent e) {
        canvas.setCursor(Cursor.getDefaultCursor());
        if (dividing) {
            dividing = false;
            events.ladderWide(canvas.getWidth() - e.getX(), true);
            return;
        }
        Optional<DriftCanvas.Drag> drag = canvas.drag();
        canvas.setDrag(Optional.empty());
        drag.ifPresent(d -> d.onto().ifPresent(name -> events.moved(d.point(), name)));
        popup(e);
    }

    @Override
    public void mouseMoved(MouseEvent e) {
        if (isOnDivider(e.getPoint())) {
            canvas.setCursor(Cursor.getPredefinedCursor(Cursor.E_RESIZE_CURSOR));
            return;
        }
        boolean over = canvas.hits().flatMap(h -> h.pointAt(e.getPoint())).isPresent();
        canvas.setCursor(Cursor.getPredefinedCursor(over ? Cursor.HAND_CURSOR : Cursor.DEFAULT_CURSOR));
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent e) {
        canvas.hits().ifPresent(h -> {
            PlotSpace space = h.drawn().longitudes();
            double at = space.timeMsAt(space.timeDown() ? e.getY() : e.getX());
            zoom(Math.pow(1.2, e.getPreciseWheelRotation()), Optional.of(at));
        });
    }

    /** Shows so much more (above 1) or less time, about an instant or the middle. */
    void zoom(double factor, Optional<Double> aboutMs) {
        canvas.hits().ifPresent(h -> {
            DriftScene.Range now = canvas.range().orElse(h.drawn().shown());
            double about = aboutMs.orElse((now.fromMs() + now.toMs()) / 2);
            double span = (now.toMs() - now.fromMs()) * factor;
            if (span > LEAST_SPAN_MS && span < MOST_SPAN_MS) {
                canvas.show(Optional.of(new DriftScene.Range(
                        about - (about - now.fromMs()) * factor, about + (now.toMs() - about) * factor)));
                events.ranged();
            }
        });
    }

    @Override
    public void focusGained(FocusEvent e) {
        canvas.repaint();
    }

    @Override
    public void focusLost(FocusEvent e) {
        canvas.repaint();
    }
}
