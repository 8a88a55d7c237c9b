/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Fits a {@link ForwardModel} to a plane by damped Gauss–Newton steps on all parameters jointly, with weights by zone from the residual's own
 * scatter and Cauchy weights against what the model does not know (moons, spots, captions). One use, one thread.
 */
final class ForwardFit {
    private static final double CONVERGED_PX = 0.008;
    /** Knots whose pixels weigh less than this share of the heaviest are off the disc or in the dark. */
    private static final double LIT_SHARE = 0.1;

    /** Largest steps: place 2 px, angle 3°, shapes as the notes on the method found good. */
    private static final double[] LARGEST_STEP = {2, 2, 2, Math.toRadians(3), 0.2, 0.2, 0.4, 0.5, 0.25, 0.1, 0.2};

    private final ForwardModel model;
    private final FitLimits limits;
    private final Residuals residuals;
    private final NormalEquations equations;
    private double[] p;

    /**
     * What came out.
     *
     * @param p parameters
     * @param covariance of centre, radius, angle (px, rad): sandwich over sectors
     * @param angleResponse by how much centre and radius (px) would follow a turn of the angle (per rad), everything else fitted again
     * @param loss mean Cauchy loss of limb band and inside, to compare two solutions of the same plane
     * @param bandLoss the same of the limb band alone, where the unlit sliver shows
     * @param bandSigma scatter of the residual in the limb band, in units of the disc's brightness
     * @param markings relative scatter of the brightness over a globe without belts, where it is lit
     * @param bound which of the first parameters sit on a bound
     * @param points pixels used
     * @param converged whether the steps became small
     */
    record Solution(
            double[] p,
            double[][] covariance,
            double[] angleResponse,
            double loss,
            double bandLoss,
            double bandSigma,
            double markings,
            boolean[] bound,
            int points,
            boolean converged) {}

    ForwardFit(Plane plane, ForwardModel model, FitLimits limits, double[] start) {
        this.model = model;
        this.limits = limits;
        p = start.clone();
        residuals = new Residuals(plane, model, limits);
        equations = new NormalEquations(plane, model, limits, residuals, p.length);
    }

    /** Runs up to so many steps; with {@code placeOnly} blur, photometry and tone stay as they are. */
    Solution run(int steps, boolean placeOnly) {
        equations.holdShape(placeOnly);
        double damping = 1e-3;
        boolean converged = false;
        model.evaluate(p, true);
        residuals.take();
        residuals.weigh(p);
        double cost = residuals.cost(p);
        equations.accumulate(p);
        int small = 0;
        for (int step = 0; step < steps && !converged; step++) {
            double[] change = equations.solve(p, damping);
            double[] before = p;
            p = moved(change);
            model.evaluate(p, step % 3 == 2);
            residuals.take();
            double now = residuals.cost(p);
            if (now <= cost * (1 + 1e-9) || !(cost < Double.MAX_VALUE)) {
                small = tiny(before) ? small + 1 : 0;
                converged = small >= 2;
                damping = Math.max(1e-6, damping / 5);
                residuals.weigh(p);
                cost = residuals.cost(p);
                equations.accumulate(p);
            } else {
                boolean stuck = tiny(before);
                p = before;
                model.evaluate(p, false);
                residuals.take();
                damping *= 10;
                converged = stuck && damping > 1e-2 || damping > 1e4;
            }
        }
        return solution(converged);
    }

    private boolean tiny(double[] before) {
        double r = p[Slot.RADIUS];
        return Math.abs(p[Slot.X] - before[Slot.X]) < CONVERGED_PX
                && Math.abs(p[Slot.Y] - before[Slot.Y]) < CONVERGED_PX
                && Math.abs(r - before[Slot.RADIUS]) < CONVERGED_PX
                && Math.abs(p[Slot.ANGLE] - before[Slot.ANGLE]) * r < 5 * CONVERGED_PX;
    }

    private double[] moved(double[] change) {
        double share = 1;
        for (int k = 0; k < LARGEST_STEP.length; k++) {
            share = Math.min(share, LARGEST_STEP[k] / Math.max(1e-12, Math.abs(change[k])));
        }
        double[] to = p.clone();
        for (int k = 0; k < p.length; k++) {
            to[k] += share * change[k];
        }
        limits.clamp(to);
        return to;
    }

    private Solution solution(boolean converged) {
        model.evaluate(p, true);
        residuals.take();
        equations.accumulate(p);
        equations.solve(p, 0);
        double level = 0;
        int n = 0;
        double loss = 0;
        double bandLoss = 0;
        int band = 0;
        int inBand = 0;
        double scale = 2 * Math.max(limits.leastScatter(), 0.01);
        for (int i = 0; i < residuals.count(); i++) {
            if (residuals.zone(i) == Residuals.INSIDE) {
                level += model.value[i];
                n++;
            }
            float left = residuals.at(i);
            if (residuals.zone(i) > 0) {
                loss += residuals.share(i) * Math.log1p(left * left / (scale * scale));
                inBand += residuals.share(i);
            }
            if (residuals.zone(i) == Residuals.BAND) {
                bandLoss += Math.log1p(left * left / (scale * scale));
                band++;
            }
        }
        double brightness = n == 0 ? 1 : Math.max(1e-3, level / n);
        return new Solution(
                p.clone(),
                equations.sandwich(p),
                equations.angleResponse(),
                loss / Math.max(1, inBand),
                bandLoss / Math.max(1, band),
                residuals.bandSigma() / brightness,
                markings(),
                equations.bound(),
                residuals.points(),
                converged);
    }

    private double markings() {
        if (model.pattern.belts()) {
            return 0;
        }
        double most = 0;
        for (int k = 0; k < model.pattern.globeSize(); k++) {
            most = Math.max(most, equations.weightOf(Slot.PATTERN + k));
        }
        double sum = 0;
        double squares = 0;
        int n = 0;
        for (int k = 0; k < model.pattern.globeSize(); k++) {
            if (equations.weightOf(Slot.PATTERN + k) > LIT_SHARE * most) {
                double v = p[Slot.PATTERN + k];
                sum += v;
                squares += v * v;
                n++;
            }
        }
        double mean = sum / Math.max(1, n);
        return mean > 0 ? Math.sqrt(Math.max(0, squares / n - mean * mean)) / mean : 1;
    }
}
