/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Optional;

/**
 * A line fitted to marks of which some may be false.
 *
 * <p>Model: each mark is normal about the line with variance σ² + s², or, with a probability of 5 %, anywhere on the circle. Solved by re-weighting, starting
 * with eight times the errors and shrinking to once, so that no false mark takes the line. The common added scatter s is found by maximum likelihood and is
 * never negative: the stated errors are never shrunk.
 *
 * @param line the line
 * @param goodness probability of each mark to be no false one (0…1)
 * @param scatterDeg added scatter s (deg)
 * @param logLikelihood of all marks
 */
record RobustLine(Line line, double[] goodness, double scatterDeg, double logLikelihood) {
    private static final double FLAT_SHARE = 0.05;
    private static final double FLAT_DENSITY = FLAT_SHARE / 360;
    private static final double FIRST_WIDENING = 8;
    private static final int SHRINKING_STEPS = 9;
    private static final int MOST_ROUNDS = 60;
    private static final int MOST_SCORINGS = 30;
    private static final int MOST_POINTS_FOR_SCATTER = 5000;
    /** From here on a mark can be called false; among fewer any two make a line of their own. */
    static final int FEWEST_FOR_REJECTION = 5;

    static RobustLine fit(Arc arc, Line start) {
        return new Iteration(arc, arc.size() >= FEWEST_FOR_REJECTION).run(start);
    }

    /** With every mark taken as a good one. */
    static RobustLine fitAll(Arc arc, Line start) {
        return new Iteration(arc, false).run(start);
    }

    int used() {
        int used = 0;
        for (double good : goodness) {
            used += good >= 0.5 ? 1 : 0;
        }
        return used;
    }

    private static final class Iteration {
        private final Arc arc;
        private final boolean rejecting;
        private final double[] y;
        private final double[] goodness;
        private final double[] weights;
        private Line line;
        private double scatter;

        Iteration(Arc arc, boolean rejecting) {
            this.arc = arc;
            this.rejecting = rejecting;
            y = new double[arc.size()];
            goodness = new double[arc.size()];
            weights = new double[arc.size()];
        }

        RobustLine run(Line start) {
            line = start;
            for (int k = 0; k < SHRINKING_STEPS; k++) {
                reweighted(Math.pow(FIRST_WIDENING, 1 - (double) k / (SHRINKING_STEPS - 1)));
            }
            for (int round = 0; round < MOST_ROUNDS; round++) {
                Line before = line;
                double scatterBefore = scatter;
                scatter = likeliestScatter();
                reweighted(1);
                double tolerance = 1e-9 * (1 + arc.spanDays());
                boolean still = Math.abs(line.slope() - before.slope()) * (1 + arc.spanDays()) < tolerance
                        && Math.abs(line.at(before.xMiddle()) - before.middle()) < 1e-9
                        && Math.abs(scatter - scatterBefore) < 1e-7;
                if (round > 0 && still) {
                    break;
                }
            }
            return new RobustLine(line, goodness.clone(), scatter, logLikelihood(scatter, 1));
        }

        private void reweighted(double widening) {
            for (int i = 0; i < arc.size(); i++) {
                double residual = RateScan.residual(arc, line, i);
                double variance = variance(i, scatter) * widening * widening;
                y[i] = line.at(arc.days()[i]) + residual;
                double normal = (1 - FLAT_SHARE) * normal(residual, variance);
                goodness[i] = rejecting ? normal / (normal + FLAT_DENSITY) : 1;
                weights[i] = goodness[i] / variance;
            }
            Optional<Line> next = Line.fit(arc.days(), y, weights);
            next.ifPresent(found -> line = found);
        }

        private double variance(int i, double addedScatter) {
            return arc.sigmaDeg()[i] * arc.sigmaDeg()[i] + addedScatter * addedScatter;
        }

        /** The likeliest s by scoring, from where it stands; nothing when the marks scatter no more than their errors say. */
        private double likeliestScatter() {
            int stride = Math.max(1, arc.size() / MOST_POINTS_FOR_SCATTER);
            double square = scatter * scatter;
            for (int round = 0; round < MOST_SCORINGS; round++) {
                double score = 0;
                double information = 0;
                for (int i = 0; i < arc.size(); i += stride) {
                    double residual = RateScan.residual(arc, line, i);
                    double variance = arc.sigmaDeg()[i] * arc.sigmaDeg()[i] + square;
                    double normal = (1 - FLAT_SHARE) * normal(residual, variance);
                    double good = rejecting ? normal / (normal + FLAT_DENSITY) : 1;
                    score += good * (residual * residual - variance) / (variance * variance);
                    information += good / (variance * variance);
                }
                if (!(information > 0)) {
                    return 0;
                }
                double next = Math.max(0, square + score / information);
                if (Math.abs(next - square) < 1e-9 + 1e-7 * square) {
                    return Math.sqrt(next);
                }
                square = next;
            }
            return Math.sqrt(square);
        }

        private double logLikelihood(double addedScatter, int stride) {
            double sum = 0;
            for (int i = 0; i < arc.size(); i += stride) {
                double residual = RateScan.residual(arc, line, i);
                double variance = variance(i, addedScatter);
                sum += rejecting
                        ? Math.log((1 - FLAT_SHARE) * normal(residual, variance) + FLAT_DENSITY)
                        : -residual * residual / (2 * variance) - Math.log(2 * Math.PI * variance) / 2;
            }
            return sum;
        }

        private static double normal(double residual, double variance) {
            return Math.exp(-residual * residual / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
        }
    }
}
