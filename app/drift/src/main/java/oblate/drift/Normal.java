/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Optional;

/** Normal equations of a few unknowns, solved by Cholesky's method. */
final class Normal {
    private static final double LEAST_PIVOT = 1e-11;
    private final int n;
    private final double[][] matrix;
    private final double[] right;

    Normal(int n) {
        this.n = n;
        matrix = new double[n][n];
        right = new double[n];
    }

    void clear() {
        for (int i = 0; i < n; i++) {
            right[i] = 0;
            java.util.Arrays.fill(matrix[i], 0);
        }
    }

    void add(double[] gradient, double residual, double weight) {
        for (int i = 0; i < n; i++) {
            double weighted = weight * gradient[i];
            right[i] += weighted * residual;
            for (int j = 0; j <= i; j++) {
                matrix[i][j] += weighted * gradient[j];
            }
        }
    }

    /** The unknowns; empty when the equations do not tell them. */
    Optional<double[]> solve() {
        return factor().map(l -> solved(l, right));
    }

    /** The inverse of the matrix. */
    Optional<double[][]> inverse() {
        return factor().map(l -> {
            double[][] inverse = new double[n][];
            for (int k = 0; k < n; k++) {
                double[] unit = new double[n];
                unit[k] = 1;
                inverse[k] = solved(l, unit);
            }
            return inverse;
        });
    }

    private Optional<double[][]> factor() {
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                if (i != j) {
                    l[i][j] = sum / l[j][j];
                } else if (sum > LEAST_PIVOT * matrix[i][i] && sum > 0 && Double.isFinite(sum)) {
                    l[i][i] = Math.sqrt(sum);
                } else {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(l);
    }

    private double[] solved(double[][] l, double[] b) {
        double[] x = b.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= l[i][k] * x[k];
            }
            x[i] /= l[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                x[i] -= l[k][i] * x[k];
            }
            x[i] /= l[i][i];
        }
        return x;
    }
}
