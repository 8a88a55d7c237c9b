/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Bands of latitude taken from the marks themselves: the peaks of a smoothed count, with windows that may overlap. */
final class LatitudeBands {
    private static final double BIN_DEG = 0.1;
    private static final double BELL_DEG = 0.45;
    private static final double HALF_WIDTH_DEG = 1.6;

    private LatitudeBands() {}

    /**
     * Middles of the bands (deg), the most crowded first; every latitude lies in one at least.
     *
     * @param scatterDeg of the latitudes of one feature
     */
    static List<Double> middles(double[] lat, double scatterDeg) {
        int bins = (int) Math.ceil(180 / BIN_DEG) + 1;
        double[] count = new double[bins];
        for (double each : lat) {
            if (!Double.isNaN(each)) {
                count[bin(each)]++;
            }
        }
        double bell = Math.max(BELL_DEG, scatterDeg);
        int reach = (int) Math.ceil(3 * bell / BIN_DEG);
        double[] smooth = new double[bins];
        for (int i = 0; i < bins; i++) {
            if (count[i] > 0) {
                for (int k = Math.max(0, i - reach); k <= Math.min(bins - 1, i + reach); k++) {
                    double z = (k - i) * BIN_DEG / bell;
                    smooth[k] += count[i] * Math.exp(-z * z / 2);
                }
            }
        }
        List<Integer> peaks = new ArrayList<>();
        for (int i = 1; i < bins - 1; i++) {
            if (smooth[i] > 0 && smooth[i] > smooth[i - 1] && smooth[i] >= smooth[i + 1]) {
                peaks.add(i);
            }
        }
        peaks.sort(Comparator.comparingDouble(i -> -smooth[i]));
        List<Double> middles = new ArrayList<>();
        peaks.forEach(i -> middles.add(-90 + i * BIN_DEG));
        boolean[] covered = new boolean[bins];
        middles.forEach(m -> cover(covered, m, halfWidthDeg(scatterDeg)));
        for (int i = 0; i < bins; i++) {
            if (count[i] > 0 && !covered[i]) {
                double middle = -90 + i * BIN_DEG + HALF_WIDTH_DEG / 2;
                middles.add(middle);
                cover(covered, middle, halfWidthDeg(scatterDeg));
            }
        }
        return middles;
    }

    static double halfWidthDeg(double scatterDeg) {
        return Math.max(HALF_WIDTH_DEG, 3 * scatterDeg);
    }

    private static void cover(boolean[] covered, double middle, double half) {
        for (int k = bin(Math.max(-90, middle - half)); k <= bin(Math.min(90, middle + half)); k++) {
            covered[k] = true;
        }
    }

    private static int bin(double lat) {
        return (int) Math.round((lat + 90) / BIN_DEG);
    }
}
