/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/** The normal equations of a fit: summed over the weighted pixels, solved for a step within the limits, and for the errors. One use, one thread. */
final class NormalEquations {
    private static final int[] SHAPE = {
        Slot.SUN,
        Slot.VIEW,
        Slot.HARD,
        Slot.CORE,
        Slot.RING,
        Slot.RING_WIDTH,
        Slot.HALO,
        Slot.HALO_WIDTH,
        Slot.TONE,
        Slot.BLACK
    };
    private static final int SECTORS = 36;
    private static final int INNER_SECTORS = 12;

    private final Plane plane;
    private final ForwardModel model;
    private final FitLimits limits;
    private final Residuals residuals;
    private final int size;
    private final boolean[] frozen;
    private final boolean[] bound;
    private double[][] normal;
    private double[] pull;

    NormalEquations(Plane plane, ForwardModel model, FitLimits limits, Residuals residuals, int size) {
        this.plane = plane;
        this.model = model;
        this.limits = limits;
        this.residuals = residuals;
        this.size = size;
        frozen = new boolean[size];
        bound = new boolean[size];
    }

    /** Holds blur, photometry and tone, or sets them free. */
    void holdShape(boolean held) {
        for (int k : SHAPE) {
            frozen[k] = held;
        }
    }

    /** Sums the normal equations; a pixel has all shared derivatives and one hat of each colour. */
    void accumulate(double[] p) {
        normal = new double[size][size];
        pull = new double[size];
        int colours = model.pattern.colours();
        int[] at = new int[Slot.PATTERN + colours];
        double[] row = new double[Slot.PATTERN + colours];
        for (int i = 0; i < residuals.count(); i++) {
            if (residuals.zone(i) < 0) {
                continue;
            }
            double w = residuals.weight(i);
            int m = row(i, at, row);
            for (int j = 0; j < m; j++) {
                double wj = w * row[j];
                double[] line = normal[at[j]];
                pull[at[j]] += wj * residuals.at(i);
                for (int k = 0; k <= j; k++) {
                    line[at[k]] += wj * row[k];
                }
            }
        }
        for (int j = 0; j < size; j++) {
            for (int k = 0; k < j; k++) {
                double both = j < Slot.PATTERN || k < Slot.PATTERN ? normal[j][k] : normal[j][k] + normal[k][j];
                normal[j][k] = both;
                normal[k][j] = both;
            }
        }
        limits.addPriors(p, normal, pull);
    }

    private int row(int i, int[] at, double[] row) {
        for (int k = 0; k < Slot.PATTERN; k++) {
            at[k] = k;
            row[k] = model.slope[k][i];
        }
        int m = Slot.PATTERN;
        for (int c = 0; c < model.patternSlope.length; c++) {
            float s = model.patternSlope[c][i];
            if (s != 0) {
                int hat = model.hatAt(c, i);
                if (hat >= 0) {
                    at[m] = Slot.PATTERN + hat;
                    row[m++] = s;
                }
            }
        }
        return m;
    }

    /** A damped step; parameters that would leave their bounds are held on them and the rest solved again. */
    double[] solve(double[] p, double damping) {
        Arrays.fill(bound, false);
        for (int attempt = 0; attempt < SHAPE.length + 3; attempt++) {
            double[] change = solveFree(damping, pull.clone());
            boolean again = false;
            for (int k = 0; k < Slot.PATTERN; k++) {
                if (!frozen[k] && !bound[k] && limits.leaves(k, p[k], change[k])) {
                    bound[k] = true;
                    again = true;
                }
            }
            if (!again) {
                return change;
            }
        }
        return new double[size];
    }

    private double[] solveFree(double damping, double[] b) {
        double[][] a = new double[size][];
        for (int j = 0; j < size; j++) {
            a[j] = normal[j].clone();
            a[j][j] += damping * normal[j][j] + 1e-9;
        }
        for (int j = 0; j < size; j++) {
            if (frozen[j] || bound[j]) {
                Arrays.fill(a[j], 0);
                for (int k = 0; k < size; k++) {
                    a[k][j] = 0;
                }
                a[j][j] = 1;
                b[j] = 0;
            }
        }
        try {
            return new CholeskyDecomposition(new Array2DRowRealMatrix(a, false), 1e-8, 1e-14)
                    .getSolver()
                    .solve(new ArrayRealVector(b, false))
                    .toArray();
        } catch (MathRuntimeException notDefinite) {
            return new double[size];
        }
    }

    /** By how much centre and radius follow a turn of the angle (per rad), everything else fitted again. */
    double[] angleResponse() {
        boolean was = frozen[Slot.ANGLE];
        frozen[Slot.ANGLE] = true;
        double[] b = new double[size];
        for (int j = 0; j < size; j++) {
            b[j] = -normal[j][Slot.ANGLE];
        }
        double[] response = Arrays.copyOf(solveFree(0, b), 3);
        frozen[Slot.ANGLE] = was;
        return response;
    }

    /** H⁻¹ B H⁻¹ with B from scores summed over sectors, whose pixels err together; its block of centre, radius and angle. */
    double[][] sandwich(double[] p) {
        double[][] scores = new double[SECTORS + INNER_SECTORS][size];
        int colours = model.pattern.colours();
        int[] at = new int[Slot.PATTERN + colours];
        double[] row = new double[Slot.PATTERN + colours];
        for (int i = 0; i < residuals.count(); i++) {
            if (residuals.zone(i) < 0) {
                continue;
            }
            double around =
                    Math.atan2(i / plane.width() - p[Slot.Y], i % plane.width() - p[Slot.X]) / (2 * Math.PI) + 0.5;
            int sector = residuals.zone(i) == Residuals.INSIDE
                    ? SECTORS + Math.min(INNER_SECTORS - 1, (int) (around * INNER_SECTORS))
                    : Math.min(SECTORS - 1, (int) (around * SECTORS));
            double pullHere = residuals.weight(i) * residuals.at(i);
            int m = row(i, at, row);
            for (int j = 0; j < m; j++) {
                scores[sector][at[j]] += pullHere * row[j];
            }
        }
        double[][] h = new double[size][];
        for (int j = 0; j < size; j++) {
            h[j] = normal[j].clone();
            h[j][j] += 1e-9;
        }
        for (int j = 0; j < size; j++) {
            if (frozen[j] || bound[j]) {
                for (int k = 0; k < size; k++) {
                    h[j][k] = 0;
                    h[k][j] = 0;
                }
                h[j][j] = 1;
                for (double[] s : scores) {
                    s[j] = 0;
                }
            }
        }
        double[][] out = new double[4][4];
        try {
            RealMatrix inverse = new CholeskyDecomposition(new Array2DRowRealMatrix(h, false), 1e-8, 1e-14)
                    .getSolver()
                    .getInverse();
            for (double[] s : scores) {
                double[] d = inverse.operate(s);
                for (int j = 0; j < 4; j++) {
                    for (int k = 0; k < 4; k++) {
                        out[j][k] += d[j] * d[k];
                    }
                }
            }
        } catch (MathRuntimeException notDefinite) {
            for (int j = 0; j < 4; j++) {
                out[j][j] = 1;
            }
        }
        return out;
    }

    /** How much the pixels say about a parameter alone. */
    double weightOf(int k) {
        return normal[k][k];
    }

    /** Which of the shared parameters sit on a bound. */
    boolean[] bound() {
        return Arrays.copyOf(bound, Slot.PATTERN);
    }
}
