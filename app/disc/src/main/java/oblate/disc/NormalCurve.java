/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/** The normal distribution, fast enough for one call per pixel. */
final class NormalCurve {
    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

    private NormalCurve() {}

    static double density(double t) {
        return Math.exp(-0.5 * t * t) / ROOT_TWO_PI;
    }

    /** Share below t, to 7.5e-8 (Abramowitz and Stegun 26.2.17). */
    static double below(double t) {
        double k = 1 / (1 + 0.2316419 * Math.abs(t));
        double tail = density(t)
                * k
                * (0.319381530 + k * (-0.356563782 + k * (1.781477937 + k * (-1.821255978 + k * 1.330274429))));
        return t > 0 ? 1 - tail : tail;
    }
}
