/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Weighted mean planetographic latitude of marks, with the larger of the formal error and that from their scatter.
 *
 * @param latDeg the mean (deg), empty when no mark has a latitude
 * @param sigmaDeg its standard error (deg), empty alike
 */
record MeanLatitude(OptionalDouble latDeg, OptionalDouble sigmaDeg) {
    /** Standard error (deg) of a latitude that states none: that of a good picture. */
    private static final double ASSUMED_SIGMA_DEG = 0.5;

    private static final double LEAST_SIGMA_DEG = 1e-3;

    static MeanLatitude of(List<LongitudePoint> points, double[] goodness) {
        double weight = 0;
        double sum = 0;
        int n = 0;
        for (int i = 0; i < points.size(); i++) {
            if (counts(points, goodness, i)) {
                double w = weight(points.get(i));
                weight += w;
                sum += w * points.get(i).latGraphicDeg().getAsDouble();
                n++;
            }
        }
        if (n == 0) {
            return new MeanLatitude(OptionalDouble.empty(), OptionalDouble.empty());
        }
        double mean = Math.max(-90, Math.min(90, sum / weight));
        double squares = 0;
        for (int i = 0; i < points.size(); i++) {
            if (counts(points, goodness, i)) {
                double off = points.get(i).latGraphicDeg().getAsDouble() - mean;
                squares += weight(points.get(i)) * off * off;
            }
        }
        double factor = n > 1 ? Math.max(1, squares / (n - 1)) : 1;
        return new MeanLatitude(OptionalDouble.of(mean), OptionalDouble.of(Math.sqrt(factor / weight)));
    }

    private static boolean counts(List<LongitudePoint> points, double[] goodness, int i) {
        return goodness[i] >= 0.5 && points.get(i).latGraphicDeg().isPresent();
    }

    private static double weight(LongitudePoint point) {
        double sigma = Math.max(LEAST_SIGMA_DEG, point.sigmaLatDeg().orElse(ASSUMED_SIGMA_DEG));
        return 1 / (sigma * sigma);
    }
}
