/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Brightness of the globe as a sum of hat functions: either of the polar axis coordinate (belts), or on a square grid fixed to the picture's axes
 * (planets without belts). A pixel has at most four hats; hats are dyed so that blurred hats of one colour hardly meet, and all of a colour can be
 * blurred in one image.
 *
 * <p>Rings are a second row of hats, of the distance from the axis in the ring plane; they follow the globe's.
 *
 * @param belts whether the globe's hats are of the polar coordinate
 * @param side knots of the globe, per axis
 * @param rings knots of the rings, 0 without
 */
record Pattern(boolean belts, int side, int rings) {
    private static final double RING_FROM = 1.15;
    private static final double RING_TO = 2.32;
    private static final int BELT_COLOURS = 6;
    private static final int GRID_COLOURS = 3;

    /** How many values. */
    int size() {
        return globeSize() + rings;
    }

    int globeSize() {
        return belts ? side : side * side;
    }

    int colours() {
        return globeColours() + (rings > 0 ? BELT_COLOURS : 0);
    }

    int globeColours() {
        return belts ? BELT_COLOURS : GRID_COLOURS * GRID_COLOURS;
    }

    /** Place on the ring knots (0…rings−1) of a distance from the axis (equatorial radii). */
    double ringKnot(double radius) {
        return Math.max(0, Math.min(rings - 1, (radius - RING_FROM) / (RING_TO - RING_FROM) * (rings - 1)));
    }

    /** The ring hat of a colour (counted from the first ring colour) that is nearest to a place on the ring knots. */
    int nearestRing(int colour, double knot) {
        return colour >= rings ? -1 : globeSize() + nearest(colour, BELT_COLOURS, knot, rings);
    }

    int colour(int hat) {
        return belts ? hat % BELT_COLOURS : hat / side % GRID_COLOURS * GRID_COLOURS + hat % side % GRID_COLOURS;
    }

    /** Place on the knots (0…side−1) of a coordinate −1…1. */
    double knot(double coordinate) {
        return Math.max(0, Math.min(side - 1, (coordinate + 1) / 2 * (side - 1)));
    }

    /** Fills up to four hats and their weights; returns how many. */
    int hats(double u, double v, int[] hat, double[] weight) {
        int i = Math.min(side - 2, (int) u);
        double f = u - i;
        if (belts) {
            hat[0] = i;
            hat[1] = i + 1;
            weight[0] = 1 - f;
            weight[1] = f;
            return 2;
        }
        int j = Math.min(side - 2, (int) v);
        double g = v - j;
        hat[0] = j * side + i;
        hat[1] = hat[0] + 1;
        hat[2] = hat[0] + side;
        hat[3] = hat[2] + 1;
        weight[0] = (1 - f) * (1 - g);
        weight[1] = f * (1 - g);
        weight[2] = (1 - f) * g;
        weight[3] = f * g;
        return 4;
    }

    /** The hat of a colour that is nearest to a place on the knots, or −1. */
    int nearest(int colour, double u, double v) {
        if (belts) {
            return colour >= side ? -1 : nearest(colour, BELT_COLOURS, u, side);
        }
        int column = colour % GRID_COLOURS;
        int line = colour / GRID_COLOURS;
        return column >= side || line >= side
                ? -1
                : nearest(line, GRID_COLOURS, v, side) * side + nearest(column, GRID_COLOURS, u, side);
    }

    private static int nearest(int colour, int colours, double u, int knots) {
        int last = colour + (knots - 1 - colour) / colours * colours;
        int k = colour + (int) Math.round((u - colour) / colours) * colours;
        return Math.max(colour, Math.min(last, k));
    }
}
