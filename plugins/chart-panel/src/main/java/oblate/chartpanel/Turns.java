/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.ArrayList;
import java.util.List;

/** Cuts a line of unwrapped longitudes into pieces that stay on 0…360. */
final class Turns {
    private Turns() {}

    /** A point of a line: longitude (deg) and time (ms since 1970). */
    record Point(double lonDeg, double timeMs) {}

    /** Longitude reduced to 0…360. */
    static double reduced(double lonDeg) {
        double lon = lonDeg % 360;
        return lon < 0 ? lon + 360 : lon;
    }

    /**
     * The pieces of a straight line between two unwrapped points, cut where it passes a multiple of 360°.
     *
     * @return pieces of two points each, in order of time, reduced to 0…360; an end on the border is 0 or 360 as the piece needs it
     */
    static List<List<Point>> pieces(Point from, Point to) {
        List<List<Point>> pieces = new ArrayList<>();
        Point start = from;
        double slope = (to.timeMs() - from.timeMs()) / (to.lonDeg() - from.lonDeg());
        boolean grows = to.lonDeg() > from.lonDeg();
        while (true) {
            double turn = grows ? Math.floor(start.lonDeg() / 360) : Math.ceil(start.lonDeg() / 360) - 1;
            double border = 360 * (grows ? turn + 1 : turn);
            boolean passes = grows ? border < to.lonDeg() : border > to.lonDeg();
            Point end = passes ? new Point(border, from.timeMs() + slope * (border - from.lonDeg())) : to;
            pieces.add(List.of(shifted(start, turn), shifted(end, turn)));
            if (!passes) {
                return pieces;
            }
            start = end;
        }
    }

    /**
     * The pieces of a path through unwrapped points, cut where it passes a multiple of 360°; each as long as it stays on one turn.
     *
     * @param points at least two, in order of time
     */
    static List<List<Point>> path(List<Point> points) {
        List<List<Point>> path = new ArrayList<>();
        List<Point> current = new ArrayList<>();
        for (int i = 1; i < points.size(); i++) {
            for (List<Point> piece : pieces(points.get(i - 1), points.get(i))) {
                boolean goesOn = !current.isEmpty()
                        && Math.abs(current.get(current.size() - 1).lonDeg()
                                        - piece.get(0).lonDeg())
                                < 180;
                if (!goesOn) {
                    current = new ArrayList<>();
                    current.add(piece.get(0));
                    path.add(current);
                }
                current.add(piece.get(1));
            }
        }
        return path;
    }

    private static Point shifted(Point p, double turn) {
        return new Point(p.lonDeg() - 360 * turn, p.timeMs());
    }
}
