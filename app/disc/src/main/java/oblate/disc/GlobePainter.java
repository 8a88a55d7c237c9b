/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/**
 * Draws the bare globe, without belts and blur, on a plane: light by incidence and emission, averaged over each pixel near limb and terminator.
 * Holds its images, so one per thread.
 */
final class GlobePainter {
    /** Emission cosines below this are taken as this, so that negative exponents stay finite. */
    private static final double LEAST_EMISSION = 0.02;

    private static final int SUB = 4;
    /** Where rings are looked for (equatorial radii), beyond the bright ones on both sides. */
    private static final double RING_LEAST = 1.2;

    private static final double RING_MOST = 2.3;

    final int width;
    final int height;
    /** Light, 0…1. */
    final float[] light;
    /** Light × ln of the incidence cosine. */
    final float[] bySun;
    /** Light × ln of the emission cosine. */
    final float[] byView;
    /** What more light there would be if all of it were hard. */
    final float[] byHard;
    /** Coordinates of the pattern at the pixel, or at the limb beneath it. */
    final float[] u;

    final float[] v;
    /** Sight X at the pixel, or at the limb beneath it. */
    final float[] across;
    /** Share of the pixel covered by lit rings; null without rings. */
    final float[] ringLight;
    /** Place on the ring knots at the pixel. */
    final float[] ringKnot;
    /** Pixels the model does not know: rings before the globe and their shadow on it. */
    final boolean[] unknown;
    /** Distance from the outline (px), positive outside. */
    final float[] fromLimb;

    private final GlobeView view;
    private final Pattern pattern;
    private final int hand;
    private double sumLight;
    private double sumSun;
    private double sumView;
    private double sumHard;

    GlobePainter(GlobeView view, boolean mirrored, Pattern pattern, int width, int height) {
        this.view = view;
        this.pattern = pattern;
        this.width = width;
        this.height = height;
        hand = mirrored ? -1 : 1;
        light = new float[width * height];
        bySun = new float[width * height];
        byView = new float[width * height];
        byHard = new float[width * height];
        u = new float[width * height];
        v = new float[width * height];
        across = new float[width * height];
        fromLimb = new float[width * height];
        boolean ringed = pattern.rings() > 0;
        ringLight = new float[ringed ? width * height : 0];
        ringKnot = new float[ringLight.length];
        unknown = new boolean[ringLight.length];
    }

    /** Draws with the parameters of a vector laid out as {@link Slot} says. */
    void paint(double[] p) {
        Arrays.fill(light, 0);
        Arrays.fill(bySun, 0);
        Arrays.fill(byView, 0);
        Arrays.fill(byHard, 0);
        double r = p[Slot.RADIUS];
        double rightX = hand * Math.cos(p[Slot.ANGLE]) / r;
        double rightY = -hand * Math.sin(p[Slot.ANGLE]) / r;
        double upX = -Math.sin(p[Slot.ANGLE]) / r;
        double upY = -Math.cos(p[Slot.ANGLE]) / r;
        for (int iy = 0; iy < height; iy++) {
            for (int ix = 0; ix < width; ix++) {
                double dx = ix - p[Slot.X];
                double dy = iy - p[Slot.Y];
                double x = dx * rightX + dy * rightY;
                double y = dx * upX + dy * upY;
                int i = iy * width + ix;
                double high = y / view.axisRatio;
                double rho = Math.sqrt(x * x + high * high);
                double limb = rho > 0 ? r * Math.sqrt(x * x + y * y) * (1 - 1 / rho) : -r;
                fromLimb[i] = (float) limb;
                coordinates(i, x, y, dx / r, dy / r, rho);
                if (limb < -2.5) {
                    inner(i, p, x, y, rightX, rightY, upX, upY);
                } else if (limb < 1) {
                    averaged(i, p, x, y, rightX, rightY, upX, upY);
                }
                if (ringLight.length > 0) {
                    ring(i, x, y, 1 / r);
                }
            }
        }
    }

    private void coordinates(int i, double x, double y, double dx, double dy, double rho) {
        double shrink = rho > 0.999 ? 0.999 / rho : 1;
        across[i] = (float) (x * shrink);
        if (pattern.belts()) {
            double yy = y * shrink;
            double z = view.depth(x * shrink, yy);
            u[i] = (float) pattern.knot(view.bodyZ(yy, z) / view.q);
            v[i] = 0;
        } else {
            u[i] = (float) pattern.knot(dx * shrink);
            v[i] = (float) pattern.knot(dy * shrink);
        }
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // plain numbers of an inner loop
    private void inner(int i, double[] p, double x, double y, double rightX, double rightY, double upX, double upY) {
        double z = view.depth(x, y);
        double bx = view.bodyX(y, z);
        double nz = view.k * view.bodyZ(y, z);
        double incidence = (bx * view.sunX + x * view.sunY + nz * view.sunZ) / Math.sqrt(bx * bx + x * x + nz * nz);
        if (incidence < 3 / p[Slot.RADIUS]) {
            if (incidence > -3 / p[Slot.RADIUS]) {
                averaged(i, p, x, y, rightX, rightY, upX, upY);
            }
            return;
        }
        sumLight = 0;
        sumSun = 0;
        sumView = 0;
        sumHard = 0;
        add(p, x, y);
        light[i] = (float) sumLight;
        bySun[i] = (float) sumSun;
        byView[i] = (float) sumView;
        byHard[i] = (float) sumHard;
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // plain numbers of an inner loop
    private void averaged(int i, double[] p, double x, double y, double rightX, double rightY, double upX, double upY) {
        sumLight = 0;
        sumSun = 0;
        sumView = 0;
        sumHard = 0;
        for (int sy = 0; sy < SUB; sy++) {
            double oy = (sy + 0.5) / SUB - 0.5;
            for (int sx = 0; sx < SUB; sx++) {
                double ox = (sx + 0.5) / SUB - 0.5;
                add(p, x + ox * rightX + oy * rightY, y + ox * upX + oy * upY);
            }
        }
        light[i] = (float) (sumLight / (SUB * SUB));
        bySun[i] = (float) (sumSun / (SUB * SUB));
        byView[i] = (float) (sumView / (SUB * SUB));
        byHard[i] = (float) (sumHard / (SUB * SUB));
    }

    private void add(double[] p, double x, double y) {
        double z = view.depth(x, y);
        if (Double.isNaN(z)) {
            return;
        }
        double bx = view.bodyX(y, z);
        double nz = view.k * view.bodyZ(y, z);
        double length = Math.sqrt(bx * bx + x * x + nz * nz);
        double incidence = (bx * view.sunX + x * view.sunY + nz * view.sunZ) / length;
        if (incidence <= 0) {
            return;
        }
        double emission = Math.max(LEAST_EMISSION, (bx * view.cosB + nz * view.sinB) / length);
        double logSun = Math.log(Math.max(1e-4, incidence));
        double logView = Math.log(emission);
        double soft = Math.exp(p[Slot.SUN] * logSun + p[Slot.VIEW] * logView);
        double hard = 2 * incidence / (incidence + emission);
        double share = p[Slot.HARD];
        sumLight += (1 - share) * soft + share * hard;
        sumSun += (1 - share) * soft * logSun;
        sumView += (1 - share) * soft * logView;
        sumHard += hard - soft;
    }

    /** Rings at a pixel, by 4 × 4 points where an edge may cross it; turning the little square with the picture is not worth the while. */
    private void ring(int i, double x, double y, double pixel) {
        double middle = view.ringRadius(x, y);
        ringKnot[i] = (float) pattern.ringKnot(middle);
        ringLight[i] = 0;
        unknown[i] = false;
        double reach = pixel * Math.max(1, 1 / Math.max(1e-4, Math.abs(view.sinB)));
        boolean offGlobe = fromLimb[i] > 1.5;
        if (offGlobe && (middle < RING_LEAST - reach || middle > RING_MOST + reach)) {
            return;
        }
        boolean whole = offGlobe && middle > RING_LEAST + reach && middle < RING_MOST - reach;
        if (whole && plainlyLit(x, y, 3 * reach)) {
            ringLight[i] = 1;
            return;
        }
        averagedRing(i, x, y, pixel);
    }

    /** Whether a point of the ring plane is so far from the globe's shadow that its pixel is lit all over. */
    private boolean plainlyLit(double x, double y, double margin) {
        double bx = -y / (Math.abs(view.sinB) < 1e-4 ? 1e-4 : view.sinB);
        double along = bx * view.sunX + x * view.sunY;
        return along > margin || Math.abs(bx * view.sunY - x * view.sunX) > 1 + margin;
    }

    private void averagedRing(int i, double x, double y, double pixel) {
        double covered = 0;
        double knots = 0;
        boolean crossing = false;
        for (int s = 0; s < SUB * SUB; s++) {
            double px = x + ((s % SUB + 0.5) / SUB - 0.5) * pixel;
            double py = y + ((s / SUB + 0.5) / SUB - 0.5) * pixel;
            double r = view.ringRadius(px, py);
            double z = view.depth(px, py);
            boolean onGlobe = !Double.isNaN(z);
            if (r > RING_LEAST && r < RING_MOST && (!onGlobe || view.ringInFront(py))) {
                double bx = -py / (Math.abs(view.sinB) < 1e-4 ? 1e-4 : view.sinB);
                crossing |= onGlobe;
                if (!onGlobe && !view.inShadow(bx, px, 0)) {
                    covered++;
                    knots += pattern.ringKnot(r);
                }
            }
            crossing |= onGlobe && view.ringShadow(view.bodyX(py, z), px, view.bodyZ(py, z));
        }
        ringLight[i] = (float) (covered / (SUB * SUB));
        if (covered > 0) {
            ringKnot[i] = (float) (knots / covered);
        }
        unknown[i] = crossing;
    }
}
