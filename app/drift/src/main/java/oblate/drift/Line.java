/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Optional;

/**
 * A straight line by weighted least squares, y = middle + slope · (x − xMiddle), with x taken from the weighted mean, where the two numbers are
 * uncorrelated.
 *
 * @param xMiddle weighted mean of x
 * @param middle y there
 * @param slope its slope
 * @param weight sum of the weights: the variance of {@code middle} is its inverse
 * @param weightXx weighted sum of squares of x about the mean: the variance of {@code slope} is its inverse
 */
record Line(double xMiddle, double middle, double slope, double weight, double weightXx) {

    /** A line to start from. */
    static Line through(double middle, double slope) {
        return new Line(0, middle, slope, 0, 0);
    }

    /** Empty when the weighted points are of one x. Two passes: differences from the mean are summed, never squares of large numbers. */
    static Optional<Line> fit(double[] x, double[] y, double[] weights) {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (int i = 0; i < x.length; i++) {
            sum += weights[i];
            sumX += weights[i] * x[i];
            sumY += weights[i] * y[i];
        }
        if (!(sum > 0)) {
            return Optional.empty();
        }
        double meanX = sumX / sum;
        double meanY = sumY / sum;
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < x.length; i++) {
            xx += weights[i] * (x[i] - meanX) * (x[i] - meanX);
            xy += weights[i] * (x[i] - meanX) * (y[i] - meanY);
        }
        double slope = xy / xx;
        // The scatter of x must stand clear of rounding: an arc of a tenth of a millisecond is no arc.
        return xx > sum * 1e-18 && Double.isFinite(slope)
                ? Optional.of(new Line(meanX, meanY, slope, sum, xx))
                : Optional.empty();
    }

    double at(double x) {
        return middle + slope * (x - xMiddle);
    }
}
