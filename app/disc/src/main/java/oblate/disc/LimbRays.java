/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Edge points along rays, by the steepest fall of brightness along the normals of the expected limb on its sunlit side. Good for starts and for
 * judging how ragged a limb is; the radius they give is small by a third of the blur on limb-darkened discs, so they are never the answer.
 */
final class LimbRays {
    private static final int RAYS = 240;
    private static final double STEP_PX = 0.5;
    private static final int FIT_STEPS = 12;

    /** Directions within 37° of an axis count for it. */
    private static final double OVAL_WEIGHT = 0.28;

    private final GlobeView view;
    private final Plane picture;

    /**
     * What the rays say.
     *
     * @param place centre and radius that fit the edge points, the rest as before
     * @param scatterPx scatter of the points about that outline (px)
     * @param points how many
     * @param expected how many rays had a sunlit limb, in the frame or not
     * @param contrast median fall of brightness across the edge, in units of the picture's bright parts
     * @param ovalPx how far the limb lies outside the outline at the equator, less the same at the poles (px): positive when it is flatter
     * @param athwartPx the same for the directions half-way between pole and equator: not 0 when the light is flattened along another axis
     */
    record Edge(
            Placement place,
            double scatterPx,
            int points,
            int expected,
            double contrast,
            double ovalPx,
            double athwartPx) {}

    LimbRays(GlobeView view, Plane picture) {
        this.view = view;
        this.picture = picture;
    }

    /** Looks within a share of the radius on both sides of an outline and fits centre and radius to what is found. */
    Edge trace(Placement start, double reach) {
        double[][] found = new double[RAYS][];
        int expected = 0;
        int n = 0;
        for (int i = 0; i < RAYS; i++) {
            double t = 2 * Math.PI * i / RAYS;
            if (!lit(Math.cos(t), view.axisRatio * Math.sin(t))) {
                continue;
            }
            expected++;
            double[] point = ray(start, t, reach);
            if (point != null) {
                found[n++] = point;
            }
        }
        found = Arrays.copyOf(found, n);
        double[] falls = Arrays.stream(found).mapToDouble(f -> f[3]).sorted().toArray();
        double contrast = n == 0 ? 0 : falls[n / 2];
        if (n < 12) {
            return new Edge(start, Double.NaN, n, expected, contrast, 0, 0);
        }
        return fitted(start, found, expected, contrast);
    }

    /** Whether the Sun reaches the limb at a point of the outline, or stands on its horizon all round at opposition. */
    private boolean lit(double x, double y) {
        double z = view.depth(0.9995 * x, 0.9995 * y);
        double bx = view.bodyX(y, z);
        return bx * view.sunX + x * view.sunY + view.k * view.bodyZ(y, z) * view.sunZ > 0;
    }

    /** Offset from the outline along its normal, the normal in pixels, and the fall of brightness; null when nothing is seen. */
    private double[] ray(Placement start, double t, double reach) {
        double r = start.equatorialRadiusPx();
        double a = Math.toRadians(start.poleAngleDeg());
        int hand = start.mirrored() ? -1 : 1;
        double x = Math.cos(t);
        double y = view.axisRatio * Math.sin(t);
        double nx = view.axisRatio * Math.cos(t);
        double ny = Math.sin(t);
        double length = Math.hypot(nx, ny);
        double px = start.centreXPx() + r * (hand * x * Math.cos(a) - y * Math.sin(a));
        double py = start.centreYPx() + r * (-hand * x * Math.sin(a) - y * Math.cos(a));
        double dx = (hand * nx * Math.cos(a) - ny * Math.sin(a)) / length;
        double dy = (-hand * nx * Math.sin(a) - ny * Math.cos(a)) / length;
        int half = (int) Math.ceil(Math.max(4, reach * r) / STEP_PX);
        double[] along = new double[2 * half + 1];
        for (int k = -half; k <= half; k++) {
            double s = k * STEP_PX;
            along[k + half] = (picture.sample(px + s * dx, py + s * dy)
                            + picture.sample(px + s * dx + dy, py + s * dy - dx)
                            + picture.sample(px + s * dx - dy, py + s * dy + dx))
                    / 3;
        }
        int best = -1;
        double steepest = 0;
        for (int k = 2; k < along.length - 2; k++) {
            double fall = along[k - 2] + along[k - 1] - along[k + 1] - along[k + 2];
            if (fall > steepest) {
                steepest = fall;
                best = k;
            }
        }
        return best < 0 ? null : new double[] {(best - half) * STEP_PX, dx, dy, steepest, t};
    }

    /** Iterated least squares with Cauchy weights for a shift and a change of radius. */
    private Edge fitted(Placement start, double[][] found, int expected, double contrast) {
        double[] shift = new double[3];
        double scatter = start.equatorialRadiusPx();
        for (int step = 0; step < FIT_STEPS; step++) {
            double[] size = new double[found.length];
            double[][] normal = new double[3][4];
            for (int i = 0; i < found.length; i++) {
                double[] f = found[i];
                double[] row = {f[1], f[2], grow(f[4])};
                double rest = f[0] - row[0] * shift[0] - row[1] * shift[1] - row[2] * shift[2];
                size[i] = Math.abs(rest);
                double w = 1 / (1 + rest * rest / (4 * scatter * scatter));
                for (int j = 0; j < 3; j++) {
                    for (int k = 0; k < 3; k++) {
                        normal[j][k] += w * row[j] * row[k];
                    }
                    normal[j][3] += w * row[j] * f[0];
                }
            }
            shift = solve(normal);
            Arrays.sort(size);
            scatter = Math.max(0.1, 1.4826 * size[size.length / 2]);
        }
        double r = Math.max(1, start.equatorialRadiusPx() + shift[2]);
        Placement place = new Placement(
                start.centreXPx() + shift[0], start.centreYPx() + shift[1], r, start.poleAngleDeg(), start.mirrored());
        return new Edge(
                place,
                scatter,
                found.length,
                expected,
                contrast,
                oval(found, shift, t -> Math.cos(2 * t)),
                oval(found, shift, t -> Math.sin(2 * t)));
    }

    /** Median offset where a direction's weight is high less the one where it is low, after shift and radius were fitted. */
    private double oval(double[][] found, double[] shift, DoubleUnaryOperator weight) {
        double[] high = new double[found.length];
        double[] low = new double[found.length];
        int h = 0;
        int l = 0;
        for (double[] f : found) {
            double rest = f[0] - f[1] * shift[0] - f[2] * shift[1] - grow(f[4]) * shift[2];
            double w = weight.applyAsDouble(f[4]);
            if (w > OVAL_WEIGHT) {
                high[h++] = rest;
            } else if (w < -OVAL_WEIGHT) {
                low[l++] = rest;
            }
        }
        if (h < 8 || l < 8) {
            return 0;
        }
        Arrays.sort(high, 0, h);
        Arrays.sort(low, 0, l);
        return high[h / 2] - low[l / 2];
    }

    /** How far the outline moves along its normal per unit of equatorial radius. */
    private double grow(double t) {
        double b = view.axisRatio;
        return b / Math.hypot(b * Math.cos(t), Math.sin(t));
    }

    /** Three equations by elimination; a ridge keeps half-seen limbs from running away. */
    static double[] solve(double[][] m) {
        for (int j = 0; j < 3; j++) {
            m[j][j] += 1e-3;
        }
        for (int j = 0; j < 3; j++) {
            for (int i = 0; i < 3; i++) {
                if (i != j) {
                    double f = m[i][j] / m[j][j];
                    for (int k = j; k < 4; k++) {
                        m[i][k] -= f * m[j][k];
                    }
                }
            }
        }
        return new double[] {m[0][3] / m[0][0], m[1][3] / m[1][1], m[2][3] / m[2][2]};
    }
}
