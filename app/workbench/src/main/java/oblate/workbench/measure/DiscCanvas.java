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
import java.awt.geom.Ellipse2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.Timer;
import oblate.disc.PixelPoint;
import oblate.workbench.Background;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/**
 * Shows a picture with what the layers planned over it; zooms to the pointer, is dragged, tells of clicks. What only changes with the view is painted once into
 * an image of its own, so that a moving pointer costs no more than its magnifier.
 */
final class DiscCanvas extends JComponent {
    private static final long serialVersionUID = 1L;

    /** From this scale on the pixels are large enough without a magnifier. */
    private static final double MAGNIFY_BELOW_SCALE = 7;

    /** While the view moves it is painted coarsely; after so long a rest finely (ms). */
    private static final int REST_MS = 90;

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

    /** A circle being drawn: centre in picture pixels, radius in picture pixels. */
    record Circle(PixelPoint centre, double radiusPx) {}

    private final transient Supplier<Palette> palette;
    private final transient Events events;
    private final transient TileStore tiles;
    private final transient PicturePainter painter;
    private transient Optional<BufferedImage> still = Optional.empty();
    private boolean stale = true;
    private boolean moving;
    private final Timer rest = new Timer(REST_MS, e -> rested());
    private transient PaintPlan plan = PaintPlan.of(List.of());
    private transient CanvasView view = new CanvasView(100, 100, 0, 0, 1, 0);
    private transient Optional<PixelPoint> pointer = Optional.empty();
    private transient Optional<PixelPoint> held = Optional.empty();
    private transient Optional<Circle> circle = Optional.empty();
    private transient Optional<CanvasTool> tool = Optional.empty();
    private boolean magnifying = true;
    private boolean untouched = true;
    private transient PixelPoint wholeMiddle = new PixelPoint(0, 0);
    private double wholeRadius = 50;
    private String emptyWords = "";
    private transient List<String> cornerWords = List.of();

    DiscCanvas(Supplier<Palette> palette, Background background, Events events) {
        this.palette = palette;
        this.events = events;
        tiles = new TileStore(background, this::refresh);
        painter = new PicturePainter(tiles);
        rest.setRepeats(false);
        setName("canvas");
        setLayout(null);
        setFocusable(true);
        setCursor(Cursor.getPredefinedCursor(Cursor.CROSSHAIR_CURSOR));
        new CanvasMouse(this, events).listen();
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

    private void rested() {
        moving = false;
        refresh();
    }

    private void refresh() {
        stale = true;
        repaint();
    }

    /** Shows another picture, or none. */
    void setPicture(Optional<Pyramid> pyramid, Look look) {
        tiles.show(pyramid, look);
        refresh();
    }

    boolean hasPicture() {
        return tiles.pyramid().isPresent();
    }

    /** Shows the same picture in another look. */
    void setLook(Look look) {
        tiles.setLook(look);
        refresh();
    }

    void setEmptyWords(String words) {
        emptyWords = words;
        refresh();
    }

    /** What is said in the lower left corner, line by line. */
    void setCornerWords(List<String> words) {
        cornerWords = List.copyOf(words);
        refresh();
    }

    void setPlan(List<Drawn> planned) {
        plan = PaintPlan.of(planned);
        refresh();
    }

    void setMagnifying(boolean on) {
        magnifying = on;
        repaint();
    }

    /** Lays a tool over the picture, or takes it away. */
    void setTool(Optional<CanvasTool> fresh) {
        tool = fresh;
        repaint();
    }

    Optional<CanvasTool> tool() {
        return tool;
    }

    void setCircle(Optional<Circle> drawn) {
        circle = drawn;
        repaint();
    }

    Optional<Circle> circle() {
        return circle;
    }

    /** Magnifies about a place for as long as it is set, instead of about the pointer. */
    void hold(Optional<PixelPoint> place) {
        held = place;
        repaint();
    }

    void pointAt(Optional<PixelPoint> place) {
        pointer = place;
        held = Optional.empty();
        events.pointed(place);
        repaint();
    }

    /** Where the pointer is in the picture, also when it has not moved since the picture came up under it. */
    Optional<PixelPoint> pointed() {
        return pointer.or(() -> Optional.ofNullable(getMousePosition()).map(p -> view.toPicture(p.x, p.y)));
    }

    /** Where the pointer is in the picture. */
    Optional<PixelPoint> pointer() {
        return pointer;
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
            setView(CanvasView.showing(
                    getWidth(), getHeight(), wholeMiddle, wholeRadius, view.turnDeg(), view.flipped()));
        }
    }

    void zoom(double factor) {
        zoomAt(getWidth() / 2.0, getHeight() / 2.0, factor);
    }

    void zoomAt(double xPx, double yPx, double factor) {
        untouched = false;
        setView(view.zoomedAt(xPx, yPx, factor));
    }

    void pan(double dx, double dy) {
        untouched = false;
        setView(view.movedBy(dx, dy));
    }

    /** Turns and flips the view. */
    void turn(double turnDeg, boolean flipped) {
        boolean whole = untouched && getWidth() > 0;
        setView(
                whole
                        ? CanvasView.showing(getWidth(), getHeight(), wholeMiddle, wholeRadius, turnDeg, flipped)
                        : view.turnedTo(turnDeg).flippedTo(flipped));
    }

    CanvasView view() {
        return view;
    }

    private void setView(CanvasView fresh) {
        moving = !fresh.equals(view);
        view = fresh;
        rest.restart();
        refresh();
        events.viewChanged();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(800, 600);
    }

    @Override
    public void updateUI() {
        super.updateUI();
        stale = true;
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        if (!hasPicture()) {
            sharp(g2);
            WrappedWords.paint(g2, emptyWords, getSize(), colours);
        } else {
            paintStill(g2, colours);
            sharp(g2);
            tool.ifPresent(t -> t.paint(g2, view, colours));
            circle.ifPresent(c -> paintCircle(g2, colours, c));
            Optional<PixelPoint> place = held.isPresent() ? held : pointer;
            if (magnifying && place.isPresent() && view.scale() < MAGNIFY_BELOW_SCALE) {
                Magnifier.paint(g2, painter, view, place.get(), openList(), colours);
            }
        }
        g2.dispose();
    }

    private static void sharp(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    /** Paints picture, layers and words from the image kept of them, made anew when something of them changed. */
    private void paintStill(Graphics2D g, Palette colours) {
        double density = Math.max(1, g.getTransform().getScaleX());
        int width = (int) Math.ceil(getWidth() * density);
        int height = (int) Math.ceil(getHeight() * density);
        boolean fits = still.filter(i -> i.getWidth() == width && i.getHeight() == height)
                .isPresent();
        if (!fits) {
            still = Optional.of(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB));
        }
        BufferedImage image = still.orElseThrow();
        if (stale || !fits) {
            stale = false;
            Graphics2D inner = image.createGraphics();
            inner.setColor(colours.night());
            inner.fillRect(0, 0, width, height);
            inner.scale(density, density);
            inner.setClip(0, 0, getWidth(), getHeight());
            painter.paint(inner, view, density, moving);
            sharp(inner);
            new LayerPainter(inner, view, colours).paint(plan, moving);
            paintCorner(inner, colours);
            inner.dispose();
        }
        g.drawImage(image, 0, 0, getWidth(), getHeight(), null);
    }

    private void paintCorner(Graphics2D g, Palette colours) {
        g.setFont(Theme.bodyFont(-1));
        FontMetrics m = g.getFontMetrics();
        int y = getHeight() - 14 - (cornerWords.size() - 1) * m.getHeight();
        for (String line : cornerWords) {
            g.setColor(new Color(0, 0, 0, 170));
            g.fillRect(10, y - m.getAscent() - 1, m.stringWidth(line) + 8, m.getHeight() + 1);
            g.setColor(colours.nightInk());
            g.drawString(line, 14, y);
            y += m.getHeight();
        }
    }

    private void paintCircle(Graphics2D g, Palette colours, Circle c) {
        Point2D.Double at = view.toScreen(c.centre());
        double r = c.radiusPx() * view.scale();
        g.setColor(colours.of(Ink.CHOSEN));
        g.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, new float[] {6, 5}, 0));
        g.draw(new Ellipse2D.Double(at.x - r, at.y - r, 2 * r, 2 * r));
        g.setStroke(new BasicStroke(1));
    }

    private Rectangle openList() {
        return getComponentCount() > 0 && getComponent(0).isVisible()
                ? getComponent(0).getBounds()
                : new Rectangle();
    }
}
