/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;

/**
 * A marked pixel as a place beside the planet's centre, with what each error does to it. Lengths are equatorial radii: x to celestial west along the equator as
 * seen, y to the planet's north.
 *
 * @param x radii
 * @param y radii
 * @param pick standard error of the pick, each way (radii)
 * @param fit what one standard error of each of the fit's four independent parts does: rows x, y
 */
record MarkedPlace(double x, double y, double pick, double[][] fit) {

    static MarkedPlace of(PlaceMark mark) {
        return of(mark.placement(), mark.covariance(), mark.pixel(), mark.pickSigmaPx());
    }

    static MarkedPlace of(Placement p, PlacementCovariance covariance, PixelPoint pixel, double pickSigmaPx) {
        double a = Math.toRadians(p.poleAngleDeg());
        int hand = p.mirrored() ? -1 : 1;
        double r = p.equatorialRadiusPx();
        double dx = (pixel.xPx() - p.centreXPx()) / r;
        double dy = (pixel.yPx() - p.centreYPx()) / r;
        double x = hand * (dx * Math.cos(a) - dy * Math.sin(a));
        double y = -dx * Math.sin(a) - dy * Math.cos(a);
        double turn = Math.toRadians(1);
        // by centre x, centre y, radius (per px), pole angle (per deg)
        double[][] slope = {
            {-hand * Math.cos(a) / r, hand * Math.sin(a) / r, -x / r, hand * turn * y},
            {Math.sin(a) / r, Math.cos(a) / r, -y / r, -hand * turn * x}
        };
        double[][] root = root(covariance.toArray());
        double[][] fit = new double[2][4];
        for (int row = 0; row < 2; row++) {
            for (int k = 0; k < 4; k++) {
                for (int j = k; j < 4; j++) {
                    fit[row][k] += slope[row][j] * root[j][k];
                }
            }
        }
        return new MarkedPlace(x, y, pickSigmaPx / r, fit);
    }

    /** The lower triangle whose product with its transpose is the matrix (Cholesky); a part without variance stays without. */
    private static double[][] root(double[][] matrix) {
        int n = matrix.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                if (i == j) {
                    l[i][i] = Math.sqrt(Math.max(0, sum));
                } else {
                    l[i][j] = l[j][j] > 0 ? sum / l[j][j] : 0;
                }
            }
        }
        return l;
    }

    /** Standard error along a direction (radii), fit and pick together. */
    double sigmaAlong(double unitX, double unitY) {
        double sum = pick * pick;
        for (int k = 0; k < fit[0].length; k++) {
            double part = along(k, unitX, unitY);
            sum += part * part;
        }
        return Math.sqrt(sum);
    }

    /** What one standard error of a part of the fit does along a direction (radii). */
    double along(int k, double unitX, double unitY) {
        return unitX * fit[0][k] + unitY * fit[1][k];
    }
}
