/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/**
 * What a map row shows on average: for each latitude a parabola in longitude (belts and the darkening towards the limb), fitted robustly so that
 * spots stand out from it.
 */
final class ZonalMean {
    private static final int ROUNDS = 4;
    private static final double REJECT = 2;
    private final MapStrip map;
    private final double[][] curve;

    ZonalMean(MapStrip map) {
        this.map = map;
        curve = new double[map.rows()][];
        for (int row = 0; row < map.rows(); row++) {
            curve[row] = fit(row);
        }
    }

    private double[] fit(int row) {
        double[] east = new double[map.columns()];
        double[] value = new double[map.columns()];
        int n = 0;
        for (int c = 0; c < map.columns(); c++) {
            if (!Float.isNaN(map.value(c, row))) {
                east[n] = map.eastDeg(c) / 90;
                value[n++] = map.value(c, row);
            }
        }
        if (n < 12) {
            return null;
        }
        double[] p = {0, 0, 0};
        double limit = Double.POSITIVE_INFINITY;
        for (int round = 0; round < ROUNDS; round++) {
            double[][] m = new double[3][4];
            for (int i = 0; i < n; i++) {
                double rest = value[i] - at(p, east[i]);
                if (Math.abs(rest) <= limit) {
                    double[] b = {1, east[i], east[i] * east[i]};
                    for (int j = 0; j < 3; j++) {
                        for (int k = 0; k < 3; k++) {
                            m[j][k] += b[j] * b[k];
                        }
                        m[j][3] += b[j] * value[i];
                    }
                }
            }
            p = LimbRays.solve(m);
            double[] rest = new double[n];
            for (int i = 0; i < n; i++) {
                rest[i] = Math.abs(value[i] - at(p, east[i]));
            }
            Arrays.sort(rest);
            limit = Math.max(1e-6, REJECT * 1.4826 * rest[n / 2]);
        }
        return p;
    }

    private static double at(double[] p, double east) {
        return p[0] + east * (p[1] + east * p[2]);
    }

    /** The mean at a place given as degrees east of the central meridian and a map row with fraction; NaN where there is none. */
    double at(double eastDeg, double row) {
        int r = (int) Math.floor(row);
        double f = row - r;
        if (r < 0 || r + 1 >= curve.length || curve[r] == null || curve[r + 1] == null) {
            return Double.NaN;
        }
        return (1 - f) * at(curve[r], eastDeg / 90) + f * at(curve[r + 1], eastDeg / 90);
    }
}
