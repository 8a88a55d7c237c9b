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
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.accessibility.AccessibleContext;
import javax.swing.JComponent;
import oblate.drift.timing.NightClock;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.Timing;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/**
 * Observed minus predicted over the season: a point with its error for each event, a shape for each phenomenon, the moon's letter beside it, hollow where in doubt;
 * behind them each night's mean, one standard error to each side.
 */
final class TimingPlot extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(TimingPlot.class);
    private static final List<Ink> MOON_INKS = List.of(Ink.OUTLINE, Ink.MARK, Ink.TERMINATOR, Ink.EXPECTED);
    private static final double NEAR_PX = 12;
    private final transient Supplier<Palette> palette;
    private transient List<Timing> best = List.of();
    private transient List<NightClock> nights = List.of();
    private transient Optional<Timing> chosen = Optional.empty();

    TimingPlot(Supplier<Palette> palette, Consumer<Timing> whenPicked) {
        this.palette = palette;
        setName("moons.timings.plot");
        setToolTipText("");
        getAccessibleContext().setAccessibleName(TEXTS.text("timings.plot.name"));
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                at(e).ifPresent(whenPicked);
            }
        });
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

    /** @param timings each with a time */
    void show(List<Timing> timings, List<NightClock> clocks) {
        best = List.copyOf(timings);
        nights = List.copyOf(clocks);
        repaint();
    }

    void choose(Optional<Timing> timing) {
        chosen = timing;
        repaint();
    }

    private Optional<TimingScale> scale() {
        return best.isEmpty() ? Optional.empty() : Optional.of(TimingScale.of(best, getWidth(), getHeight()));
    }

    /** The point nearest the pointer. */
    private Optional<Timing> at(MouseEvent e) {
        return scale().flatMap(s -> s.places().stream()
                .filter(p -> distance(s, p, e) < NEAR_PX)
                .min(Comparator.comparingDouble(p -> distance(s, p, e)))
                .map(TimingScale.Timed::timing));
    }

    private static double distance(TimingScale s, TimingScale.Timed p, MouseEvent e) {
        return Math.hypot(s.x(p) - e.getX(), s.y(p) - e.getY());
    }

    @Override
    public String getToolTipText(MouseEvent e) {
        return at(e).map(TimingPlot::tip).orElse(null);
    }

    private static String tip(Timing t) {
        String what = t.words() + ", " + t.phenomenon().words() + ", " + t.night() + ": "
                + Figures.withSigma(t.oMinusPS(), t.errors().totalS(), "s");
        return t.doubts().isEmpty() ? what : what + " (" + String.join("; ", t.doubts()) + ")";
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(560, 220);
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
        scale().ifPresent(s -> paint(g2, s, colours));
        g2.dispose();
    }

    private void paint(Graphics2D g, TimingScale s, Palette colours) {
        axes(g, s, colours);
        Shape clip = g.getClip();
        g.clip(s.inside());
        for (NightClock night : nights) {
            if (night.timings() > 1) {
                mean(g, s, night, colours);
            }
        }
        for (TimingScale.Timed p : s.places()) {
            point(g, s, p, colours);
        }
        g.setClip(clip);
    }

    private static void mean(Graphics2D g, TimingScale s, NightClock night, Palette colours) {
        double half = s.halfWidthPx(night.night());
        double top = s.y(night.fastS() + night.sigmaS());
        Color ink = colours.quietInk();
        g.setColor(new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), 60));
        g.fill(new Rectangle2D.Double(
                s.x(night.night()) - half, top, 2 * half, s.y(night.fastS() - night.sigmaS()) - top));
    }

    private void point(Graphics2D g, TimingScale s, TimingScale.Timed p, Palette colours) {
        Timing t = p.timing();
        double x = s.x(p);
        double y = s.y(p);
        double sigma = t.errors().totalS();
        Color colour = colour(t, colours);
        g.setColor(colour);
        g.setStroke(new BasicStroke(1.4f));
        g.draw(new Line2D.Double(x, s.y(t.oMinusPS() - sigma), x, s.y(t.oMinusPS() + sigma)));
        Shape shape = AffineTransform.getTranslateInstance(x, y).createTransformedShape(shape(t.phenomenon()));
        g.setColor(t.doubts().isEmpty() ? colour : colours.ground());
        g.fill(shape);
        g.setColor(t.doubts().isEmpty() ? colours.ground() : colour);
        g.setStroke(new BasicStroke(t.doubts().isEmpty() ? 0.8f : 1.4f));
        g.draw(shape);
        g.setFont(Theme.bodyFont(-2));
        g.setColor(colours.ink());
        g.drawString(t.moon().name().substring(0, 1), (float) x + 6, (float) y - 3);
        if (chosen.equals(Optional.of(t))) {
            g.setColor(colours.accent());
            g.setStroke(new BasicStroke(2));
            g.draw(new Ellipse2D.Double(x - 9, y - 9, 18, 18));
        }
    }

    private static Color colour(Timing t, Palette colours) {
        int moon = Math.floorMod(t.moon().id().hashCode(), MOON_INKS.size());
        List<String> known = List.of("io", "europa", "ganymede", "callisto");
        int place = known.indexOf(t.moon().id());
        return colours.of(MOON_INKS.get(place >= 0 ? place : moon));
    }

    private static Shape shape(Phenomenon phenomenon) {
        return switch (phenomenon) {
            case TRANSIT -> new Ellipse2D.Double(-4.2, -4.2, 8.4, 8.4);
            case SHADOW_TRANSIT -> new Rectangle2D.Double(-3.8, -3.8, 7.6, 7.6);
            case OCCULTATION -> polygon(-4.8, 4, 4.8, 4, 0, -5);
            case ECLIPSE -> polygon(-4.8, -4, 4.8, -4, 0, 5);
            case BESIDE -> polygon(-5, 0, 0, -5, 5, 0, 0, 5);
        };
    }

    private static Path2D polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }

    private static void axes(Graphics2D g, TimingScale s, Palette colours) {
        g.setFont(Theme.figureFont(-2));
        FontMetrics m = g.getFontMetrics();
        Rectangle2D in = s.inside();
        for (double tick : s.secondTicks()) {
            g.setColor(tick == 0 ? colours.quietInk() : colours.line());
            g.setStroke(new BasicStroke(tick == 0 ? 1.2f : 0.8f));
            g.draw(new Line2D.Double(in.getMinX(), s.y(tick), in.getMaxX(), s.y(tick)));
            String label = Figures.fixed(tick, 0);
            g.setColor(colours.quietInk());
            g.drawString(label, (float) in.getMinX() - 6 - m.stringWidth(label), (float)
                    (s.y(tick) + m.getAscent() / 2.0 - 1));
        }
        g.setStroke(new BasicStroke(0.8f));
        for (LocalDate tick : s.dateTicks()) {
            g.setColor(colours.line());
            g.draw(new Line2D.Double(s.x(tick), in.getMinY(), s.x(tick), in.getMaxY()));
            String label = s.label(tick);
            g.setColor(colours.quietInk());
            g.drawString(
                    label, (float) (s.x(tick) - m.stringWidth(label) / 2.0), (float) in.getMaxY() + m.getAscent() + 4);
        }
        g.drawString(TEXTS.text("timings.axis"), (float) in.getMinX(), (float) in.getMinY() - 5);
    }
}
