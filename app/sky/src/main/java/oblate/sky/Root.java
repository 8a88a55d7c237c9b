/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.function.DoubleUnaryOperator;

/** The zero of a curve between two places where it has different signs. */
final class Root {
    private static final double NEAR_S = 1e-3;
    private static final int MOST_STEPS = 100;

    private Root() {}

    /**
     * False position with the weight of an end that stays halved (the "Illinois" rule), and every third step in the middle; never leaves the bracket. To a
     * millisecond.
     */
    static double between(DoubleUnaryOperator curve, double a, double atA, double b, double atB) {
        double low = a;
        double high = b;
        double atLow = atA;
        double atHigh = atB;
        for (int i = 0; i < MOST_STEPS && high - low > NEAR_S; i++) {
            if (atLow == 0) {
                return low;
            }
            if (atHigh == 0) {
                return high;
            }
            double x = i % 3 == 2 ? (low + high) / 2 : high - atHigh * (high - low) / (atHigh - atLow);
            double inside = Math.min(Math.max(x, low + NEAR_S / 4), high - NEAR_S / 4);
            double at = curve.applyAsDouble(inside);
            if (at >= 0 == atHigh >= 0) {
                high = inside;
                atHigh = at;
                atLow /= i % 3 == 2 ? 1 : 2;
            } else {
                low = inside;
                atLow = at;
                atHigh /= i % 3 == 2 ? 1 : 2;
            }
        }
        return (low + high) / 2;
    }
}
