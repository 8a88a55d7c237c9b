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
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import oblate.sky.MoonPlace;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

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
    private static final Texts TEXTS = Texts.of(SystemWords.class);
    private static final double LETTER_RADII = 1.22;
    private static final double LETTER_RINGS_RADII = 2.42;

    void paint(Graphics2D g, Facing facing, boolean mirrored, boolean ringed) {
        ScaleBar scale = ScaleBar.of(g, now, place, closeUp, field);
        scale.paint(g, colours);
        names(g, facing, mirrored, scale.box());
        if (closeUp) {
            sense(g, facing, mirrored, ringed);
        }
    }

    private void names(Graphics2D g, Facing facing, boolean mirrored, Rectangle2D scale) {
        List<Rectangle2D> taken = new ArrayList<>();
        taken.add(scale);
        Rectangle2D whole = new Rectangle2D.Double(0, 0, field.width, field.height);
        g.setFont(Theme.bodyFont(-1));
        if (closeUp) {
            FontMetrics metrics = g.getFontMetrics();
            taken.add(new Rectangle2D.Double(
                    0, 0, 12.0 + metrics.stringWidth(senseWords(facing, mirrored)), 10.0 + metrics.getHeight()));
        }
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
                                TEXTS.text("shadow.of", moon.name()),
                                place.toScreen(s.xWestRadii(), s.yNorthRadii()),
                                SystemDrawing.sizePx(moon, place),
                                taken));
            }
        }
    }

    private static String words(MoonPlace moon) {
        if (moon.occulted()) {
            return TEXTS.text("moon.behind", moon.name());
        }
        return moon.eclipsed() ? TEXTS.text("moon.eclipsed", moon.name()) : moon.name();
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
        List<Rectangle2D> free = Arrays.stream(corners)
                .<Rectangle2D>map(
                        c -> new Rectangle2D.Double(Math.max(2, Math.min(field.width - w - 2, c[0])), c[1], w, h))
                .filter(box -> taken.stream().noneMatch(box::intersects)
                        && box.getY() > 0
                        && box.getMaxY() < field.height - (closeUp ? 0 : 2))
                .toList();
        // rather where no moon is covered
        free.stream()
                .filter(box -> dots().noneMatch(box::intersects))
                .findFirst()
                .or(() -> free.stream().findFirst())
                .ifPresent(box -> {
                    taken.add(box);
                    g.setColor(new Color(0, 0, 0, 150));
                    g.fill(new Rectangle2D.Double(box.getX() - 2, box.getY(), w + 4, h));
                    g.setColor(ink);
                    g.drawString(text, (float) box.getX(), (float) (box.getY() + metrics.getAscent()));
                });
    }

    /** Where the moons are drawn. */
    private Stream<Rectangle2D> dots() {
        return now.moons().stream().map(moon -> {
            double size = SystemDrawing.sizePx(moon, place);
            Point2D at = SystemDrawing.screen(moon, place);
            return new Rectangle2D.Double(at.getX() - size / 2, at.getY() - size / 2, size, size);
        });
    }

    private static String senseWords(Facing facing, boolean mirrored) {
        return facing + ", " + TEXTS.text(mirrored ? "sense.mirrored" : "sense.sky");
    }

    private void sense(Graphics2D g, Facing facing, boolean mirrored, boolean ringed) {
        g.setFont(Theme.bodyFont(-1));
        g.setColor(colours.nightInk());
        FontMetrics metrics = g.getFontMetrics();
        g.drawString(senseWords(facing, mirrored), 10, 8 + metrics.getAscent());
        pole(g);
        direction(g, TEXTS.text("compass.north"), 0, LETTER_RADII);
        direction(g, TEXTS.text("compass.west"), -90, ringed ? LETTER_RINGS_RADII : LETTER_RADII);
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
}
