/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import oblate.sky.MoonPlace;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/**
 * The scale of a drawing of planet and moons, in the first corner that neither a moon nor the planet stands in. Immutable.
 *
 * @param text what the bar's length is
 * @param lengthPx the bar's length
 * @param box the room of bar and text
 */
record ScaleBar(String text, double lengthPx, Rectangle2D box) {
    private static final Texts TEXTS = Texts.of(ScaleBar.class);
    private static final double HEIGHT_PX = 30;
    private static final double EDGE_PX = 6;
    private static final double INSIDE_PX = 4;
    private static final double MOON_MARGIN_PX = 4;

    /**
     * The scale for a scene.
     *
     * @param closeUp whether the upper left corner is taken by the sense of the drawing
     * @param field size of the drawing (px)
     */
    static ScaleBar of(Graphics2D g, Scene now, Placement place, boolean closeUp, Dimension field) {
        double radii = closeUp || place.pxPerRadius() > 40 ? 1 : place.pxPerRadius() > 12 ? 5 : 10;
        double length = radii * place.pxPerRadius();
        String text = TEXTS.text(
                radii == 1 ? "scale.one" : "scale.many",
                Figures.fixed(radii, 0),
                Figures.fixed(radii * now.disc().diameterEquatorialArcsec() / 2, 1));
        double width = Math.max(length, g.getFontMetrics(Theme.figureFont(-2)).stringWidth(text)) + 2 * INSIDE_PX;
        return new ScaleBar(text, length, free(corners(width, closeUp, field), taken(now, place)));
    }

    private static List<Rectangle2D> corners(double width, boolean closeUp, Dimension field) {
        double right = field.width - EDGE_PX - width;
        double bottom = field.height - EDGE_PX - HEIGHT_PX;
        List<Rectangle2D> corners = new ArrayList<>();
        corners.add(new Rectangle2D.Double(EDGE_PX, bottom, width, HEIGHT_PX));
        corners.add(new Rectangle2D.Double(right, bottom, width, HEIGHT_PX));
        corners.add(new Rectangle2D.Double(right, EDGE_PX, width, HEIGHT_PX));
        if (!closeUp) {
            corners.add(new Rectangle2D.Double(EDGE_PX, EDGE_PX, width, HEIGHT_PX));
        }
        return corners;
    }

    /** Where planet, moons and their names below them stand. */
    private static List<Shape> taken(Scene now, Placement place) {
        List<Shape> taken = new ArrayList<>();
        taken.add(place.transform().createTransformedShape(new GlobeView(now.disc()).outline()));
        for (MoonPlace moon : now.moons()) {
            Point2D at = SystemDrawing.screen(moon, place);
            double reach = SystemDrawing.sizePx(moon, place) / 2 + MOON_MARGIN_PX;
            taken.add(new Ellipse2D.Double(at.getX() - reach, at.getY() - reach, 2 * reach, 2 * reach));
        }
        return taken;
    }

    private static Rectangle2D free(List<Rectangle2D> corners, List<Shape> taken) {
        return corners.stream()
                .filter(c -> taken.stream().noneMatch(t -> t.intersects(c)))
                .findFirst()
                .orElse(corners.get(0));
    }

    /** Draws it, with a casing so that it reads on whatever it stands on. */
    void paint(Graphics2D g, Palette colours) {
        double x = box.getX() + INSIDE_PX;
        double y = box.getMaxY() - INSIDE_PX - 1;
        Path2D bar = new Path2D.Double();
        bar.append(new Line2D.Double(x, y, x + lengthPx, y), false);
        bar.append(new Line2D.Double(x, y - 4, x, y + 4), false);
        bar.append(new Line2D.Double(x + lengthPx, y - 4, x + lengthPx, y + 4), false);
        g.setFont(Theme.figureFont(-2));
        FontMetrics metrics = g.getFontMetrics();
        float baseline = (float) (box.getY() + metrics.getAscent());
        Shape letters =
                g.getFont().createGlyphVector(g.getFontRenderContext(), text).getOutline((float) x, baseline);
        g.setColor(colours.night());
        g.setStroke(new BasicStroke(4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(bar);
        g.draw(letters);
        g.setColor(colours.nightInk());
        g.setStroke(new BasicStroke(1.4f));
        g.draw(bar);
        g.drawString(text, (float) x, baseline);
    }
}
