/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import oblate.sky.MoonPlace;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/**
 * The words about a drawing of planet and moons: names where they have room, poles, and the scale.
 *
 * @param now what is drawn
 * @param place where it is drawn
 * @param closeUp whether shadows are named and the sense is told
 * @param chosenMoons ids of the moons to stand out
 * @param colours the theme's
 * @param field size of the drawing (px)
 */
record SystemWords(
        Scene now, Placement place, boolean closeUp, Set<String> chosenMoons, Palette colours, Dimension field) {
    private static final double LETTER_RADII = 1.22;
    private static final double LETTER_RINGS_RADII = 2.42;
    private static final double SCALE_ROOM_PX = 150;

    void paint(Graphics2D g, Facing facing, boolean mirrored, boolean ringed) {
        names(g);
        if (closeUp) {
            sense(g, facing, mirrored, ringed);
        }
        scale(g);
    }

    private void names(Graphics2D g) {
        List<Rectangle2D> taken = new ArrayList<>();
        taken.add(new Rectangle2D.Double(0, field.height - 34.0, SCALE_ROOM_PX, 34));
        Rectangle2D whole = new Rectangle2D.Double(0, 0, field.width, field.height);
        g.setFont(Theme.bodyFont(-1));
        for (MoonPlace moon : now.moons()) {
            Point2D at = SystemDrawing.screen(moon, place);
            if (whole.contains(at)) {
                g.setColor(chosenMoons.contains(moon.id()) ? colours.of(Ink.CHOSEN) : colours.nightInk());
                name(g, words(moon), at, SystemDrawing.sizePx(moon, place), taken);
            }
        }
        if (closeUp) {
            for (MoonPlace moon : now.moons()) {
                g.setColor(chosenMoons.contains(moon.id()) ? colours.of(Ink.CHOSEN) : colours.nightInk());
                moon.shadow()
                        .ifPresent(s -> name(
                                g,
                                Words.of("shadow.of", moon.name()),
                                place.toScreen(s.xWestRadii(), s.yNorthRadii()),
                                SystemDrawing.sizePx(moon, place),
                                taken));
            }
        }
    }

    private static String words(MoonPlace moon) {
        if (moon.occulted()) {
            return Words.of("moon.behind", moon.name());
        }
        return moon.eclipsed() ? Words.of("moon.eclipsed", moon.name()) : moon.name();
    }

    /** Writes a name beside its moon, where there is room: below, above, right or left; leaves it out in the strip when there is none. */
    private void name(Graphics2D g, String text, Point2D at, double sizePx, List<Rectangle2D> taken) {
        Color ink = g.getColor();
        FontMetrics metrics = g.getFontMetrics();
        double w = metrics.stringWidth(text);
        double h = metrics.getAscent() + metrics.getDescent();
        double away = sizePx / 2 + 3;
        double[][] corners = {
            {at.getX() - w / 2, at.getY() + away},
            {at.getX() - w / 2, at.getY() - away - h},
            {at.getX() + away, at.getY() - h / 2},
            {at.getX() - away - w, at.getY() - h / 2},
            {at.getX() - w / 2, at.getY() + away + h},
            {at.getX() - w / 2, at.getY() - away - 2 * h},
            {at.getX() - w / 2, at.getY() + away + 2 * h},
            {at.getX() - w / 2, at.getY() - away - 3 * h}
        };
        for (double[] corner : corners) {
            double x = Math.max(2, Math.min(field.width - w - 2, corner[0]));
            Rectangle2D box = new Rectangle2D.Double(x, corner[1], w, h);
            boolean free = taken.stream().noneMatch(box::intersects)
                    && corner[1] > 0
                    && corner[1] + h < field.height - (closeUp ? 0 : 2);
            if (free) {
                taken.add(box);
                g.setColor(new Color(0, 0, 0, 150));
                g.fill(new Rectangle2D.Double(x - 2, corner[1], w + 4, h));
                g.setColor(ink);
                g.drawString(text, (float) x, (float) (corner[1] + metrics.getAscent()));
                return;
            }
        }
    }

    private void sense(Graphics2D g, Facing facing, boolean mirrored, boolean ringed) {
        g.setFont(Theme.bodyFont(-1));
        g.setColor(colours.nightInk());
        FontMetrics metrics = g.getFontMetrics();
        String sense = facing + ", " + Words.of(mirrored ? "sense.mirrored" : "sense.sky");
        g.drawString(sense, 10, 8 + metrics.getAscent());
        pole(g);
        direction(g, Words.of("compass.north"), 0, LETTER_RADII);
        direction(g, Words.of("compass.west"), -90, ringed ? LETTER_RINGS_RADII : LETTER_RADII);
    }

    /** Short strokes at the poles, along the spin axis. */
    private void pole(Graphics2D g) {
        double ratio = now.disc()
                .planet()
                .globe()
                .figure()
                .apparentAxisRatio(now.disc().subEarth().latCentricDeg());
        g.setStroke(new BasicStroke(1.2f));
        for (int sign = -1; sign <= 1; sign += 2) {
            g.draw(new Line2D.Double(
                    place.toScreen(0, sign * (ratio + 0.02)), place.toScreen(0, sign * (ratio + 0.14))));
        }
    }

    /** N over the planet's north pole, W where the planet's features go. */
    private void direction(Graphics2D g, String letter, double fromPoleDeg, double radii) {
        Font font = Theme.headFont(-1);
        g.setFont(font);
        FontMetrics metrics = g.getFontMetrics();
        Point2D d = place.direction(fromPoleDeg);
        double far = radii * place.pxPerRadius();
        g.drawString(letter, (float) (place.centreXPx() + far * d.getX() - metrics.stringWidth(letter) / 2.0), (float)
                (place.centreYPx() + far * d.getY() + metrics.getAscent() / 2.0 - 1));
    }

    private void scale(Graphics2D g) {
        double radiusArcsec = now.disc().diameterEquatorialArcsec() / 2;
        double radii = closeUp ? 1 : place.pxPerRadius() > 40 ? 1 : place.pxPerRadius() > 12 ? 5 : 10;
        double length = radii * place.pxPerRadius();
        double y = field.height - 10.0;
        g.setColor(colours.nightInk());
        g.setStroke(new BasicStroke(1.4f));
        g.draw(new Line2D.Double(10, y, 10 + length, y));
        g.draw(new Line2D.Double(10, y - 4, 10, y + 4));
        g.draw(new Line2D.Double(10 + length, y - 4, 10 + length, y + 4));
        g.setFont(Theme.figureFont(-2));
        String text = Words.of(
                radii == 1 ? "scale.one" : "scale.many",
                Figures.fixed(radii, 0),
                Figures.fixed(radii * radiusArcsec, 1));
        g.drawString(text, 10f, (float) y - 8);
    }
}
