/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Bounds and weak priors of the forward model's shared parameters.
 *
 * @param low lower bounds
 * @param high upper bounds
 * @param mean prior means
 * @param sigma prior standard errors; infinite where there is no prior
 * @param leastScatter smallest scatter a zone is believed to have
 */
record FitLimits(double[] low, double[] high, double[] mean, double[] sigma, double leastScatter) {
    /** Neighbouring pixels err together: a prior counts as so many pixels do, else it would drown among tens of thousands of them. */
    private static final double PRIOR_PIXELS = 30;

    private static final double FREE = Double.POSITIVE_INFINITY;
    /** The two photometric exponents are tied near b = a − 1, as reciprocity asks, this loosely. */
    private static final double RECIPROCITY_SIGMA = 0.25;

    /** The usual ones, for a plane binned by {@code bin}. */
    static FitLimits usual(double exponent, int bin, double angleRad, double angleSigmaRad, double leastScatter) {
        double[] low = new double[Slot.PATTERN];
        double[] high = new double[Slot.PATTERN];
        double[] mean = new double[Slot.PATTERN];
        double[] sigma = new double[Slot.PATTERN];
        for (int k = 0; k < Slot.PATTERN; k++) {
            low[k] = -FREE;
            high[k] = FREE;
            sigma[k] = FREE;
        }
        FitLimits limits = new FitLimits(low, high, mean, sigma, leastScatter);
        limits.set(Slot.RADIUS, 2, FREE, 0, FREE);
        limits.set(Slot.ANGLE, -FREE, FREE, angleRad, angleSigmaRad * Math.sqrt(PRIOR_PIXELS));
        limits.set(Slot.SUN, -0.1, 1.6, exponent, 0.3);
        limits.set(Slot.VIEW, -0.7, 1.5, 0, FREE);
        limits.set(Slot.CORE, Math.max(0.6, 1.2 / bin), 12, 0, FREE);
        limits.set(Slot.RING, 0.6, 8, 2, 1.5);
        limits.set(Slot.RING_WIDTH, 1.15, 2.6, 1.6, 0.3);
        limits.set(Slot.HALO, -1.5, 0.6, 0, 0.3);
        limits.set(Slot.HALO_WIDTH, 2.7, 8, 4, 1.5);
        limits.set(Slot.HARD, 0, 0.7, 0.08, 0.13);
        limits.set(Slot.TONE, 0.4, 2, 1, 0.25);
        limits.set(Slot.LEAN, -0.8, 0.8, 0, 0.05);
        limits.set(Slot.BLACK, -0.01, 0.08, 0.01, 0.012);
        limits.set(Slot.BACK_X, -FREE, FREE, 0, 0.02);
        limits.set(Slot.BACK_Y, -FREE, FREE, 0, 0.02);
        return limits;
    }

    /** For pictures whose undershoot was not cut: black then cannot be told from the background. */
    void holdBlack() {
        set(Slot.BLACK, 0, 0, 0, FREE);
    }

    private void set(int k, double from, double to, double prior, double priorSigma) {
        low[k] = from;
        high[k] = to;
        mean[k] = prior;
        sigma[k] = priorSigma;
    }

    boolean leaves(int k, double value, double change) {
        return value <= low[k] && change < 0 || value >= high[k] && change > 0;
    }

    void clamp(double[] p) {
        for (int k = 0; k < Slot.PATTERN; k++) {
            p[k] = Math.max(low[k], Math.min(high[k], p[k]));
        }
    }

    double priorCost(double[] p) {
        double sum = 0;
        for (int k = 0; k < Slot.PATTERN; k++) {
            double t = (p[k] - mean[k]) / sigma[k];
            sum += t * t;
        }
        double t = (p[Slot.VIEW] - p[Slot.SUN] + 1) / RECIPROCITY_SIGMA;
        return PRIOR_PIXELS * (sum + t * t);
    }

    void addPriors(double[] p, double[][] normal, double[] pull) {
        for (int k = 0; k < Slot.PATTERN; k++) {
            double w = PRIOR_PIXELS / (sigma[k] * sigma[k]);
            normal[k][k] += w;
            pull[k] += w * (mean[k] - p[k]);
        }
        double w = PRIOR_PIXELS / (RECIPROCITY_SIGMA * RECIPROCITY_SIGMA);
        double off = p[Slot.SUN] - 1 - p[Slot.VIEW];
        normal[Slot.SUN][Slot.SUN] += w;
        normal[Slot.VIEW][Slot.VIEW] += w;
        normal[Slot.SUN][Slot.VIEW] -= w;
        normal[Slot.VIEW][Slot.SUN] -= w;
        pull[Slot.SUN] -= w * off;
        pull[Slot.VIEW] += w * off;
    }
}
