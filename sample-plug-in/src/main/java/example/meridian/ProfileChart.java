/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import oblate.sky.Region;
import oblate.workbench.PanelContext;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/** Brightness against an angle from −90° to 90°, with belts shaded behind it and a readout that follows the pointer. */
final class ProfileChart extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final int LEFT = 52;
    private static final int RIGHT = 16;
    private static final int TOP = 34;
    private static final int BOTTOM = 42;
    private final transient PanelContext context;
    private final String title;
    private final String axis;
    private transient Optional<BrightnessProfile> profile = Optional.empty();
    private transient List<Region> belts = List.of();
    private transient Optional<Integer> pointerX = Optional.empty();

    ProfileChart(PanelContext context, String title, String axis) {
        this.context = context;
        this.title = title;
        this.axis = axis;
        MouseAdapter mouse = new MouseAdapter() {
            @Override
            public void mouseMoved(MouseEvent e) {
                pointerX = Optional.of(e.getX());
                repaint();
            }

            @Override
            public void mouseExited(MouseEvent e) {
                pointerX = Optional.empty();
                repaint();
            }
        };
        addMouseListener(mouse);
        addMouseMotionListener(mouse);
    }

    void show(Optional<BrightnessProfile> shown, List<Region> shaded) {
        profile = shown;
        belts = shaded.stream().filter(Region::dark).toList();
        repaint();
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(600, 260);
    }

    private double x(double angleDeg) {
        return LEFT + (angleDeg + 90) / 180 * (getWidth() - LEFT - RIGHT);
    }

    private double y(double brightness, double top) {
        return getHeight() - BOTTOM - brightness / top * (getHeight() - TOP - BOTTOM);
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = context.palette();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        List<BrightnessProfile.Point> points =
                profile.map(BrightnessProfile::points).orElse(List.of());
        double top = points.stream()
                .mapToDouble(p -> p.brightness() + p.sigma())
                .max()
                .orElse(1);
        top = Math.max(0.1, Math.ceil(top * 5) / 5);
        paintBelts(g2, colours);
        paintAxes(g2, colours, top);
        if (!points.isEmpty()) {
            paintCurve(g2, colours, points, top);
            paintReadout(g2, colours, points, top);
        }
        g2.dispose();
    }

    private void paintBelts(Graphics2D g, Palette colours) {
        g.setFont(Theme.bodyFont(-2));
        FontMetrics m = g.getFontMetrics();
        for (Region belt : belts) {
            double from = x(belt.southLatGraphicDeg());
            double to = x(belt.northLatGraphicDeg());
            g.setColor(faint(colours.ink(), 26));
            g.fill(new Rectangle2D.Double(from, TOP, to - from, getHeight() - TOP - BOTTOM));
            if (m.stringWidth(belt.shortName()) < to - from) {
                g.setColor(colours.quietInk());
                g.drawString(
                        belt.shortName(),
                        (float) ((from + to - m.stringWidth(belt.shortName())) / 2),
                        TOP + m.getAscent() + 4f);
            }
        }
    }

    private void paintAxes(Graphics2D g, Palette colours, double top) {
        g.setFont(Theme.headFont(0));
        g.setColor(colours.ink());
        g.drawString(title, LEFT, TOP - 12);
        g.setFont(Theme.bodyFont(-1));
        FontMetrics m = g.getFontMetrics();
        for (int angle = -90; angle <= 90; angle += 30) {
            g.setColor(colours.line());
            g.draw(new Line2D.Double(x(angle), TOP, x(angle), getHeight() - BOTTOM));
            g.setColor(colours.quietInk());
            String text = Figures.fixed(angle, 0) + "°";
            g.drawString(text, (float) x(angle) - m.stringWidth(text) / 2f, getHeight() - BOTTOM + 16f);
        }
        for (int i = 0; i <= 4; i++) {
            double value = top * i / 4;
            g.setColor(colours.line());
            g.draw(new Line2D.Double(LEFT, y(value, top), getWidth() - RIGHT, y(value, top)));
            g.setColor(colours.quietInk());
            String text = Figures.fixed(value, 2);
            g.drawString(text, LEFT - 8f - m.stringWidth(text), (float) y(value, top) + 4);
        }
        g.drawString(axis, (getWidth() + LEFT - RIGHT - m.stringWidth(axis)) / 2f, getHeight() - 6f);
    }

    private void paintCurve(Graphics2D g, Palette colours, List<BrightnessProfile.Point> points, double top) {
        Path2D band = new Path2D.Double();
        Path2D line = new Path2D.Double();
        for (int i = 0; i < points.size(); i++) {
            BrightnessProfile.Point p = points.get(i);
            double up = y(p.brightness() + p.sigma(), top);
            if (i == 0) {
                band.moveTo(x(p.angleDeg()), up);
                line.moveTo(x(p.angleDeg()), y(p.brightness(), top));
            } else {
                band.lineTo(x(p.angleDeg()), up);
                line.lineTo(x(p.angleDeg()), y(p.brightness(), top));
            }
        }
        for (int i = points.size() - 1; i >= 0; i--) {
            BrightnessProfile.Point p = points.get(i);
            band.lineTo(x(p.angleDeg()), y(p.brightness() - p.sigma(), top));
        }
        band.closePath();
        Color ink = colours.of(Ink.MERIDIAN);
        g.setColor(faint(ink, 80));
        g.fill(band);
        g.setStroke(new BasicStroke(1.6f));
        g.setColor(ink);
        g.draw(line);
    }

    private void paintReadout(Graphics2D g, Palette colours, List<BrightnessProfile.Point> points, double top) {
        if (pointerX.isEmpty()) {
            return;
        }
        int at = pointerX.get();
        BrightnessProfile.Point near = points.stream()
                .min(Comparator.comparingDouble(p -> Math.abs(x(p.angleDeg()) - at)))
                .orElseThrow();
        g.setColor(colours.accent());
        g.draw(new Line2D.Double(x(near.angleDeg()), TOP, x(near.angleDeg()), getHeight() - BOTTOM));
        g.setFont(Theme.figureFont(0));
        String text = Figures.fixed(near.angleDeg(), 0) + "°   " + Figures.withSigma(near.brightness(), near.sigma(), "");
        g.setColor(colours.ink());
        g.drawString(text, getWidth() - RIGHT - g.getFontMetrics().stringWidth(text), TOP - 12);
        g.fill(new java.awt.geom.Ellipse2D.Double(x(near.angleDeg()) - 3, y(near.brightness(), top) - 3, 6, 6));
    }

    private static Color faint(Color c, int alpha) {
        return new Color(c.getRed(), c.getGreen(), c.getBlue(), alpha);
    }
}
