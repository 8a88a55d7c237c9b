/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Finds small bright things beside a placed disc and its rings, above whatever halo the planet has. One use, one thread. */
final class PointFinder {
    /** Largest moon beside its planet (equatorial radii of the planet). */
    private static final double LARGEST_MOON = 0.037;

    private static final double LIMB_MARGIN_PX = 4;
    private static final double RING_MARGIN = 1.03;
    private static final double SOFTENING_PX = 1.2;
    private static final int MOST_CANDIDATES = 400;
    private static final int MOST = 60;
    private static final double LEAST_PEAK = 0.008;
    private static final double LEAST_SIGNAL = 6;
    private static final double LONGEST = 1.8;
    private static final double PLACE_FLOOR_PX = 0.1;

    private final Plane plane;
    private final GlobeView view;
    private final DiscFrame frame;
    private final double moonPx;
    private final float[] soft;

    PointFinder(Plane plane, DiscFrame frame) {
        this.plane = plane;
        this.frame = frame;
        view = frame.view();
        moonPx = Math.max(1.5, LARGEST_MOON * frame.placement().equatorialRadiusPx());
        soft = softened();
    }

    /** Whether a pixel is clear of globe and rings. */
    boolean beside(double xPx, double yPx) {
        double r = frame.placement().equatorialRadiusPx();
        double x = frame.sightX(xPx, yPx);
        double y = frame.sightY(xPx, yPx);
        double margin = 1 + (LIMB_MARGIN_PX + moonPx) / r;
        double high = y / view.axisRatio;
        if (x * x + high * high < margin * margin) {
            return false;
        }
        if (view.ringOuter == 0) {
            return true;
        }
        double tilt = Math.max(Math.abs(view.sinB), 3 / r / view.ringOuter);
        double along = y / tilt;
        return Math.sqrt(x * x + along * along) > view.ringOuter * RING_MARGIN;
    }

    /** The brightest, at most sixty, brightest first. */
    List<PointLight> find() {
        List<int[]> tops = new ArrayList<>();
        int w = plane.width();
        for (int y = 2; y < plane.height() - 2; y++) {
            for (int x = 2; x < w - 2; x++) {
                if (isTop(y * w + x) && beside(x, y)) {
                    tops.add(new int[] {x, y});
                }
            }
        }
        tops.sort(Comparator.comparingDouble(t -> -soft[t[1] * w + t[0]]));
        List<PointLight> found = new ArrayList<>();
        for (int[] top : tops.subList(0, Math.min(MOST_CANDIDATES, tops.size()))) {
            PointLight light = measured(top[0], top[1]);
            if (light != null && found.stream().noneMatch(f -> near(f, light))) {
                found.add(light);
            }
        }
        found.sort(Comparator.comparingDouble(f -> -f.peak()));
        return List.copyOf(found.subList(0, Math.min(MOST, found.size())));
    }

    private boolean near(PointLight a, PointLight b) {
        return Math.hypot(a.xPx() - b.xPx(), a.yPx() - b.yPx()) < moonPx + 3;
    }

    private boolean isTop(int i) {
        float v = soft[i];
        if (Float.isNaN(v)) {
            return false;
        }
        for (int dy = -1; dy <= 1; dy++) {
            for (int dx = -1; dx <= 1; dx++) {
                int j = i + dy * plane.width() + dx;
                if (j != i && (soft[j] > v || soft[j] == v && j < i)) {
                    return false;
                }
            }
        }
        return true;
    }

    private float[] softened() {
        float[] in = plane.samples().clone();
        for (int i = 0; i < in.length; i++) {
            if (Float.isNaN(in[i])) {
                in[i] = 0;
            }
        }
        float[] out = new float[in.length];
        new GaussianBlur(plane.width(), plane.height()).blur(in, out, SOFTENING_PX);
        return out;
    }

    /** Middle, width and height above a sloping background taken from a ring of pixels round it; null when it is none. */
    private PointLight measured(int x0, int y0) {
        double inner = moonPx + 5;
        double outer = inner + 4;
        double[] back = background(x0, y0, inner, outer);
        if (back == null) {
            return null;
        }
        double peak = soft[y0 * plane.width() + x0] - back[0];
        if (peak < Math.max(LEAST_PEAK, LEAST_SIGNAL * back[3] / 2)) {
            return null;
        }
        double[] m = moments(x0, y0, back, inner - 1, 0.3 * peak);
        if (m[0] <= 0) {
            return null;
        }
        double x = m[1] / m[0];
        double y = m[2] / m[0];
        double xx = m[3] / m[0] - x * x;
        double yy = m[4] / m[0] - y * y;
        double xy = m[5] / m[0] - x * y;
        double half = Math.hypot((xx - yy) / 2, xy);
        double longSide = Math.sqrt(Math.max(0.05, (xx + yy) / 2 + half));
        double shortSide = Math.sqrt(Math.max(0.05, (xx + yy) / 2 - half));
        double width = Math.sqrt(Math.max(0.1, xx + yy));
        if (longSide > LONGEST * shortSide || width > moonPx + 3 || Math.hypot(x, y) > moonPx + 2) {
            return null;
        }
        return new PointLight(x0 + x, y0 + y, Math.hypot(PLACE_FLOOR_PX, 0.7 * width * back[3] / peak), peak, width);
    }

    private double[] moments(int x0, int y0, double[] back, double reach, double least) {
        double[] m = new double[6];
        int half = (int) Math.ceil(reach);
        for (int dy = -half; dy <= half; dy++) {
            for (int dx = -half; dx <= half; dx++) {
                float v = plane.at(x0 + dx, y0 + dy);
                if (dx * dx + dy * dy > reach * reach || Float.isNaN(v)) {
                    continue;
                }
                double above = v - back[0] - back[1] * dx - back[2] * dy - least;
                if (above > 0) {
                    m[0] += above;
                    m[1] += above * dx;
                    m[2] += above * dy;
                    m[3] += above * dx * dx;
                    m[4] += above * dy * dy;
                    m[5] += above * dx * dy;
                }
            }
        }
        return m;
    }

    /** Level, slopes and scatter of the surroundings by three rounds of clipped least squares; null when too little of them is clear. */
    private double[] background(int x0, int y0, double inner, double outer) {
        int half = (int) Math.ceil(outer);
        double[][] points = new double[(2 * half + 1) * (2 * half + 1)][];
        int n = 0;
        for (int dy = -half; dy <= half; dy++) {
            for (int dx = -half; dx <= half; dx++) {
                double d = Math.hypot(dx, dy);
                float v = plane.at(x0 + dx, y0 + dy);
                if (d >= inner && d <= outer && !Float.isNaN(v) && beside(x0 + dx, y0 + dy)) {
                    points[n++] = new double[] {dx, dy, v};
                }
            }
        }
        if (n < 40) {
            return null;
        }
        double[] fit = new double[3];
        double scatter = Double.POSITIVE_INFINITY;
        for (int round = 0; round < 3; round++) {
            double[][] normal = new double[3][4];
            for (int i = 0; i < n; i++) {
                double[] p = points[i];
                double rest = p[2] - fit[0] - fit[1] * p[0] - fit[2] * p[1];
                if (Math.abs(rest) < 3 * scatter) {
                    double[] row = {1, p[0], p[1]};
                    for (int j = 0; j < 3; j++) {
                        for (int k = 0; k < 3; k++) {
                            normal[j][k] += row[j] * row[k];
                        }
                        normal[j][3] += row[j] * p[2];
                    }
                }
            }
            fit = LimbRays.solve(normal);
            double[] rest = new double[n];
            for (int i = 0; i < n; i++) {
                rest[i] = Math.abs(points[i][2] - fit[0] - fit[1] * points[i][0] - fit[2] * points[i][1]);
            }
            Arrays.sort(rest);
            scatter = Math.max(1e-4, 1.4826 * rest[n / 2]);
        }
        return new double[] {fit[0], fit[1], fit[2], scatter};
    }
}
