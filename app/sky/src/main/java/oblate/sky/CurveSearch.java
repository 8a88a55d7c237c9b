/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Finds all zeros of a curve of which it is known how strongly it can bend, so that none is overlooked.
 *
 * <p>Between two points h apart a curve with |f″| ≤ M keeps within M h²/8 of the straight line, and its slope within M h/2 of the line's. So an interval
 * holds no zero when both ends lie farther than that to one side, and one only when they lie on both sides and the line is steeper than that; any other is
 * halved, down to a second.
 *
 * @param curve the curve over seconds
 * @param bend bound M of its second derivative (per s²)
 */
record CurveSearch(DoubleUnaryOperator curve, double bend) {
    private static final double STEP_S = 1200;
    private static final double SHORTEST_S = 1;

    /**
     * A zero.
     *
     * @param atS where (s)
     * @param upward whether the curve goes from below to above
     */
    record Zero(double atS, boolean upward) {}

    /** Zeros in a range (s), in order; a curve that touches zero for less than a second counts as not reaching it. */
    List<Zero> zeros(double fromS, double toS) {
        List<Zero> found = new ArrayList<>();
        int steps = Math.max(1, (int) Math.ceil((toS - fromS) / STEP_S));
        double a = fromS;
        double atA = curve.applyAsDouble(a);
        for (int i = 1; i <= steps; i++) {
            double b = fromS + (toS - fromS) * i / steps;
            double atB = curve.applyAsDouble(b);
            search(a, atA, b, atB, found);
            a = b;
            atA = atB;
        }
        return found;
    }

    private void search(double a, double atA, double b, double atB, List<Zero> found) {
        double h = b - a;
        boolean isSplit = atA >= 0 != atB >= 0;
        boolean isSettled = isSplit
                ? Math.abs(atB - atA) / h > bend * h / 2
                : Math.min(Math.abs(atA), Math.abs(atB)) > bend * h * h / 8;
        if (isSettled || h <= SHORTEST_S) {
            if (isSplit) {
                found.add(new Zero(Root.between(curve, a, atA, b, atB), atB >= 0));
            }
            return;
        }
        double middle = (a + b) / 2;
        double atMiddle = curve.applyAsDouble(middle);
        search(a, atA, middle, atMiddle, found);
        search(middle, atMiddle, b, atB, found);
    }
}
