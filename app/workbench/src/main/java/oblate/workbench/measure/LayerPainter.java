/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Pattern;
import oblate.workbench.look.Theme;

/** Paints what layers planned, each line with a dark casing so that it reads on bright and dark alike. */
final class LayerPainter {
    private static final Color CASING = new Color(0, 0, 0, 150);
    private static final Color NO_CASING = new Color(0, 0, 0, 0);
    private static final Color GRID_CASING = new Color(0, 0, 0, 60);
    private final Graphics2D g;
    private final CanvasView view;
    private final Palette palette;

    LayerPainter(Graphics2D g, CanvasView view, Palette palette) {
        this.g = g;
        this.view = view;
        this.palette = palette;
    }

    /**
     * @param coarsely without the thin lines' casing, as long as the view moves
     */
    void paint(PaintPlan plan, boolean coarsely) {
        AffineTransform place = view.transform();
        for (PaintPlan.Stroke line : plan.paths()) {
            boolean quiet = line.ink() == Ink.GRID;
            float width = line.strong() ? 1.8f : quiet ? 0.9f : 1.4f;
            Color colour = quiet ? alpha(palette.of(line.ink()), 110) : palette.of(line.ink());
            stroke(
                    line.path().createTransformedShape(place),
                    line.pattern(),
                    width,
                    colour,
                    quiet ? coarsely ? NO_CASING : GRID_CASING : CASING);
        }
        for (Drawn drawn : plan.others()) {
            if (drawn instanceof Drawn.Spot spot) {
                paintSpot(spot);
            } else if (drawn instanceof Drawn.Words words) {
                paintWords(words);
            } else if (drawn instanceof Drawn.Label label) {
                Point2D.Double at = view.toScreen(label.at());
                double away = label.radiusPx() * view.scale() + 4;
                g.setFont(Theme.bodyFont(-2));
                write(label.text(), at.x + away, at.y - away + 4, palette.of(label.ink()));
            }
        }
    }

    private void paintWords(Drawn.Words words) {
        Point2D.Double at = view.toScreen(words.at());
        g.setFont(Theme.headFont(-3));
        FontMetrics m = g.getFontMetrics();
        write(
                words.text(),
                at.x - m.stringWidth(words.text()) / 2.0,
                at.y + m.getAscent() / 2.0 - 1,
                alpha(palette.of(words.ink()), 210));
    }

    private void paintSpot(Drawn.Spot spot) {
        Point2D.Double at = view.toScreen(spot.at());
        double r = spot.radiusScreenPx();
        Color colour = palette.of(spot.ink());
        stroke(new Ellipse2D.Double(at.x - r, at.y - r, 2 * r, 2 * r), spot.pattern(), 1.8f, colour, CASING);
        if (spot.ink() == Ink.CHOSEN) {
            for (int i = 0; i < 4; i++) {
                double dx = Math.cos(i * Math.PI / 2);
                double dy = Math.sin(i * Math.PI / 2);
                stroke(
                        new Line2D.Double(
                                at.x + dx * (r + 2), at.y + dy * (r + 2), at.x + dx * (r + 8), at.y + dy * (r + 8)),
                        Pattern.SOLID,
                        1.8f,
                        colour,
                        CASING);
            }
        }
        if (spot.ink() != Ink.EXPECTED) {
            g.setColor(CASING);
            g.fill(new Ellipse2D.Double(at.x - 1.8, at.y - 1.8, 3.6, 3.6));
            g.setColor(colour);
            g.fill(new Ellipse2D.Double(at.x - 1.1, at.y - 1.1, 2.2, 2.2));
        }
        g.setFont(spot.ink() == Ink.EXPECTED ? Theme.bodyFont(-2) : Theme.headFont(-2));
        write(spot.label(), at.x + r + 5, at.y - r + 2, colour);
    }

    private void stroke(Shape shape, Pattern pattern, float width, Color colour, Color casing) {
        if (casing.getAlpha() > 0) {
            g.setStroke(
                    new BasicStroke(width + 2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, dashes(pattern), 0));
            g.setColor(casing);
            g.draw(shape);
        }
        g.setStroke(new BasicStroke(width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, dashes(pattern), 0));
        g.setColor(colour);
        g.draw(shape);
    }

    private static float[] dashes(Pattern pattern) {
        return switch (pattern) {
            case SOLID -> null;
            case DASHED -> new float[] {6, 5};
            case DOTTED -> new float[] {1, 4};
        };
    }

    private void write(String text, double x, double y, Color colour) {
        g.setColor(new Color(0, 0, 0, 170));
        for (int dx = -1; dx <= 1; dx++) {
            for (int dy = -1; dy <= 1; dy++) {
                if (dx != 0 || dy != 0) {
                    g.drawString(text, (float) x + dx, (float) y + dy);
                }
            }
        }
        g.setColor(colour);
        g.drawString(text, (float) x, (float) y);
    }

    private static Color alpha(Color c, int alpha) {
        return new Color(c.getRed(), c.getGreen(), c.getBlue(), alpha);
    }
}
