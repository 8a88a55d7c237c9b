/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Sharpens a place on a spot to the spot's centre, as {@link SpotFinder#refine} offers it. Immutable. */
final class SpotCentre {
    private static final double SURROUND = 1.7;
    private static final double LEAST_SIGMA_PX = 0.1;
    private static final double PEAK_SHARE = 0.3;
    /** Neighbouring pixels of a finished picture err together over about this many. */
    private static final double CORRELATION_PX = 2.5;

    private final Plane plane;
    private final DiscFrame frame;
    private final MapStrip map;
    private final ZonalMean mean;

    SpotCentre(Plane plane, DiscFrame frame, MapStrip map, ZonalMean mean) {
        this.plane = plane;
        this.frame = frame;
        this.map = map;
        this.mean = mean;
    }

    Optional<SpotFinder.Refined> refine(double xPx, double yPx, double radiusPx) {
        double r = Math.max(1.5, radiusPx);
        double x = xPx;
        double y = yPx;
        double[] ring = ring(x, y, r);
        double sum = 0;
        double weight = 0;
        for (double[] s : inside(x, y, r)) {
            double w = Math.exp(-2 * s[3] * s[3] / (r * r));
            sum += w * (s[2] - ring[0]);
            weight += w;
        }
        if (weight == 0 || !(Math.abs(sum / weight) > 0.5 * ring[1])) {
            return Optional.empty();
        }
        int sign = sum > 0 ? 1 : -1;
        double sigma = Double.NaN;
        for (int round = 0; round < 12; round++) {
            double[] c = centroid(x, y, r, sign, ring);
            if (c.length == 0 || Math.hypot(c[0] - xPx, c[1] - yPx) > r + 1) {
                return Optional.empty();
            }
            double moved = Math.hypot(c[0] - x, c[1] - y);
            x = c[0];
            y = c[1];
            sigma = c[2];
            ring = ring(x, y, r);
            if (moved < 0.01) {
                break;
            }
        }
        return Optional.of(new SpotFinder.Refined(new PixelPoint(x, y), Math.hypot(sigma, LEAST_SIGMA_PX), sign > 0));
    }

    /** Difference of a pixel from its latitude's mean; NaN off the disc. */
    private double residual(double x, double y) {
        Optional<SurfacePoint> place = frame.locate(x, y);
        if (place.isEmpty()) {
            return Double.NaN;
        }
        double east = place.get().fromMeridianDeg() * frame.view().eastSign;
        return plane.sample(x, y) - mean.at(east, map.rowOf(place.get().latGraphicDeg()));
    }

    /** Pixels within a radius: x, y, residual, distance. */
    private List<double[]> inside(double cx, double cy, double r) {
        List<double[]> list = new ArrayList<>();
        for (int y = (int) Math.ceil(cy - r); y <= cy + r; y++) {
            for (int x = (int) Math.ceil(cx - r); x <= cx + r; x++) {
                double d = Math.hypot(x - cx, y - cy);
                double v = d <= r ? residual(x, y) : Double.NaN;
                if (!Double.isNaN(v)) {
                    list.add(new double[] {x, y, v, d});
                }
            }
        }
        return list;
    }

    /** Median and scatter of the residual in the ring outside a spot. */
    private double[] ring(double cx, double cy, double r) {
        double[] values = inside(cx, cy, SURROUND * r).stream()
                .filter(s -> s[3] > r)
                .mapToDouble(s -> s[2])
                .sorted()
                .toArray();
        if (values.length < 5) {
            return new double[] {0, 1e-3};
        }
        double median = values[values.length / 2];
        double scatter =
                Math.max(1e-3, (values[(int) (0.84 * values.length)] - values[(int) (0.16 * values.length)]) / 2);
        return new double[] {median, scatter};
    }

    private double[] centroid(double cx, double cy, double r, int sign, double[] ring) {
        List<double[]> pixels = inside(cx, cy, 1.2 * r);
        double peak = 0;
        for (double[] s : pixels) {
            peak = Math.max(peak, sign * (s[2] - ring[0]) * Math.exp(-s[3] * s[3] / (r * r)));
        }
        double sx = 0;
        double sy = 0;
        double sum = 0;
        double spread = 0;
        for (double[] s : pixels) {
            double window = Math.exp(-s[3] * s[3] / (r * r));
            double excess = sign * (s[2] - ring[0]) - PEAK_SHARE * peak;
            if (excess > 0) {
                double w = excess * window;
                sx += w * s[0];
                sy += w * s[1];
                sum += w;
                spread += window * window * s[3] * s[3] / 2;
            }
        }
        if (sum <= 0) {
            return new double[0];
        }
        double noise = Math.min(ring[1], 0.5 * peak);
        return new double[] {sx / sum, sy / sum, CORRELATION_PX * noise * Math.sqrt(spread) / sum};
    }
}
