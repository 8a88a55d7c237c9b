/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** Bracketed roots and lowest points of smooth functions of time; times are days from a near zero, so that a double holds nanoseconds. */
final class Roots {
    /** 1e-9 day: 0.1 ms. */
    private static final double ACCURACY_DAYS = 1e-9;

    private static final int MOST_EVALUATIONS = 200;

    /** Half the step over which a lowest point is sought (days): 20 s. */
    private static final double HALF_STEP_DAYS = 20 / 86400.0;

    private Roots() {}

    /** The root between two times at which the function has different signs; empty when it has the same. */
    static OptionalDouble between(DoubleUnaryOperator f, double from, double to) {
        double atFrom = f.applyAsDouble(from);
        double atTo = f.applyAsDouble(to);
        if (atFrom == 0) {
            return OptionalDouble.of(from);
        }
        if (atTo == 0) {
            return OptionalDouble.of(to);
        }
        if (atFrom * atTo > 0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(bracketed(f, new double[] {from, to}, new double[] {atFrom, atTo}));
    }

    /**
     * The root inside a bracket by false position after Anderson and Björck (BIT 13, 1973, 253), with a halving whenever three steps have not halved the
     * bracket: near a simple root a few evaluations, never more than the halvings take.
     */
    private static double bracketed(DoubleUnaryOperator f, double[] ends, double[] values) {
        double a = ends[0];
        double b = ends[1];
        double fa = values[0];
        double fb = values[1];
        double width = Math.abs(b - a);
        for (int i = 1; i < MOST_EVALUATIONS && Math.abs(b - a) > ACCURACY_DAYS; i++) {
            double c = b - fb * (b - a) / (fb - fa);
            if (i % 3 == 0) {
                if (Math.abs(b - a) > width / 2) {
                    c = (a + b) / 2;
                }
                width = Math.abs(b - a);
            }
            double fc = f.applyAsDouble(c);
            double step = Math.abs(c - b);
            if (fc == 0 || step < ACCURACY_DAYS) {
                return c;
            }
            if (fc * fb < 0) {
                a = b;
                fa = fb;
            } else {
                double shrink = 1 - fc / fb;
                fa *= shrink > 0 ? shrink : 0.5;
            }
            b = c;
            fb = fc;
        }
        return b;
    }

    /**
     * The lowest point between two times before and after it: root of f(t + h) − f(t − h), which falls together with the lowest point but for
     * h² times what the function is lopsided there, far below a millisecond.
     */
    static OptionalDouble lowest(DoubleUnaryOperator f, double from, double to) {
        return between(t -> f.applyAsDouble(t + HALF_STEP_DAYS) - f.applyAsDouble(t - HALF_STEP_DAYS), from, to);
    }

    /** Slope per day at a time. */
    static double slope(DoubleUnaryOperator f, double at) {
        double half = HALF_STEP_DAYS / 4;
        return (f.applyAsDouble(at + half) - f.applyAsDouble(at - half)) / (2 * half);
    }

    /** Second derivative per day² at a time. */
    static double bend(DoubleUnaryOperator f, double at) {
        double h = HALF_STEP_DAYS;
        return (f.applyAsDouble(at + h) + f.applyAsDouble(at - h) - 2 * f.applyAsDouble(at)) / (h * h);
    }
}
