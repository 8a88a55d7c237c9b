/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import java.util.Optional;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.SurfacePoint;

/**
 * How far apart two places of a picture are on the globe, with standard errors: of placing the pointer at both, and of the fitted disc, whose error
 * moves both places together.
 *
 * @param km length of the shortest way along the surface (km)
 * @param sigmaKm its standard error
 * @param deg angle seen from the planet's centre (deg)
 * @param sigmaDeg its standard error
 */
public record Distance(double km, double sigmaKm, double deg, double sigmaDeg) {
    private static final double STEP_PX = 0.05;
    private static final double STEP_DEG = 0.05;

    /**
     * Measures it.
     *
     * @param covariance of the fitted disc
     * @param pickSigmaPx how well the pointer is placed, each way (px)
     * @return empty when one of the places, or one a twentieth of a pixel off, is beside the disc
     */
    public static Optional<Distance> between(
            DiscFrame frame, PlacementCovariance covariance, PixelPoint a, PixelPoint b, double pickSigmaPx) {
        Optional<SurfaceLine> line = line(frame, frame.placement(), a, b);
        if (line.isEmpty()) {
            return Optional.empty();
        }
        double[][] slopes = new double[8][];
        for (int i = 0; i < slopes.length; i++) {
            Optional<SurfaceLine> more = moved(frame, a, b, i, 1);
            Optional<SurfaceLine> less = moved(frame, a, b, i, -1);
            if (more.isEmpty() || less.isEmpty()) {
                return Optional.empty();
            }
            double step = 2 * (i == 3 ? STEP_DEG : STEP_PX);
            slopes[i] = new double[] {
                (more.get().km() - less.get().km()) / step, (more.get().deg() - less.get().deg()) / step
            };
        }
        return Optional.of(new Distance(
                line.get().km(),
                sigma(slopes, covariance, pickSigmaPx, 0),
                line.get().deg(),
                sigma(slopes, covariance, pickSigmaPx, 1)));
    }

    private static double sigma(double[][] slopes, PlacementCovariance covariance, double pickSigmaPx, int which) {
        double variance = 0;
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                variance += slopes[i][which] * covariance.get(i, j) * slopes[j][which];
            }
            variance += Math.pow(slopes[4 + i][which] * pickSigmaPx, 2);
        }
        return Math.sqrt(Math.max(0, variance));
    }

    /** One of eight quantities moved by a step: centre x and y, radius, pole angle; then x and y of the two places. */
    private static Optional<SurfaceLine> moved(DiscFrame frame, PixelPoint a, PixelPoint b, int which, int sense) {
        double px = sense * STEP_PX;
        Placement p = frame.placement();
        Placement placed = new Placement(
                p.centreXPx() + (which == 0 ? px : 0),
                p.centreYPx() + (which == 1 ? px : 0),
                p.equatorialRadiusPx() + (which == 2 ? px : 0),
                p.poleAngleDeg() + (which == 3 ? sense * STEP_DEG : 0),
                p.mirrored());
        PixelPoint first = new PixelPoint(a.xPx() + (which == 4 ? px : 0), a.yPx() + (which == 5 ? px : 0));
        PixelPoint second = new PixelPoint(b.xPx() + (which == 6 ? px : 0), b.yPx() + (which == 7 ? px : 0));
        return line(frame, placed, first, second);
    }

    private static Optional<SurfaceLine> line(DiscFrame frame, Placement placed, PixelPoint a, PixelPoint b) {
        DiscFrame moved = new DiscFrame(frame.disc(), placed);
        Optional<SurfacePoint> first = moved.locate(a.xPx(), a.yPx());
        Optional<SurfacePoint> second = moved.locate(b.xPx(), b.yPx());
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(SurfaceLine.between(
                frame.disc().planet().globe().figure(),
                first.get().latGraphicDeg(),
                second.get().latGraphicDeg(),
                second.get().fromMeridianDeg() - first.get().fromMeridianDeg()));
    }
}
