package oblate.disc;

/**
 * Brightness of the globe as a sum of hat functions: either of the polar axis coordinate (belts), or on a square grid fixed to the picture's axes
 * (planets without belts). A pixel has at most four hats; hats are dyed so that blurred hats of one colour hardly meet, and all of a colour can be
 * blurred in one image.
 */
record Pattern(boolean belts, int side) {
    private static final int BELT_COLOURS = 4;
    private static final int GRID_COLOURS = 3;

    /** How many values. */
    int size() {
        return belts ? side : side * side;
    }

    int colours() {
        return belts ? BELT_COLOURS : GRID_COLOURS * GRID_COLOURS;
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
            return nearest(colour, BELT_COLOURS, u);
        }
        int i = nearest(colour % GRID_COLOURS, GRID_COLOURS, u);
        int j = nearest(colour / GRID_COLOURS, GRID_COLOURS, v);
        return i < 0 || j < 0 ? -1 : j * side + i;
    }

    private int nearest(int colour, int colours, double u) {
        if (colour >= side) {
            return -1;
        }
        int last = colour + (side - 1 - colour) / colours * colours;
        int k = colour + (int) Math.round((u - colour) / colours) * colours;
        return Math.max(colour, Math.min(last, k));
    }
}
