/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import javax.accessibility.AccessibleContext;
import javax.swing.JComponent;
import oblate.sky.MoonPlace;
import oblate.sky.RingAspect;
import oblate.sky.Rings;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;

/** Planet, moons and shadows drawn to scale: moons in front filled, behind hollow, out of sight dashed; shadows black. */
final class SystemDrawing extends JComponent {
    private static final long serialVersionUID = 1L;
    private static final double SMALLEST_MOON_PX = 3.2;
    private static final float[] DASHES = {2.5f, 2.5f};
    private final transient Supplier<Palette> palette;
    private final transient ToDoubleFunction<Scene> reachRadii;
    private final boolean closeUp;
    private transient Optional<Scene> scene = Optional.empty();
    private transient Set<String> chosenMoons = Set.of();
    private Facing facing = Facing.NORTH_UP;
    private boolean mirrored;

    /**
     * @param reachRadii how far from the centre the drawing must reach (equatorial radii)
     * @param closeUp whether circles of latitude and the words around the drawing are shown
     */
    SystemDrawing(Supplier<Palette> palette, ToDoubleFunction<Scene> reachRadii, boolean closeUp) {
        this.palette = palette;
        this.reachRadii = reachRadii;
        this.closeUp = closeUp;
    }

    void show(Scene shown) {
        scene = Optional.of(shown);
        repaint();
    }

    Optional<Scene> scene() {
        return scene;
    }

    void showNothing() {
        scene = Optional.empty();
        repaint();
    }

    void choose(Set<String> moonIds) {
        chosenMoons = Set.copyOf(moonIds);
        repaint();
    }

    void face(Facing which, boolean isMirrored) {
        facing = which;
        mirrored = isMirrored;
        repaint();
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

    /** Where things come to lie in a field of this size. */
    Placement placement(Scene of, int widthPx, int heightPx) {
        double reach = reachRadii.applyAsDouble(of);
        double scale = closeUp ? Math.min(widthPx, heightPx) / 2.0 / reach : (widthPx / 2.0 - 40) / reach;
        boolean level = facing == Facing.NORTH_UP || facing == Facing.SOUTH_UP;
        double fit = closeUp || level ? scale : Math.min(scale, upright(of, reach, heightPx, scale));
        return new Placement(
                facing.poleTurnDeg(of.disc().northPolePaDeg()),
                mirrored,
                Math.max(0.5, fit),
                widthPx / 2.0,
                heightPx / 2.0);
    }

    /** The scale at which a row of moons that stands aslant keeps within the height (px per radius). */
    private double upright(Scene of, double reach, int heightPx, double scale) {
        double tilt = Math.abs(Math.sin(Math.toRadians(of.disc().northPolePaDeg())));
        return tilt * reach * scale > heightPx / 2.0 - 24 ? (heightPx / 2.0 - 24) / (tilt * reach) : scale;
    }

    @Override
    protected void paintComponent(Graphics g) {
        Palette colours = palette.get();
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g2.setColor(colours.night());
        g2.fillRect(0, 0, getWidth(), getHeight());
        if (scene.isPresent()) {
            Scene now = scene.get();
            Placement place = placement(now, getWidth(), getHeight());
            paintMoons(g2, colours, now, place, false);
            paintGlobe(g2, colours, now, place);
            paintShadows(g2, now, place);
            paintMoons(g2, colours, now, place, true);
            new SystemWords(now, place, closeUp, chosenMoons, colours, new Dimension(getWidth(), getHeight()))
                    .paint(g2, facing, mirrored, rings(now).isPresent());
        }
        g2.dispose();
    }

    private void paintGlobe(Graphics2D g, Palette colours, Scene now, Placement place) {
        AffineTransform toPx = place.transform();
        GlobeView globe = new GlobeView(now.disc());
        Shape outline = toPx.createTransformedShape(globe.outline());
        Optional<Shape> rings = rings(now).map(toPx::createTransformedShape);
        Color ringInk = mixed(colours.nightInk(), colours.night(), 0.45);
        rings.ifPresent(r -> {
            g.setColor(ringInk);
            g.fill(r);
        });
        Color body = colours.picturesRed()
                ? new Color(0x6E2018)
                : new Color(now.disc().planet().appearance().drawingRgb());
        g.setColor(body);
        g.fill(outline);
        if (closeUp) {
            g.setColor(mixed(body, colours.night(), 0.72));
            g.setStroke(new BasicStroke(1));
            for (int lat = -60; lat <= 60; lat += 30) {
                g.draw(toPx.createTransformedShape(globe.parallel(lat)));
            }
        }
        g.setColor(mixed(body, colours.night(), 0.18));
        globe.unlit().map(toPx::createTransformedShape).ifPresent(g::fill);
        rings.ifPresent(r -> {
            Area front = new Area(r);
            front.intersect(new Area(toPx.createTransformedShape(nearHalf(now))));
            g.setColor(ringInk);
            g.fill(front);
        });
    }

    /** The rings as an open annulus, where the planet has some (equatorial radii). */
    private static Optional<Shape> rings(Scene now) {
        Optional<Rings> rings = now.disc().planet().rings();
        Optional<RingAspect> aspect = now.disc().rings();
        if (rings.isEmpty() || aspect.isEmpty()) {
            return Optional.empty();
        }
        double radiusKm = now.disc().planet().globe().figure().equatorialRadiusKm();
        double flat = Math.abs(Math.sin(Math.toRadians(aspect.get().openingEarthDeg())));
        double outer = rings.get().outerRadiusKm() / radiusKm;
        double inner = rings.get().innerRadiusKm() / radiusKm;
        Path2D shape = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        shape.append(new Ellipse2D.Double(-outer, -outer * flat, 2 * outer, 2 * outer * flat), false);
        shape.append(new Ellipse2D.Double(-inner, -inner * flat, 2 * inner, 2 * inner * flat), false);
        return Optional.of(shape);
    }

    /** The half of the ring plane before the globe: south of the centre when the north face is seen. */
    private static Shape nearHalf(Scene now) {
        double far = 10;
        boolean northFace = now.disc().subEarth().latCentricDeg() > 0;
        return new Rectangle2D.Double(-far, northFace ? -far : 0, 2 * far, far);
    }

    /** Black spots where the moons' shadows fall. */
    private static void paintShadows(Graphics2D g, Scene now, Placement place) {
        g.setColor(Color.BLACK);
        for (MoonPlace moon : now.moons()) {
            moon.shadow()
                    .ifPresent(
                            s -> g.fill(circle(place.toScreen(s.xWestRadii(), s.yNorthRadii()), sizePx(moon, place))));
        }
    }

    /** The moons drawn over the globe (in front, or told by dashes to be behind it), or those under it. */
    private void paintMoons(Graphics2D g, Palette colours, Scene now, Placement place, boolean over) {
        for (MoonPlace moon : now.moons()) {
            boolean isOver = moon.zTowardEarthRadii() >= 0 || moon.occulted();
            if (isOver == over) {
                paintMoon(g, colours, moon, circle(screen(moon, place), sizePx(moon, place)));
            }
        }
    }

    static Point2D screen(MoonPlace moon, Placement place) {
        return place.toScreen(moon.xWestRadii(), moon.yNorthRadii());
    }

    private static Ellipse2D circle(Point2D at, double diameterPx) {
        return new Ellipse2D.Double(at.getX() - diameterPx / 2, at.getY() - diameterPx / 2, diameterPx, diameterPx);
    }

    /** Width of a moon as drawn (px). */
    static double sizePx(MoonPlace moon, Placement place) {
        return Math.max(SMALLEST_MOON_PX, moon.diameterArcsec() / moon.planetRadiusArcsec() * place.pxPerRadius());
    }

    private void paintMoon(Graphics2D g, Palette colours, MoonPlace moon, Ellipse2D circle) {
        Color ink = isChosen(moon) ? colours.of(Ink.CHOSEN) : colours.nightInk();
        boolean hidden = moon.occulted() || moon.eclipsed();
        if (hidden) {
            g.setColor(moon.occulted() ? colours.night() : mixed(ink, colours.night(), 0.6));
            g.setStroke(new BasicStroke(1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, DASHES, 0));
            g.draw(circle);
        } else if (moon.zTowardEarthRadii() < 0) {
            g.setColor(colours.night());
            g.fill(circle);
            g.setColor(ink);
            g.setStroke(new BasicStroke(1.2f));
            g.draw(circle);
        } else {
            g.setColor(ink);
            g.fill(circle);
            if (moon.inTransit()) {
                g.setColor(colours.night());
                g.setStroke(new BasicStroke(1f));
                g.draw(circle);
            }
        }
    }

    private boolean isChosen(MoonPlace moon) {
        return chosenMoons.contains(moon.id());
    }

    private static Color mixed(Color a, Color b, double share) {
        return new Color(
                (int) (a.getRed() * share + b.getRed() * (1 - share)),
                (int) (a.getGreen() * share + b.getGreen() * (1 - share)),
                (int) (a.getBlue() * share + b.getBlue() * (1 - share)));
    }
}
