/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench.window;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Times in ms, in order of size.
 *
 * @param sorted the times, smallest first
 */
record Figures(double[] sorted) {
    static Figures of(List<Double> times) {
        double[] all = times.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(all);
        return new Figures(all);
    }

    /** The time that a share (0…1) of all do not exceed. */
    double at(double share) {
        return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
    }

    double median() {
        return at(0.5);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "median %.1f ms, 95 %% below %.1f ms, worst %.1f ms (%d)",
                median(),
                at(0.95),
                sorted[sorted.length - 1],
                sorted.length);
    }
}
