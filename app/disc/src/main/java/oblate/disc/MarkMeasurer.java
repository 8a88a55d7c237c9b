/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Optional;

/** Turns a pixel into a measured place with its errors, or says why it cannot. Stateless. */
public final class MarkMeasurer {

    /** Emission angle (deg) beyond which a mark is refused: an error of 1 px then costs more than three times what it does at the centre. */
    public static final double LARGEST_EMISSION_DEG = 72;

    /** No longitude is known worse than anywhere (deg): the largest standard error given, e.g. at a pole. */
    private static final double ANYWHERE_DEG = 180;

    private static final double SECONDS_PER_DAY = 86400;

    /**
     * A measured place.
     *
     * @param point the place
     * @param errors its errors
     */
    public record Measured(SurfacePoint point, ErrorBudget errors) {}

    /**
     * Measures a pixel.
     *
     * @param frame the placed disc
     * @param covariance errors of the placement
     * @param pickSigmaPx standard error of the pick in each direction (px)
     * @param timeSigmaS standard error of the picture's time (s)
     * @return empty off the disc or beyond {@link #LARGEST_EMISSION_DEG}
     */
    public Optional<Measured> measure(
            DiscFrame frame, PlacementCovariance covariance, PixelPoint pixel, double pickSigmaPx, double timeSigmaS) {
        return frame.locate(pixel.xPx(), pixel.yPx())
                .filter(point -> point.emissionDeg() <= LARGEST_EMISSION_DEG)
                .map(point -> new Measured(point, budget(frame, covariance, pixel, pickSigmaPx, timeSigmaS)));
    }

    private static ErrorBudget budget(
            DiscFrame frame, PlacementCovariance covariance, PixelPoint pixel, double pickSigmaPx, double timeSigmaS) {
        double[][] slope = slopes(frame, pixel);
        double degPerDay = frame.disc().planet().globe().iauSystem().degPerDay();
        double time = Math.abs(degPerDay) / SECONDS_PER_DAY * timeSigmaS;
        double[] pick = new double[2];
        double[] total = new double[2];
        for (int i = 0; i < 2; i++) {
            pick[i] = pickSigmaPx * Math.hypot(slope[i][0], slope[i][1]);
            double variance = pick[i] * pick[i] + part(slope[i], covariance, 0, 4) + (i == 0 ? time * time : 0);
            total[i] = Math.sqrt(Math.max(0, variance));
        }
        return new ErrorBudget(
                longitude(pick[0]),
                pick[1],
                longitude(Math.sqrt(part(slope[0], covariance, 0, 2))),
                Math.sqrt(part(slope[1], covariance, 0, 2)),
                longitude(Math.sqrt(part(slope[0], covariance, 2, 3))),
                Math.sqrt(part(slope[1], covariance, 2, 3)),
                longitude(Math.sqrt(part(slope[0], covariance, 3, 4))),
                Math.sqrt(part(slope[1], covariance, 3, 4)),
                longitude(time),
                longitude(total[0]),
                total[1]);
    }

    private static double longitude(double sigmaDeg) {
        return Math.min(ANYWHERE_DEG, sigmaDeg);
    }

    /** Variance that a block of the placement's parameters causes, correlations inside the block counted. */
    private static double part(double[] slope, PlacementCovariance covariance, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            for (int j = from; j < to; j++) {
                sum += slope[i] * covariance.get(i, j) * slope[j];
            }
        }
        return Math.max(0, sum);
    }

    /**
     * Derivatives of longitude (row 0) and planetographic latitude (row 1), in degrees, by centre x, centre y, radius (per px) and pole angle
     * (per deg). Those by the pixel are the first two with the opposite sign.
     *
     * <p>On the surface F(X, Y, Z) = 0 the sight depth changes by ∂Z/∂X = −F_X/F_Z; the rest is the chain rule.
     */
    private static double[][] slopes(DiscFrame frame, PixelPoint pixel) {
        GlobeView view = frame.view();
        Placement placement = frame.placement();
        double x = frame.sightX(pixel.xPx(), pixel.yPx());
        double y = frame.sightY(pixel.xPx(), pixel.yPx());
        double z = view.depth(x, y);
        double bx = view.bodyX(y, z);
        double bz = view.bodyZ(y, z);
        double normalZ = view.k * bz;
        double towards = bx * view.cosB + normalZ * view.sinB;
        double depthByX = -x / towards;
        double depthByY = -(normalZ * view.cosB - bx * view.sinB) / towards;
        double[] byX = places(view, bx, x, bz, new double[] {depthByX * view.cosB, 1, depthByX * view.sinB});
        double[] byY = places(
                view, bx, x, bz, new double[] {depthByY * view.cosB - view.sinB, 0, depthByY * view.sinB + view.cosB});
        double r = placement.equatorialRadiusPx();
        double angle = Math.toRadians(placement.poleAngleDeg());
        int hand = placement.mirrored() ? -1 : 1;
        double turn = Math.toRadians(1);
        double[][] slope = new double[2][];
        for (int i = 0; i < 2; i++) {
            slope[i] = new double[] {
                (-hand * Math.cos(angle) * byX[i] + Math.sin(angle) * byY[i]) / r,
                (hand * Math.sin(angle) * byX[i] + Math.cos(angle) * byY[i]) / r,
                -(x * byX[i] + y * byY[i]) / r,
                hand * turn * (y * byX[i] - x * byY[i])
            };
        }
        return slope;
    }

    /** Change of longitude and planetographic latitude (deg) for a change of the body point. */
    private static double[] places(GlobeView view, double bx, double by, double bz, double[] change) {
        double rho2 = Math.max(1e-18, bx * bx + by * by);
        double rho = Math.sqrt(rho2);
        double east = (bx * change[1] - by * change[0]) / rho2;
        double rhoChange = (bx * change[0] + by * change[1]) / rho;
        double lat = view.k * (rho * change[2] - bz * rhoChange) / (rho2 + view.k * view.k * bz * bz);
        return new double[] {view.eastSign * Math.toDegrees(east), Math.toDegrees(lat)};
    }
}
