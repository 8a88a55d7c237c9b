/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Optional;

/**
 * A curve of one kind being fitted to marks of which some may be false: the same likelihood as {@link RobustLine}, for more kinds of motion. Not safe for many
 * threads.
 */
final class RobustCurve {
    static final double FLAT_SHARE = 0.05;
    private static final double FLAT_DENSITY = FLAT_SHARE / 360;
    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

    private final CurveKind kind;
    private final Arc arc;
    private final double halfSpan;
    private final double[] theta;
    private final double[] goodness;
    private final Normal normal;
    private final double[] gradient;
    private final double[] residuals;
    private double scatterSquare;

    RobustCurve(CurveKind kind, Arc arc, double halfSpan) {
        this.kind = kind;
        this.arc = arc;
        this.halfSpan = halfSpan;
        theta = new double[kind.parameters()];
        gradient = new double[kind.parameters()];
        goodness = new double[arc.size()];
        residuals = new double[arc.size()];
        normal = new Normal(kind.linear());
    }

    RobustCurve copy() {
        RobustCurve copy = new RobustCurve(kind, arc, halfSpan);
        copy.take(this);
        return copy;
    }

    /** Takes over the numbers of a curve of the same kind. */
    void take(RobustCurve other) {
        System.arraycopy(other.theta, 0, theta, 0, theta.length);
        System.arraycopy(other.goodness, 0, goodness, 0, goodness.length);
        scatterSquare = other.scatterSquare;
    }

    CurveKind kind() {
        return kind;
    }

    double[] theta() {
        return theta;
    }

    double[] goodness() {
        return goodness;
    }

    double scatterDeg() {
        return Math.sqrt(scatterSquare);
    }

    void scatterDeg(double deg) {
        scatterSquare = deg * deg;
    }

    double halfSpan() {
        return halfSpan;
    }

    double at(int i) {
        return kind.value(arc.days()[i] / halfSpan, theta);
    }

    double residual(int i) {
        return RateScan.nearest(arc.lonDeg()[i] - at(i));
    }

    int used() {
        int used = 0;
        for (double good : goodness) {
            used += good >= 0.5 ? 1 : 0;
        }
        return used;
    }

    /** Least squares on the turns and with the weights of another curve, the non-linear number as it stands. */
    boolean startFrom(RobustCurve other, double widening) {
        for (int k = 0; k < kind.linear(); k++) {
            theta[k] = k < 2 ? other.theta[k] : 0;
        }
        normal.clear();
        for (int i = 0; i < arc.size(); i++) {
            double variance = (arc.sigmaDeg()[i] * arc.sigmaDeg()[i] + other.scatterSquare) * widening * widening;
            double off = other.residual(i);
            kind.gradient(arc.days()[i] / halfSpan, theta, gradient);
            normal.add(gradient, other.at(i) + off - at(i), good(off, variance) / variance);
        }
        return moved();
    }

    private static double good(double residual, double variance) {
        double gauss = (1 - FLAT_SHARE)
                * Math.exp(-residual * residual / (2 * variance))
                / (Math.sqrt(variance) * ROOT_TWO_PI);
        return gauss / (gauss + FLAT_DENSITY);
    }

    private boolean moved() {
        Optional<double[]> step = normal.solve();
        if (step.isEmpty()) {
            return false;
        }
        for (int k = 0; k < kind.linear(); k++) {
            theta[k] += step.get()[k];
        }
        return true;
    }

    /**
     * One round of re-weighting with the errors widened.
     *
     * @param freeScatter whether the added scatter is brought nearer to the likeliest too
     * @return false when the marks do not tell the numbers
     */
    boolean round(double widening, boolean freeScatter) {
        normal.clear();
        double score = 0;
        double information = 0;
        for (int i = 0; i < arc.size(); i++) {
            double u = arc.days()[i] / halfSpan;
            double off = RateScan.nearest(arc.lonDeg()[i] - kind.value(u, theta));
            double variance = (arc.sigmaDeg()[i] * arc.sigmaDeg()[i] + scatterSquare) * widening * widening;
            residuals[i] = off;
            goodness[i] = good(off, variance);
            kind.gradient(u, theta, gradient);
            normal.add(gradient, off, goodness[i] / variance);
            score += goodness[i] * (off * off - variance) / (variance * variance);
            information += goodness[i] / (variance * variance);
        }
        if (freeScatter && information > 0) {
            scatterSquare = Math.max(0, scatterSquare + score / information);
        }
        return moved();
    }

    /** Rounds until nothing moves; false when the marks do not tell the numbers. */
    boolean settle(boolean freeScatter, int mostRounds) {
        double[] before = new double[theta.length];
        for (int k = 0; k < mostRounds; k++) {
            System.arraycopy(theta, 0, before, 0, theta.length);
            double scatterBefore = scatterSquare;
            if (!round(1, freeScatter)) {
                return false;
            }
            double most = Math.abs(scatterSquare - scatterBefore);
            for (int j = 0; j < theta.length; j++) {
                most = Math.max(most, Math.abs(theta[j] - before[j]));
            }
            if (most < 1e-6) {
                break;
            }
        }
        return true;
    }

    double logLikelihood() {
        double sum = 0;
        for (int i = 0; i < arc.size(); i++) {
            double off = residual(i);
            double variance = arc.sigmaDeg()[i] * arc.sigmaDeg()[i] + scatterSquare;
            sum += Math.log(
                    (1 - FLAT_SHARE) * Math.exp(-off * off / (2 * variance)) / (Math.sqrt(variance) * ROOT_TWO_PI)
                            + FLAT_DENSITY);
        }
        return sum;
    }

    /**
     * Covariance of all numbers, the non-linear ones too, times N/(N − p).
     *
     * @param given whether the last number was given, not fitted
     */
    Optional<double[][]> covariance(boolean given) {
        int p = kind.parameters() - (given ? 1 : 0);
        Normal all = new Normal(p);
        int n = 0;
        for (int i = 0; i < arc.size(); i++) {
            double variance = arc.sigmaDeg()[i] * arc.sigmaDeg()[i] + scatterSquare;
            kind.gradient(arc.days()[i] / halfSpan, theta, gradient);
            all.add(gradient, 0, goodness[i] / variance);
            n += goodness[i] >= 0.5 ? 1 : 0;
        }
        if (n <= p) {
            return Optional.empty();
        }
        double inflation = (double) n / (n - p);
        return all.inverse().map(inverse -> {
            double[][] covariance = new double[kind.parameters()][kind.parameters()];
            for (int i = 0; i < p; i++) {
                for (int j = 0; j < p; j++) {
                    covariance[i][j] = inverse[i][j] * inflation;
                }
            }
            return covariance;
        });
    }
}
