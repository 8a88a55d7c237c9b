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
import java.util.Comparator;
import java.util.List;
import java.util.Set;
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
    private static final double LETTER_PX = 18;

    void paint(Graphics2D g, Facing facing, boolean mirrored, boolean ringed) {
        ScaleBar scale = ScaleBar.of(g, now, place, closeUp, field);
        scale.paint(g, colours);
        names(g, facing, mirrored, scale.box(), ringed);
        if (closeUp) {
            sense(g, facing, mirrored, ringed);
        }
    }

    /**
     * Something to be named.
     *
     * @param text its name
     * @param dot where it is drawn (px)
     * @param isChosen whether it stands out
     */
    record Named(String text, Rectangle2D dot, boolean isChosen) {}

    /** What is named, those nearest the limb, which have least room, first. */
    List<Named> named() {
        List<Named> all = new ArrayList<>();
        Rectangle2D whole = new Rectangle2D.Double(0, 0, field.width, field.height);
        for (MoonPlace moon : now.moons()) {
            Rectangle2D dot = dot(SystemDrawing.screen(moon, place), SystemDrawing.sizePx(moon, place));
            if (whole.contains(dot.getCenterX(), dot.getCenterY())) {
                all.add(new Named(words(moon), dot, chosenMoons.contains(moon.id())));
            }
            if (closeUp) {
                moon.shadow()
                        .map(s ->
                                dot(place.toScreen(s.xWestRadii(), s.yNorthRadii()), SystemDrawing.sizePx(moon, place)))
                        .ifPresent(d -> all.add(
                                new Named(TEXTS.text("shadow.of", moon.name()), d, chosenMoons.contains(moon.id()))));
            }
        }
        all.sort(Comparator.comparingDouble(n -> Math.abs(
                Math.hypot(n.dot().getCenterX() - place.centreXPx(), n.dot().getCenterY() - place.centreYPx())
                        - place.pxPerRadius())));
        return all;
    }

    private static Rectangle2D dot(Point2D at, double sizePx) {
        return new Rectangle2D.Double(at.getX() - sizePx / 2, at.getY() - sizePx / 2, sizePx, sizePx);
    }

    /** Room for names about what is drawn, with what the words at the edges take left out. */
    NamePlaces places(List<Named> named) {
        return new NamePlaces(
                field,
                place.transform().createTransformedShape(new GlobeView(now.disc()).outline()),
                named.stream().map(Named::dot).toList());
    }

    private void names(Graphics2D g, Facing facing, boolean mirrored, Rectangle2D scale, boolean ringed) {
        g.setFont(Theme.bodyFont(-1));
        FontMetrics metrics = g.getFontMetrics();
        List<Named> named = named();
        NamePlaces places = places(named);
        places.keepOff(scale);
        if (closeUp) {
            places.keepOff(new Rectangle2D.Double(
                    0, 0, 12.0 + metrics.stringWidth(senseWords(facing, mirrored)), 10.0 + metrics.getHeight()));
            places.keepOff(letterBox(0, LETTER_RADII));
            places.keepOff(letterBox(-90, ringed ? LETTER_RINGS_RADII : LETTER_RADII));
        }
        double height = (double) metrics.getAscent() + metrics.getDescent();
        for (Named each : named) {
            places.place(each.dot(), metrics.stringWidth(each.text()), height).ifPresent(p -> {
                Color ink = each.isChosen() ? colours.of(Ink.CHOSEN) : colours.nightInk();
                Rectangle2D box = p.box();
                if (p.isAway()) {
                    lead(g, each.dot(), box, ink);
                }
                g.setColor(new Color(0, 0, 0, 150));
                g.fill(new Rectangle2D.Double(box.getX() - 2, box.getY(), box.getWidth() + 4, height));
                g.setColor(ink);
                g.drawString(each.text(), (float) box.getX(), (float) (box.getY() + metrics.getAscent()));
            });
        }
    }

    /** A thin line from a name to what it names. */
    private static void lead(Graphics2D g, Rectangle2D dot, Rectangle2D box, Color ink) {
        double x = Math.max(box.getMinX(), Math.min(box.getMaxX(), dot.getCenterX()));
        double y = Math.max(box.getMinY(), Math.min(box.getMaxY(), dot.getCenterY()));
        double length = Math.hypot(x - dot.getCenterX(), y - dot.getCenterY());
        double from = (dot.getWidth() / 2 + 1.5) / length;
        if (from < 1) {
            g.setColor(new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), 130));
            g.setStroke(new BasicStroke(0.8f));
            g.draw(new Line2D.Double(
                    dot.getCenterX() + from * (x - dot.getCenterX()),
                    dot.getCenterY() + from * (y - dot.getCenterY()),
                    x,
                    y));
        }
    }

    private Rectangle2D letterBox(double fromPoleDeg, double radii) {
        Point2D d = place.direction(fromPoleDeg);
        double far = radii * place.pxPerRadius();
        return dot(
                new Point2D.Double(place.centreXPx() + far * d.getX(), place.centreYPx() + far * d.getY()), LETTER_PX);
    }

    private static String words(MoonPlace moon) {
        if (moon.occulted()) {
            return TEXTS.text("moon.behind", moon.name());
        }
        return moon.eclipsed() ? TEXTS.text("moon.eclipsed", moon.name()) : moon.name();
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
