/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.accessibility.AccessibleContext;
import javax.swing.JComponent;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.timeline.SpanFill;
import oblate.workbench.timeline.TimeAxis;
import oblate.workbench.words.Texts;

/** The span as bands, one per moon: transits filled, shadows hatched, occultations hollow, eclipses dotted; pictures as ticks across all of them. */
final class EventBands extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(EventBands.class);
    private static final int TICK_GAP_PX = 52;
    private final transient Supplier<Palette> palette;
    private final transient Listener listener;
    private transient Optional<Found> found = Optional.empty();
    private transient Optional<Happening> chosen = Optional.empty();
    private transient List<UtcTime> pictures = List.of();
    private transient Optional<UtcTime> instant = Optional.empty();

    /** What a person does with the bands. */
    interface Listener {
        /** The pointer is over a time; empty when it has left. */
        void pointed(Optional<UtcTime> time);

        /** A time was clicked where there is no event. */
        void picked(UtcTime time);

        /** An event was clicked. */
        void picked(Happening event);
    }

    EventBands(Supplier<Palette> palette, Listener listener) {
        this.palette = palette;
        this.listener = listener;
        setName("moons.bands");
        setToolTipText("");
        getAccessibleContext().setAccessibleName(TEXTS.text("bands.name"));
        MouseAdapter mouse = new MouseAdapter() {
            @Override
            public void mouseMoved(MouseEvent e) {
                listener.pointed(timeAt(e));
            }

            @Override
            public void mouseDragged(MouseEvent e) {
                timeAt(e).ifPresent(listener::picked);
            }

            @Override
            public void mouseExited(MouseEvent e) {
                listener.pointed(Optional.empty());
            }

            @Override
            public void mousePressed(MouseEvent e) {
                Optional<Happening> event = eventAt(e);
                event.ifPresent(listener::picked);
                if (event.isEmpty()) {
                    timeAt(e).ifPresent(listener::picked);
                }
            }
        };
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
    }

    private Optional<BandLayout> layoutOf() {
        return found.map(f -> BandLayout.of(f, getWidth()));
    }

    private Optional<UtcTime> timeAt(MouseEvent e) {
        return layoutOf()
                .map(BandLayout::axis)
                .filter(a -> e.getX() >= a.leftPx() && e.getX() <= a.rightPx())
                .map(a -> a.at(e.getX()));
    }

    private Optional<Happening> eventAt(MouseEvent e) {
        return layoutOf().flatMap(l -> l.at(e.getX(), e.getY()));
    }

    @Override
    public String getToolTipText(MouseEvent e) {
        return eventAt(e)
                .map(event -> event.sentence() + ", " + EventClock.clock(event.from()) + "–"
                        + EventClock.clock(event.to()) + " UTC")
                .orElse(null);
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                private static final long serialVersionUID = 1L;
            };
        }
        return accessibleContext;
    }

    void show(Optional<Found> shown) {
        found = shown;
        revalidate();
        repaint();
    }

    /** The mid-times of the planet's pictures. */
    void showPictures(List<UtcTime> times) {
        pictures = List.copyOf(times);
        repaint();
    }

    void choose(Optional<Happening> event) {
        chosen = event;
        repaint();
    }

    void instant(UtcTime time) {
        instant = Optional.of(time);
        repaint();
    }

    Optional<Found> found() {
        return found;
    }

    @Override
    public Dimension getPreferredSize() {
        int bands = layoutOf().map(l -> l.names().size()).orElse(4);
        return new Dimension(600, BandLayout.TOP_PX + BandLayout.BAND_PX * bands + BandLayout.FOOT_PX);
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(100, getPreferredSize().height);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.setColor(colours.ground());
        g2.fillRect(0, 0, getWidth(), getHeight());
        layoutOf().ifPresent(l -> paint(g2, l, colours));
        g2.dispose();
    }

    private void paint(Graphics2D g, BandLayout layout, Palette colours) {
        names(g, layout, colours);
        Shape clip = g.getClip();
        TimeAxis axis = layout.axis();
        g.clip(new Rectangle2D.Double(axis.leftPx(), 0, axis.rightPx() - axis.leftPx(), getHeight()));
        seen(g, layout, colours);
        pictureTicks(g, layout, colours);
        for (int band = 0; band < layout.names().size(); band++) {
            for (Happening event : layout.events().get(band)) {
                event(g, layout, band, event, colours);
            }
        }
        instant.ifPresent(t -> {
            g.setColor(colours.accent());
            g.setStroke(new BasicStroke(1.4f));
            g.draw(new Line2D.Double(axis.x(t), 0, axis.x(t), layout.bottomPx()));
        });
        g.setClip(clip);
        hours(g, layout, colours);
    }

    private static void names(Graphics2D g, BandLayout layout, Palette colours) {
        g.setFont(Theme.bodyFont(-1));
        FontMetrics m = g.getFontMetrics();
        g.setStroke(new BasicStroke(0.7f));
        for (int band = 0; band < layout.names().size(); band++) {
            g.setColor(layout.events().get(band).isEmpty() ? colours.quietInk() : colours.ink());
            g.drawString(layout.names().get(band), 16f, (float) (layout.middle(band) + m.getAscent() / 2.0 - 1));
            g.setColor(colours.line());
            double y = layout.middle(band) + BandLayout.BAND_PX / 2.0;
            g.draw(new Line2D.Double(16, y, layout.axis().rightPx(), y));
        }
    }

    /** Where the planet is up and the sky dark. */
    private void seen(Graphics2D g, BandLayout layout, Palette colours) {
        Color accent = colours.accent();
        g.setColor(new Color(accent.getRed(), accent.getGreen(), accent.getBlue(), 40));
        for (TimeSpan span : found.map(Found::seen).orElse(List.of())) {
            double x = layout.axis().x(span.from());
            g.fill(new Rectangle2D.Double(
                    x, BandLayout.TOP_PX, layout.axis().x(span.to()) - x, layout.bottomPx() - BandLayout.TOP_PX));
        }
    }

    private void pictureTicks(Graphics2D g, BandLayout layout, Palette colours) {
        g.setStroke(new BasicStroke(1));
        for (UtcTime time : pictures) {
            double x = layout.axis().x(time);
            g.setColor(colours.quietInk());
            g.draw(new Line2D.Double(x, BandLayout.TOP_PX - 2.0, x, layout.bottomPx()));
            Path2D head = new Path2D.Double();
            head.moveTo(x - 3.5, 1);
            head.lineTo(x + 3.5, 1);
            head.lineTo(x, BandLayout.TOP_PX - 2.0);
            head.closePath();
            g.fill(head);
        }
    }

    private void event(Graphics2D g, BandLayout layout, int band, Happening event, Palette colours) {
        Rectangle2D box = layout.box(band, event);
        Color ink = event.hindrance().isPresent() ? colours.quietInk() : colours.ink();
        g.setColor(colours.ground());
        g.fill(box);
        SpanFill.of(event.kind()).paint(g, box, ink);
        contacts(g, layout, box, event, ink);
        if (chosen.equals(Optional.of(event))) {
            g.setColor(colours.accent());
            g.setStroke(new BasicStroke(2));
            g.draw(new Rectangle2D.Double(
                    box.getMinX() - 3, box.getMinY() - 2.5, box.getWidth() + 6, box.getHeight() + 5));
        }
    }

    /** Strokes at the touches, where the Earth sees them. */
    private static void contacts(Graphics2D g, BandLayout layout, Rectangle2D box, Happening event, Color ink) {
        g.setColor(ink);
        g.setStroke(new BasicStroke(1.2f));
        for (Happening.Touch touch : event.touches()) {
            UtcTime time = touch.contact().time();
            boolean first = time.compareTo(event.mid()) < 0;
            if (first ? event.isBeginSeen() : event.isEndSeen()) {
                double x = layout.axis().x(time);
                g.draw(new Line2D.Double(x, box.getMinY() - 1.5, x, box.getMaxY() + 1.5));
            }
        }
    }

    private static void hours(Graphics2D g, BandLayout layout, Palette colours) {
        g.setFont(Theme.figureFont(-2));
        g.setColor(colours.quietInk());
        g.setStroke(new BasicStroke(1));
        FontMetrics m = g.getFontMetrics();
        double y = layout.bottomPx();
        g.draw(new Line2D.Double(layout.axis().leftPx(), y, layout.axis().rightPx(), y));
        for (TimeAxis.Tick tick : layout.axis().ticks(TICK_GAP_PX)) {
            g.draw(new Line2D.Double(tick.xPx(), y, tick.xPx(), y + 4));
            float x = (float) (tick.xPx() - m.stringWidth(tick.label()) / 2.0);
            if (x + m.stringWidth(tick.label()) < layout.axis().rightPx() + 8) {
                g.drawString(tick.label(), x, (float) y + m.getAscent() + 5);
            }
        }
        g.drawString("UTC", (float) layout.axis().rightPx() + 12, (float) y + m.getAscent() + 5);
    }
}
