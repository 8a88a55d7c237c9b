/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.util.Optional;
import oblate.disc.FitHints;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.sky.ApparentDisc;
import oblate.workbench.look.Ink;
import oblate.workbench.look.Palette;
import oblate.workbench.words.Texts;

/** The outline drawn by hand over the picture on the desk: dragged by handles, nudged by keys, kept as drawn or fitted from. On the event thread only. */
final class HandOutline implements CanvasTool {
    private static final Texts TEXTS = Texts.of(HandOutline.class);
    private static final double GRAB_PX = 10;

    /** How well a hand places a clear edge: a pixel, or half a per cent of a large disc; the pole by a degree (common practice, to be changed by whoever draws). */
    private static final double USUAL_SIGMA_PX = 1;

    private static final double USUAL_SHARE = 0.005;
    private static final double USUAL_ANGLE_SIGMA_DEG = 1;

    private final Desk desk;
    private final Runnable whenChanged;
    private Optional<OutlineShape> shape = Optional.empty();
    private Optional<OutlineShape.Handle> held = Optional.empty();
    private Sigmas sigmas = new Sigmas(USUAL_SIGMA_PX, USUAL_SIGMA_PX, USUAL_ANGLE_SIGMA_DEG);

    /**
     * Standard errors as the person who draws states them.
     *
     * @param centrePx of the centre, each way (px), positive
     * @param radiusPx of the equatorial radius (px), positive
     * @param angleDeg of the pole angle (deg), positive
     */
    record Sigmas(double centrePx, double radiusPx, double angleDeg) {
        Sigmas {
            if (!(centrePx > 0 && radiusPx > 0 && angleDeg > 0)) {
                throw new IllegalArgumentException(centrePx + " " + radiusPx + " " + angleDeg);
            }
        }
    }

    HandOutline(Desk desk, Runnable whenChanged) {
        this.desk = desk;
        this.whenChanged = whenChanged;
    }

    boolean isOpen() {
        return shape.isPresent();
    }

    Optional<Placement> placement() {
        return shape.map(OutlineShape::placement);
    }

    Sigmas sigmas() {
        return sigmas;
    }

    void state(Sigmas stated) {
        sigmas = stated;
    }

    /** Begins from the fit, or from a circle in the middle of the picture; says why not where it cannot. */
    Optional<String> begin() {
        Optional<ApparentDisc> disc = desk.open().flatMap(OpenPicture::disc);
        if (disc.isEmpty()) {
            return Optional.of(TEXTS.text("hand.impossible"));
        }
        OpenPicture open = desk.open().orElseThrow();
        double width = open.pixels().widthPx();
        double height = open.pixels().heightPx();
        Placement start = open.fit()
                .map(f -> f.fit().placement())
                .orElseGet(() -> new Placement(
                        (width - 1) / 2,
                        (height - 1) / 2,
                        Math.max(OutlineShape.LEAST_RADIUS_PX, Math.min(width, height) / 3),
                        open.hints().poleAngle().map(FitHints.Angle::valueDeg).orElse(0.0),
                        open.hints().mirrored().orElse(false)));
        double ratio = disc.get()
                .planet()
                .globe()
                .figure()
                .apparentAxisRatio(disc.get().subEarth().latCentricDeg());
        double usual = Math.max(USUAL_SIGMA_PX, USUAL_SHARE * start.equatorialRadiusPx());
        sigmas = new Sigmas(usual, usual, USUAL_ANGLE_SIGMA_DEG);
        change(new OutlineShape(start, ratio));
        return Optional.empty();
    }

    /** Puts it away without keeping it. */
    void leave() {
        if (isOpen()) {
            shape = Optional.empty();
            held = Optional.empty();
            whenChanged.run();
        }
    }

    private void change(OutlineShape fresh) {
        shape = Optional.of(fresh);
        whenChanged.run();
    }

    void shift(double dxPx, double dyPx) {
        shape.ifPresent(s -> change(s.shifted(dxPx, dyPx)));
    }

    void grow(double px) {
        shape.ifPresent(s -> change(s.grown(px)));
    }

    void turn(double deg) {
        shape.ifPresent(s -> change(s.turned(deg)));
    }

    void mirror() {
        shape.ifPresent(s -> change(s.mirrored(!s.placement().mirrored())));
    }

    /** Fits the disc, starting from what was drawn. */
    void fitFromHere() {
        placement().ifPresent(p -> {
            leave();
            desk.fits()
                    .fitFrom(
                            p,
                            Optional.of(new FitHints.Angle(p.poleAngleDeg(), Math.max(2, 3 * sigmas.angleDeg()))),
                            Optional.of(p.mirrored()));
        });
    }

    /** Keeps what was drawn, with the stated errors. */
    void keepAsDrawn() {
        placement().ifPresent(p -> {
            leave();
            desk.fits()
                    .keepByHand(
                            p,
                            PlacementCovariance.diagonal(
                                    sigmas.centrePx(), sigmas.centrePx(), sigmas.radiusPx(), sigmas.angleDeg()));
        });
    }

    @Override
    public boolean grabs(Point screen, CanvasView view) {
        held = Optional.empty();
        double best = GRAB_PX;
        if (shape.isPresent()) {
            for (OutlineShape.Handle handle : OutlineShape.Handle.values()) {
                double away = view.toScreen(shape.get().at(handle)).distance(screen);
                if (away <= best) {
                    best = away;
                    held = Optional.of(handle);
                }
            }
        }
        return held.isPresent();
    }

    @Override
    public void draggedTo(PixelPoint pixel) {
        held.ifPresent(handle -> shape.ifPresent(s -> change(s.moved(handle, pixel))));
    }

    @Override
    public void released() {
        held = Optional.empty();
    }

    @Override
    public void paint(Graphics2D g, CanvasView view, Palette palette) {
        shape.ifPresent(s -> {
            Color colour = palette.of(Ink.CHOSEN);
            Point2D centre = view.toScreen(s.at(OutlineShape.Handle.CENTRE));
            Point2D pole = view.toScreen(s.at(OutlineShape.Handle.POLE));
            Point2D north = view.toScreen(s.at(OutlineShape.Handle.NORTH));
            stroke(g, s.path().createTransformedShape(view.transform()), colour);
            stroke(g, new Line2D.Double(centre, north), colour);
            for (OutlineShape.Handle handle : OutlineShape.Handle.values()) {
                Point2D at = view.toScreen(s.at(handle));
                double r = handle == OutlineShape.Handle.POLE ? 8 : 5;
                Shape dot = new Ellipse2D.Double(at.getX() - r, at.getY() - r, 2 * r, 2 * r);
                g.setColor(new Color(0, 0, 0, 190));
                g.fill(dot);
                stroke(g, dot, colour);
            }
            g.setColor(colour);
            g.setFont(oblate.workbench.look.Theme.headFont(-3));
            float half = g.getFontMetrics().stringWidth(TEXTS.text("hand.north")) / 2f;
            g.drawString(TEXTS.text("hand.north"), (float) pole.getX() - half, (float) pole.getY() + 4);
        });
    }

    private static void stroke(Graphics2D g, Shape shape, Color colour) {
        g.setStroke(new BasicStroke(3.4f));
        g.setColor(new Color(0, 0, 0, 150));
        g.draw(shape);
        g.setStroke(new BasicStroke(1.4f));
        g.setColor(colour);
        g.draw(shape);
    }
}
