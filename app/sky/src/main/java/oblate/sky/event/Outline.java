/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

/**
 * The outline of a planet as seen: an ellipse with semi-axes 1 (along x) and {@code axisRatio} (along y).
 *
 * @param axisRatio short over long axis, 0…1
 */
record Outline(double axisRatio) {
    private static final int MOST_STEPS = 60;

    /** Nearer the long axis than this (short axes) a point counts as on it. */
    private static final double ON_AXIS = 1e-14;

    /** Distance of a point from the ellipse, negative inside. As the distance to the edge of a convex figure it is a convex function of place. */
    double distance(double x, double y) {
        double[] foot = foot(x, y);
        double away = Math.hypot(x - foot[0], y - foot[1]);
        return Math.hypot(x, y / axisRatio) < 1 ? -away : away;
    }

    /**
     * The point of the ellipse nearest a point.
     *
     * <p>With e the semi-axes, the foot is eᵢ²·pᵢ / (s + eᵢ²), scaled so that e = (√r, 1): s is the one root above −1 of
     * F(s) = (√r·p₀/(s + r))² + (p₁/(s + 1))² − 1. F falls and is convex there, so Newton from a point where F ≥ 0 climbs to the root without
     * overshooting.
     */
    double[] foot(double x, double y) {
        double p0 = Math.abs(x) / axisRatio;
        double p1 = Math.abs(y) / axisRatio < ON_AXIS ? 0 : Math.abs(y) / axisRatio;
        double r = 1 / (axisRatio * axisRatio);
        double root = Math.sqrt(r);
        double foot0;
        double foot1;
        if (p1 == 0 && (p0 == 0 || p0 * root < r - 1)) {
            // on the long axis between the centres of curvature: two feet, either will do
            double cos = p0 == 0 ? 0 : p0 * root / (r - 1);
            foot0 = root * cos;
            foot1 = Math.sqrt(Math.max(0, 1 - cos * cos));
        } else {
            double s = newton(p0, p1, r, root);
            foot0 = r * p0 / (s + r);
            foot1 = p1 == 0 ? 0 : p1 / (s + 1);
        }
        return new double[] {Math.copySign(foot0 * axisRatio, x), Math.copySign(foot1 * axisRatio, y)};
    }

    private static double newton(double p0, double p1, double r, double root) {
        double s = Math.max(p1 - 1, root * p0 - r);
        for (int i = 0; i < MOST_STEPS; i++) {
            double u = root * p0 / (s + r);
            double v = p1 == 0 ? 0 : p1 / (s + 1);
            double f = u * u + v * v - 1;
            double slope = -2 * (u * u / (s + r) + (p1 == 0 ? 0 : v * v / (s + 1)));
            if (slope == 0) {
                return s;
            }
            double step = -f / slope;
            s += step;
            if (Math.abs(step) <= 1e-15 * (1 + Math.abs(s))) {
                return s;
            }
        }
        return s;
    }
}
