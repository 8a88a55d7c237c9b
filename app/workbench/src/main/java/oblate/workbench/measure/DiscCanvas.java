/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import oblate.disc.PixelPoint;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/** Shows a picture with what the layers planned over it; zooms to the pointer, is dragged, tells of clicks. */
final class DiscCanvas extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final int CLICK_SLACK = 4;
    private static final int LEAST_CIRCLE_PX = 12;

    /** What the canvas tells. */
    interface Events {
        /** The pointer is over a place of the picture, or has left. */
        void pointed(Optional<PixelPoint> pixel);

        /** A place was clicked. */
        void clicked(PixelPoint pixel, Point screen);

        /** A circle was drawn round the disc, from its centre to its edge (picture px). */
        void circled(PixelPoint centre, double radiusPx);

        /** The view has changed. */
        void viewChanged();
    }

    private final transient Supplier<Palette> palette;
    private final transient Events events;
    private transient Optional<BufferedImage> image = Optional.empty();
    private double imageShrink = 1;
    private transient List<Drawn> plan = List.of();
    private transient CanvasView view = new CanvasView(100, 100, 0, 0, 1, 0);
    private transient Optional<PixelPoint> pointer = Optional.empty();
    private transient Optional<PixelPoint> held = Optional.empty();
    private transient Optional<Circle> circle = Optional.empty();
    private boolean magnifying = true;
    private boolean untouched = true;
    private transient PixelPoint wholeMiddle = new PixelPoint(0, 0);
    private double wholeRadius = 50;
    private String emptyWords = "";
    private String cornerWords = "";

    DiscCanvas(Supplier<Palette> palette, Events events) {
        this.palette = palette;
        this.events = events;
        setName("canvas");
        setLayout(null);
        setFocusable(true);
        setCursor(Cursor.getPredefinedCursor(Cursor.CROSSHAIR_CURSOR));
        Mouse mouse = new Mouse();
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
        addMouseWheelListener(mouse);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                if (untouched) {
                    showWhole();
                } else {
                    setView(view.resized(getWidth(), getHeight()));
                }
            }
        });
    }

    /** A circle being drawn: centre in picture pixels, radius in picture pixels. */
    private record Circle(PixelPoint centre, double radiusPx) {}

    /** Shows another image; {@code shrink} picture pixels are one image pixel. */
    void setImage(Optional<BufferedImage> shown, double shrink) {
        image = shown;
        imageShrink = shrink;
        repaint();
    }

    void setEmptyWords(String words) {
        emptyWords = words;
        repaint();
    }

    void setCornerWords(String words) {
        cornerWords = words;
        repaint();
    }

    void setPlan(List<Drawn> planned) {
        plan = List.copyOf(planned);
        repaint();
    }

    void setMagnifying(boolean on) {
        magnifying = on;
        repaint();
    }

    /** Magnifies about a place for as long as it is set, instead of about the pointer. */
    void hold(Optional<PixelPoint> place) {
        held = place;
        repaint();
    }

    /** The circle that "whole" means. */
    void setWhole(PixelPoint middle, double radiusPx, boolean again) {
        wholeMiddle = middle;
        wholeRadius = radiusPx;
        if (again || untouched) {
            showWhole();
        }
    }

    void showWhole() {
        untouched = true;
        if (getWidth() > 0) {
            setView(CanvasView.showing(getWidth(), getHeight(), wholeMiddle, wholeRadius, view.turnDeg()));
        }
    }

    void zoom(double factor) {
        untouched = false;
        setView(view.zoomedAt(getWidth() / 2.0, getHeight() / 2.0, factor));
    }

    void pan(double dx, double dy) {
        untouched = false;
        setView(view.movedBy(dx, dy));
    }

    void turn(double turnDeg) {
        if (untouched) {
            view = view.turnedTo(turnDeg);
            showWhole();
        } else {
            setView(view.turnedTo(turnDeg));
        }
    }

    CanvasView view() {
        return view;
    }

    private void setView(CanvasView fresh) {
        view = fresh;
        repaint();
        events.viewChanged();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(800, 600);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setColor(colours.night());
        g2.fillRect(0, 0, getWidth(), getHeight());
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        if (image.isEmpty()) {
            g2.setFont(Theme.bodyFont(2));
            g2.setColor(colours.nightInk());
            FontMetrics m = g2.getFontMetrics();
            g2.drawString(emptyWords, (getWidth() - m.stringWidth(emptyWords)) / 2f, getHeight() / 2f);
            g2.dispose();
            return;
        }
        drawImage(g2, view);
        new LayerPainter(g2, view, colours).paint(plan);
        circle.ifPresent(c -> paintCircle(g2, colours, c));
        g2.setFont(Theme.bodyFont(-1));
        g2.setColor(colours.nightInk());
        g2.drawString(cornerWords, 14, getHeight() - 14);
        Optional<PixelPoint> place = held.isPresent() ? held : pointer;
        if (magnifying && place.isPresent() && view.scale() < 7 && !isNaming()) {
            paintMagnifier(g2, colours, place.get());
        }
        g2.dispose();
    }

    private void paintCircle(Graphics2D g, Palette colours, Circle c) {
        Point2D.Double at = view.toScreen(c.centre());
        double r = c.radiusPx() * view.scale();
        g.setColor(colours.of(Ink.CHOSEN));
        g.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, new float[] {6, 5}, 0));
        g.draw(new Ellipse2D.Double(at.x - r, at.y - r, 2 * r, 2 * r));
        g.setStroke(new BasicStroke(1));
    }

    private boolean isNaming() {
        return getComponentCount() > 0 && getComponent(0).isVisible();
    }

    private void drawImage(Graphics2D g, CanvasView through) {
        AffineTransform t = through.transform();
        // Pixel centres are whole numbers, so that the image begins half a pixel before 0.
        t.translate(-0.5, -0.5);
        t.scale(imageShrink, imageShrink);
        g.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION,
                through.scale() >= 5
                        ? RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR
                        : RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(image.orElseThrow(), t, null);
    }

    private void paintMagnifier(Graphics2D g, Palette colours, PixelPoint place) {
        int side = Magnifier.SIDE;
        Point at = Magnifier.corner(view.toScreen(place), new Rectangle(0, 0, getWidth(), getHeight()));
        Graphics2D inner = (Graphics2D) g.create(at.x, at.y, side, side);
        CanvasView near = new CanvasView(side, side, place.xPx(), place.yPx(), Magnifier.TIMES, view.turnDeg());
        inner.setColor(colours.night());
        inner.fillRect(0, 0, side, side);
        drawImage(inner, near);
        Magnifier.paintGridAndCross(inner, near, colours);
        inner.dispose();
        g.setColor(new Color(0, 0, 0, 160));
        g.drawRect(at.x - 1, at.y - 1, side + 1, side + 1);
        g.setColor(colours.nightInk());
        g.drawRect(at.x, at.y, side - 1, side - 1);
    }

    private final class Mouse extends MouseAdapter {
        private Point from = new Point();
        private boolean dragged;

        @Override
        public void mousePressed(MouseEvent e) {
            requestFocusInWindow();
            from = e.getPoint();
            dragged = false;
            circle = e.isControlDown() && image.isPresent()
                    ? Optional.of(new Circle(view.toPicture(e.getX(), e.getY()), 0))
                    : Optional.empty();
        }

        @Override
        public void mouseDragged(MouseEvent e) {
            if (circle.isPresent()) {
                PixelPoint centre = circle.get().centre();
                PixelPoint edge = view.toPicture(e.getX(), e.getY());
                circle = Optional.of(
                        new Circle(centre, Math.hypot(edge.xPx() - centre.xPx(), edge.yPx() - centre.yPx())));
                repaint();
                return;
            }
            if (dragged || from.distance(e.getPoint()) > CLICK_SLACK) {
                dragged = true;
                pan(e.getX() - from.x, e.getY() - from.y);
                from = e.getPoint();
            }
        }

        @Override
        public void mouseReleased(MouseEvent e) {
            if (circle.isPresent()) {
                Circle drawn = circle.get();
                circle = Optional.empty();
                repaint();
                if (drawn.radiusPx() * view.scale() > LEAST_CIRCLE_PX) {
                    events.circled(drawn.centre(), drawn.radiusPx());
                }
                return;
            }
            if (!dragged && SwingUtilities.isLeftMouseButton(e) && image.isPresent()) {
                events.clicked(view.toPicture(e.getX(), e.getY()), e.getPoint());
            }
        }

        @Override
        public void mouseMoved(MouseEvent e) {
            pointer = Optional.of(view.toPicture(e.getX(), e.getY()));
            held = Optional.empty();
            events.pointed(pointer);
            repaint();
        }

        @Override
        public void mouseExited(MouseEvent e) {
            pointer = Optional.empty();
            events.pointed(pointer);
            repaint();
        }

        @Override
        public void mouseWheelMoved(MouseWheelEvent e) {
            untouched = false;
            setView(view.zoomedAt(e.getX(), e.getY(), Math.pow(1.25, -e.getPreciseWheelRotation())));
        }
    }
}
