/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.BasicStroke;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Supplier;
import javax.accessibility.AccessibleContext;
import javax.swing.JComponent;
import oblate.sky.UtcTime;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.timeline.TimeAxis;
import oblate.workbench.words.Texts;

/** What the drawings of a night have in common: the night, the pointer's line, the present moment's. */
abstract class NightDrawing extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(NightDrawing.class);
    private static final int TICK_GAP_PX = 46;
    private static final float[] DASHES = {3, 3};
    private final transient Supplier<Palette> palette;
    private final transient Supplier<Instant> now;
    private final transient NightPointer pointer;
    private transient Optional<NightSheet> sheet = Optional.empty();

    NightDrawing(Supplier<Palette> palette, NightPointer pointer, Supplier<Instant> now) {
        this.palette = palette;
        this.pointer = pointer;
        this.now = now;
        pointer.whenChanged(this::repaint);
        MouseAdapter mouse = new MouseAdapter() {
            @Override
            public void mouseMoved(MouseEvent e) {
                pointer.hover(timeAt(e.getX()));
            }

            @Override
            public void mouseDragged(MouseEvent e) {
                pointer.hover(timeAt(e.getX()));
            }

            @Override
            public void mouseExited(MouseEvent e) {
                pointer.hover(Optional.empty());
            }
        };
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
    }

    /** Draws the night itself. */
    abstract void paintNight(Graphics2D g, NightSheet shown, Palette colours);

    NightPointer pointer() {
        return pointer;
    }

    Optional<NightSheet> sheet() {
        return sheet;
    }

    void show(Optional<NightSheet> shown) {
        sheet = shown;
        revalidate();
        repaint();
    }

    private Optional<UtcTime> timeAt(int x) {
        return sheet.map(s -> SkyScales.axis(s, getWidth()))
                .filter(a -> x >= a.leftPx() && x <= a.rightPx())
                .map(a -> a.at(x));
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

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.setColor(colours.ground());
        g2.fillRect(0, 0, getWidth(), getHeight());
        sheet.ifPresent(s -> paintNight(g2, s, colours));
        g2.dispose();
    }

    /**
     * The pointer's line, and the present moment's when the night is going on.
     *
     * @param named whether the present moment is named
     */
    void marks(Graphics2D g, TimeAxis axis, double topPx, double bottomPx, boolean named) {
        Palette colours = palette.get();
        UtcTime moment = UtcTime.of(now.get());
        if (axis.span().contains(moment)) {
            double x = axis.x(moment);
            g.setColor(colours.alarm());
            g.setStroke(new BasicStroke(1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, DASHES, 0));
            g.draw(new Line2D.Double(x, topPx, x, bottomPx));
            if (named) {
                name(g, axis, x, topPx, colours);
            }
        }
        pointer.hover().ifPresent(t -> {
            g.setColor(colours.ink());
            g.setStroke(new BasicStroke(1));
            g.draw(new Line2D.Double(axis.x(t), topPx, axis.x(t), bottomPx));
        });
    }

    /** On a plate, so that a curve behind it does not make it unreadable; to the left where there is no room on the right. */
    private static void name(Graphics2D g, TimeAxis axis, double x, double topPx, Palette colours) {
        g.setFont(Theme.bodyFont(-2));
        FontMetrics m = g.getFontMetrics();
        String word = TEXTS.text("now");
        double width = m.stringWidth(word);
        double left = x + 4 + width > axis.rightPx() ? x - 4 - width : x + 4;
        g.setColor(Tints.alpha(colours.ground(), 200));
        g.fill(new java.awt.geom.Rectangle2D.Double(left - 2, topPx + 2, width + 4, m.getHeight()));
        g.setColor(colours.alarm());
        g.drawString(word, (float) left, (float) topPx + 2 + m.getAscent());
    }

    /** Hours under a line, with short strokes. */
    static void hours(Graphics2D g, TimeAxis axis, float textY, double linePx, Palette colours) {
        g.setFont(Theme.figureFont(-2));
        g.setColor(colours.quietInk());
        g.setStroke(new BasicStroke(1));
        g.draw(new Line2D.Double(axis.leftPx(), linePx, axis.rightPx(), linePx));
        FontMetrics m = g.getFontMetrics();
        for (TimeAxis.Tick tick : axis.ticks(TICK_GAP_PX)) {
            g.draw(new Line2D.Double(tick.xPx(), linePx, tick.xPx(), linePx + 4));
            g.drawString(tick.label(), (float) (tick.xPx() - m.stringWidth(tick.label()) / 2.0), textY);
        }
        g.drawString(TEXTS.text("utc"), (float) axis.rightPx() + 24, textY);
    }
}
