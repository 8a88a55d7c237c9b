/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Latitude against time: the straight line through the latitudes of a drift's used marks.
 *
 * @param middleUtc weighted middle of the marks, where latitude and slope are uncorrelated
 * @param latGraphicDeg planetographic latitude there (deg)
 * @param sigmaLatDeg its standard error (deg)
 * @param degPerDay change of latitude (deg per day), positive northward
 * @param sigmaDegPerDay its standard error
 */
public record LatitudeTrend(
        Instant middleUtc, double latGraphicDeg, double sigmaLatDeg, double degPerDay, double sigmaDegPerDay) {
    private static final double ASSUMED_SIGMA_DEG = 0.5;
    private static final double LEAST_SIGMA_DEG = 1e-3;
    private static final int FEWEST = 4;

    /** Latitude of the line at an instant (deg). */
    public double latGraphicDegAt(Instant time) {
        return latGraphicDeg + degPerDay * Drift.daysBetween(middleUtc, time);
    }

    /** Empty with fewer than four latitudes or all at one time; errors are enlarged where the latitudes scatter more than they say. */
    public static Optional<LatitudeTrend> of(Drift drift) {
        List<LongitudePoint> points = drift.series().points();
        int[] used = java.util.stream.IntStream.range(0, points.size())
                .filter(i -> drift.states().get(i).used()
                        && points.get(i).latGraphicDeg().isPresent())
                .toArray();
        if (used.length < FEWEST) {
            return Optional.empty();
        }
        double[] x = new double[used.length];
        double[] y = new double[used.length];
        double[] w = new double[used.length];
        for (int k = 0; k < used.length; k++) {
            LongitudePoint p = points.get(used[k]);
            double sigma = Math.max(LEAST_SIGMA_DEG, p.sigmaLatDeg().orElse(ASSUMED_SIGMA_DEG));
            x[k] = Drift.daysBetween(drift.epochUtc(), p.time());
            y[k] = p.latGraphicDeg().getAsDouble();
            w[k] = 1 / (sigma * sigma);
        }
        return Line.fit(x, y, w).map(line -> {
            double squares = 0;
            for (int k = 0; k < x.length; k++) {
                squares += w[k] * Math.pow(y[k] - line.at(x[k]), 2);
            }
            double factor = Math.sqrt(Math.max(1, squares / (x.length - 2)));
            return new LatitudeTrend(
                    drift.epochUtc().plusMillis(Math.round(line.xMiddle() * 86_400_000)),
                    Math.max(-90, Math.min(90, line.middle())),
                    factor / Math.sqrt(line.weight()),
                    line.slope(),
                    factor / Math.sqrt(line.weightXx()));
        });
    }
}
