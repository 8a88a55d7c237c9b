/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/**
 * Covariance of a placement's centre x, centre y, equatorial radius (px) and pole angle (deg), in this order: honest, not only formal.
 */
public final class PlacementCovariance {
    private final double[][] matrix;

    /**
     * @param matrix 4 × 4, symmetric, copied
     * @throws IllegalArgumentException when it is not 4 × 4 or has a negative or non-finite diagonal
     */
    public PlacementCovariance(double[][] matrix) {
        if (matrix.length != 4) {
            throw new IllegalArgumentException("rows: " + matrix.length);
        }
        this.matrix = new double[4][];
        for (int i = 0; i < 4; i++) {
            if (matrix[i].length != 4 || !(matrix[i][i] >= 0) || Double.isInfinite(matrix[i][i])) {
                throw new IllegalArgumentException("row " + i + ": " + Arrays.toString(matrix[i]));
            }
            this.matrix[i] = matrix[i].clone();
        }
    }

    /** Without correlations. */
    public static PlacementCovariance diagonal(
            double sigmaXPx, double sigmaYPx, double sigmaRadiusPx, double sigmaPoleAngleDeg) {
        double[] sigma = {sigmaXPx, sigmaYPx, sigmaRadiusPx, sigmaPoleAngleDeg};
        double[][] matrix = new double[4][4];
        for (int i = 0; i < 4; i++) {
            matrix[i][i] = sigma[i] * sigma[i];
        }
        return new PlacementCovariance(matrix);
    }

    /** One element; indices 0 x, 1 y, 2 radius, 3 pole angle. */
    public double get(int row, int column) {
        return matrix[row][column];
    }

    /** A copy of the matrix. */
    public double[][] toArray() {
        return Arrays.stream(matrix).map(double[]::clone).toArray(double[][]::new);
    }

    /** Standard error of the centre in one direction, root of the mean of the two variances (px). */
    public double sigmaCentrePx() {
        return Math.sqrt((matrix[0][0] + matrix[1][1]) / 2);
    }

    /** Standard error of the equatorial radius (px). */
    public double sigmaRadiusPx() {
        return Math.sqrt(matrix[2][2]);
    }

    /** Standard error of the pole angle (deg). */
    public double sigmaPoleAngleDeg() {
        return Math.sqrt(matrix[3][3]);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PlacementCovariance c && Arrays.deepEquals(matrix, c.matrix);
    }

    @Override
    public int hashCode() {
        return Arrays.deepHashCode(matrix);
    }
}
