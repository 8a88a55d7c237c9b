/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Shape;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Finds places for names beside what they name: never over one another or over what is taken, within the field, and if it can be neither across the limb nor over a
 * moon. Not safe for many threads.
 */
final class NamePlaces {
    private static final double LIMB_BAND_PX = 7;
    private static final double GAP_PX = 3;
    private static final double EDGE_PX = 2;
    private static final double APART_PX = 6;
    private static final int DIRECTIONS = 16;
    private static final double[] ROWS_AWAY = {0, 0.6, 1.3, 2.2, 3.4, 5};
    private static final double ACROSS_LIMB = 40;
    private static final double OVER_A_DOT = 30;
    private static final double ON_THE_DISC = 1.5;
    private static final double PER_ROW_AWAY = 2;
    /** How much each eighth of a turn from straight below costs. */
    private static final double ASIDE = 0.08;

    private final Dimension field;
    private final Shape outline;
    private final Shape limb;
    private final List<Rectangle2D> dots;
    private final List<Rectangle2D> taken = new ArrayList<>();

    /**
     * @param field size of the drawing (px)
     * @param outline of the planet's disc (px)
     * @param dots where moons and shadows are drawn (px)
     */
    NamePlaces(Dimension field, Shape outline, List<Rectangle2D> dots) {
        this.field = field;
        this.outline = outline;
        this.dots = List.copyOf(dots);
        limb = new BasicStroke((float) LIMB_BAND_PX).createStrokedShape(outline);
    }

    /** Keeps names away from something. */
    void keepOff(Rectangle2D box) {
        taken.add(box);
    }

    /**
     * A place.
     *
     * @param box of the name (px)
     * @param isAway whether it stands so far from what it names that a line should lead there
     */
    record Place(Rectangle2D box, boolean isAway) {}

    /**
     * A place for a name, which is taken then; none where there is no room.
     *
     * @param dot what is named (px)
     */
    Optional<Place> place(Rectangle2D dot, double widthPx, double heightPx) {
        Optional<Candidate> best = candidates(dot, widthPx, heightPx).stream()
                .filter(c -> isFree(c.box()))
                .min(Comparator.comparingDouble(c -> cost(c, dot)));
        best.ifPresent(c -> taken.add(c.box()));
        return best.map(c -> new Place(c.box(), c.rowsAway() > ROWS_AWAY[1]));
    }

    private record Candidate(Rectangle2D box, double rowsAway, double cost) {}

    private List<Candidate> candidates(Rectangle2D dot, double w, double h) {
        List<Candidate> all = new ArrayList<>();
        for (double rows : ROWS_AWAY) {
            for (int i = 0; i < DIRECTIONS; i++) {
                double angle = 2 * Math.PI * i / DIRECTIONS;
                Point2D middle = beside(dot, angle, w / 2 + rows * h, h / 2 + rows * h);
                double x = Math.max(EDGE_PX, Math.min(field.width - w - EDGE_PX, middle.getX() - w / 2));
                Rectangle2D box = new Rectangle2D.Double(x, middle.getY() - h / 2, w, h);
                double eighths = Math.min(i, DIRECTIONS - i) / 2.0;
                // straight above is nearly as good as straight below
                double aside = Math.min(eighths, 4.5 - eighths);
                all.add(new Candidate(box, rows, PER_ROW_AWAY * rows + ASIDE * aside));
            }
        }
        return all;
    }

    /** The middle of a box that touches the dot's in a direction (rad, from straight down). */
    private static Point2D beside(Rectangle2D dot, double angle, double halfWidth, double halfHeight) {
        double reachX = dot.getWidth() / 2 + GAP_PX + halfWidth;
        double reachY = dot.getHeight() / 2 + GAP_PX + halfHeight;
        double sin = Math.sin(angle);
        double cos = Math.cos(angle);
        double far = 1 / Math.max(Math.abs(sin), Math.abs(cos));
        return new Point2D.Double(dot.getCenterX() + reachX * far * sin, dot.getCenterY() + reachY * far * cos);
    }

    private boolean isFree(Rectangle2D box) {
        return box.getY() >= EDGE_PX
                && box.getMaxY() <= field.height - EDGE_PX
                && box.getX() >= EDGE_PX
                && box.getMaxX() <= field.width - EDGE_PX
                && taken.stream().noneMatch(apart(box)::intersects);
    }

    /** With the room that names keep from one another. */
    private static Rectangle2D apart(Rectangle2D box) {
        return new Rectangle2D.Double(
                box.getX() - APART_PX, box.getY(), box.getWidth() + 2 * APART_PX, box.getHeight());
    }

    private double cost(Candidate c, Rectangle2D dot) {
        double cost = c.cost();
        cost += crossesLimb(c.box()) ? ACROSS_LIMB : 0;
        cost += dots.stream().anyMatch(d -> !d.equals(dot) && d.intersects(c.box())) ? OVER_A_DOT : 0;
        // what stands beside the disc is named beside it, what stands on it on it or beside it
        boolean isOn = outline.contains(c.box().getCenterX(), c.box().getCenterY());
        cost += isOn && !outline.contains(dot.getCenterX(), dot.getCenterY())
                ? 2 * ON_THE_DISC
                : isOn ? ON_THE_DISC : 0;
        return cost;
    }

    /** Whether a box lies across the planet's limb. */
    boolean crossesLimb(Rectangle2D box) {
        return limb.intersects(box);
    }
}
