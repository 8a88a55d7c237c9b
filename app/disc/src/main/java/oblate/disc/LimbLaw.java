/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/**
 * How a picture darkens towards limb and terminator: brightness ∝ μ₀^k μ^(k−1) (Minnaert 1941, ApJ 93, 403), with k as the finished picture has it, its
 * tone curve included.
 *
 * @param exponent k; 1 for a Lambert sphere, 1/2 where nothing darkens at opposition
 * @param sigma its standard error from the scatter
 * @param samples places it was fitted to; 0 when there were too few and nothing is taken out
 */
public record LimbLaw(double exponent, double sigma, int samples) {
    /** Nothing taken out. */
    static final LimbLaw NONE = new LimbLaw(0, 0, 0);

    private static final double LAT_STEP_DEG = 2;
    private static final double LON_STEP_DEG = 3;
    private static final double LARGEST_LAT_DEG = 66;
    private static final double LARGEST_EMISSION_DEG = 72;
    private static final int LEAST_SAMPLES = 200;
    private static final int ROUNDS = 8;

    /**
     * Fits along parallels, so that belts do not pass for darkening; spots are weighted down.
     *
     * @param black brightness of black
     */
    static LimbLaw of(Plane plane, double black, DiscFrame frame) {
        MapSight sight = new MapSight(frame, LARGEST_EMISSION_DEG);
        int most = (int) (2 * LARGEST_LAT_DEG / LAT_STEP_DEG + 2) * (int) (360 / LON_STEP_DEG);
        double[] x = new double[most];
        double[] y = new double[most];
        int[] row = new int[most];
        int n = 0;
        int rows = 0;
        for (double lat = -LARGEST_LAT_DEG; lat <= LARGEST_LAT_DEG; lat += LAT_STEP_DEG) {
            for (double lon = 0; lon < 360; lon += LON_STEP_DEG) {
                if (sight.look(lon, lat)) {
                    double v = plane.sample(sight.xPx, sight.yPx) - black;
                    if (v > 0) {
                        x[n] = Math.log(sight.lit * sight.seen);
                        y[n] = Math.log(v * sight.seen);
                        row[n++] = rows;
                    }
                }
            }
            rows++;
        }
        return n < LEAST_SAMPLES ? NONE : slope(Arrays.copyOf(x, n), Arrays.copyOf(y, n), Arrays.copyOf(row, n), rows);
    }

    private static LimbLaw slope(double[] x, double[] y, int[] row, int rows) {
        double[] weight = new double[x.length];
        Arrays.fill(weight, 1);
        double slope = 1;
        double sigma = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double[][] mean = new double[3][rows];
            for (int i = 0; i < x.length; i++) {
                mean[0][row[i]] += weight[i];
                mean[1][row[i]] += weight[i] * x[i];
                mean[2][row[i]] += weight[i] * y[i];
            }
            double xx = 0;
            double xy = 0;
            for (int i = 0; i < x.length; i++) {
                double dx = x[i] - mean[1][row[i]] / mean[0][row[i]];
                xx += weight[i] * dx * dx;
                xy += weight[i] * dx * (y[i] - mean[2][row[i]] / mean[0][row[i]]);
            }
            if (!(xx > 1e-6)) {
                return NONE;
            }
            slope = xy / xx;
            double[] rest = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                rest[i] = Math.abs(
                        y[i] - mean[2][row[i]] / mean[0][row[i]] - slope * (x[i] - mean[1][row[i]] / mean[0][row[i]]));
            }
            double[] sorted = rest.clone();
            Arrays.sort(sorted);
            double scatter = Math.max(1e-4, 1.4826 * sorted[sorted.length / 2]);
            for (int i = 0; i < x.length; i++) {
                weight[i] = 1 / (1 + rest[i] * rest[i] / (9 * scatter * scatter));
            }
            sigma = scatter / Math.sqrt(xx);
        }
        return new LimbLaw(slope, sigma, x.length);
    }

    /** What a brightness is divided by, 1 where the Sun and the observer both stand overhead. */
    double factor(double lit, double seen) {
        return samples == 0 ? 1 : Math.pow(lit * seen, exponent) / seen;
    }
}
