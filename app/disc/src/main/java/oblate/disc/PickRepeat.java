/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import java.util.List;

/**
 * How well a hand finds the same point again, from points marked twice without seeing the first mark.
 *
 * @param pairs how many points
 * @param sigmaPx standard error of one pick in each direction (px)
 * @param sigmaOfSigmaPx its own standard error (px)
 * @param leftOut pairs so far apart that something else must have been marked
 * @param rightPx how far the second marks lie to the right of the first ones on average (px)
 * @param downPx the same, down (px)
 */
public record PickRepeat(int pairs, double sigmaPx, double sigmaOfSigmaPx, int leftOut, double rightPx, double downPx) {
    /** With fewer pairs than this the error is not known well enough to be used. */
    public static final int LEAST_PAIRS = 8;

    /** Pairs further apart than this times the median distance are other points. */
    private static final double OTHER_POINT = 5;

    private static final double LEAST_DISTANCE_PX = 1;

    /**
     * Two marks of one point.
     *
     * @param first the first
     * @param second the one made without seeing it
     */
    public record Pair(PixelPoint first, PixelPoint second) {
        double rightPx() {
            return second.xPx() - first.xPx();
        }

        double downPx() {
            return second.yPx() - first.yPx();
        }

        double apartPx() {
            return Math.hypot(rightPx(), downPx());
        }
    }

    /**
     * The error of a pick: the difference of two has twice its variance in each of two directions.
     *
     * @throws IllegalArgumentException without any pair
     */
    public static PickRepeat of(List<Pair> pairs) {
        double[] apart = pairs.stream().mapToDouble(Pair::apartPx).sorted().toArray();
        if (apart.length == 0) {
            throw new IllegalArgumentException("no pairs");
        }
        double most = Math.max(LEAST_DISTANCE_PX, OTHER_POINT * apart[apart.length / 2]);
        List<Pair> kept = pairs.stream().filter(p -> p.apartPx() <= most).toList();
        double squares =
                kept.stream().mapToDouble(p -> p.apartPx() * p.apartPx()).sum();
        int n = kept.size();
        double sigma = Math.sqrt(squares / (4.0 * n));
        return new PickRepeat(
                n,
                sigma,
                sigma / Math.sqrt(4.0 * n),
                pairs.size() - n,
                Arrays.stream(kept.stream().mapToDouble(Pair::rightPx).toArray())
                        .average()
                        .orElse(0),
                Arrays.stream(kept.stream().mapToDouble(Pair::downPx).toArray())
                        .average()
                        .orElse(0));
    }
}
