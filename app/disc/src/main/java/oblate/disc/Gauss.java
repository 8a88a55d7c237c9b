/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/** Small normal equations with the right-hand side as their last column. */
final class Gauss {
    private Gauss() {}

    /** The solution, and after it the variance of its first part; NaN and infinite when there is none. */
    static double[] solve(double[][] normal) {
        int n = normal.length;
        double[][] square = new double[n][n];
        double[] right = new double[n];
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            scale[i] = 1 / Math.sqrt(Math.max(1e-300, normal[i][i]));
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                // Both halves are summed alike but for rounding, which the decomposition would not forgive.
                square[i][j] = (normal[i][j] + normal[j][i]) / 2 * scale[i] * scale[j];
            }
            right[i] = normal[i][n] * scale[i];
        }
        double[] out = new double[n + 1];
        try {
            RealMatrix inverse = new CholeskyDecomposition(new Array2DRowRealMatrix(square, false), 1e-8, 1e-12)
                    .getSolver()
                    .getInverse();
            double[] x = inverse.operate(right);
            for (int i = 0; i < n; i++) {
                out[i] = x[i] * scale[i];
            }
            out[n] = inverse.getEntry(0, 0) * scale[0] * scale[0];
        } catch (MathRuntimeException none) {
            Arrays.fill(out, Double.NaN);
            out[n] = Double.POSITIVE_INFINITY;
        }
        return out;
    }
}
