/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/**
 * What a finished picture of a globe should look like, and how it changes with each parameter: light × pattern, blurred by a narrow core, a
 * negative ring (sharpening) and a wide halo, cut softly at black, toned, on a sloping background. Holds its images, so one per thread.
 *
 * <p>The derivatives are analytic: by place from the gradient, by angle from its moment, by radius from the gradient and the widths (an image blown
 * up together with its blur is only enlarged), by widths from the Laplacian (heat equation).
 */
final class ForwardModel {
    /** Rounds the tone curve at black, where a power has no slope. */
    private static final double TONE_FOOT = 0.01;

    final GlobePainter painter;
    final Pattern pattern;
    /** The picture as modelled. */
    final float[] value;
    /** Its derivatives by the parameters below {@link Slot#PATTERN}. */
    final float[][] slope = new float[Slot.PATTERN][];
    /** For each colour of the pattern, its derivative by the nearest hat of the colour. */
    final float[][] patternSlope;

    private final boolean clipped;
    private final double softness;
    private final int width;
    private final int height;
    private final SceneBlur blur;
    private final float[] scene;
    private final float[] sum;
    private final float[] gain;

    /**
     * @param clipped whether undershoot is cut at black
     * @param softness width of the corner there, from the picture's noise
     */
    ForwardModel(GlobeView view, boolean mirrored, Pattern pattern, Plane plane, boolean clipped, double softness) {
        this.pattern = pattern;
        this.clipped = clipped;
        this.softness = softness;
        width = plane.width();
        height = plane.height();
        painter = new GlobePainter(view, mirrored, pattern, width, height);
        blur = new SceneBlur(width, height);
        int n = width * height;
        value = new float[n];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = new float[n];
        }
        patternSlope = new float[pattern.colours()][n];
        scene = new float[n];
        sum = new float[n];
        gain = new float[n];
    }

    /** Draws the picture and its derivatives; those by the pattern only when asked, because they change little from step to step. */
    void evaluate(double[] p, boolean withPattern) {
        painter.paint(p);
        float[] brightness = brightness(p);
        times(painter.bySun, brightness, scene);
        blur.smooth(scene, p, slope[Slot.SUN]);
        times(painter.byView, brightness, scene);
        blur.smooth(scene, p, slope[Slot.VIEW]);
        times(painter.byHard, brightness, scene);
        blur.smooth(scene, p, slope[Slot.HARD]);
        times(painter.light, brightness, scene);
        addRings(p);
        blur.smoothApart(scene, p, sum);
        shapeSlopes(p);
        finish(p);
        if (withPattern) {
            patternSlopes(p);
        }
    }

    private static void times(float[] a, float[] b, float[] out) {
        for (int i = 0; i < out.length; i++) {
            out[i] = a[i] * b[i];
        }
    }

    private float[] brightness(double[] p) {
        float[] out = gain;
        int[] hat = new int[4];
        double[] weight = new double[4];
        for (int i = 0; i < out.length; i++) {
            if (painter.light[i] == 0) {
                out[i] = 0;
                continue;
            }
            int n = pattern.hats(painter.u[i], painter.v[i], hat, weight);
            double b = 0;
            for (int k = 0; k < n; k++) {
                b += weight[k] * p[Slot.PATTERN + hat[k]];
            }
            out[i] = (float) (b * (1 + p[Slot.LEAN] * painter.across[i]));
        }
        return out;
    }

    private void addRings(double[] p) {
        int first = Slot.PATTERN + pattern.globeSize();
        for (int i = 0; i < painter.ringLight.length; i++) {
            if (painter.ringLight[i] > 0) {
                int k = Math.min(pattern.rings() - 2, (int) painter.ringKnot[i]);
                double f = painter.ringKnot[i] - k;
                scene[i] += (float) (painter.ringLight[i] * ((1 - f) * p[first + k] + f * p[first + k + 1]));
            }
        }
    }

    private static double slopeAt(float[] f, int i, int step) {
        return (8 * (f[i + step] - f[i - step]) - (f[i + 2 * step] - f[i - 2 * step])) / 12.0;
    }

    private double laplacian(float[] f, int i) {
        return (16 * ((double) f[i + 1] + f[i - 1] + f[i + width] + f[i - width])
                        - ((double) f[i + 2] + f[i - 2] + f[i + 2 * width] + f[i - 2 * width])
                        - 60 * (double) f[i])
                / 12.0;
    }

    /** Derivatives before clip and tone. The outermost two pixels stay at zero: nothing is there. */
    private void shapeSlopes(double[] p) {
        float[] core = blur.core;
        float[] ring = blur.ring;
        float[] halo = blur.halo;
        double s = p[Slot.CORE];
        double r = p[Slot.RING];
        double h = p[Slot.HALO];
        double w = p[Slot.RING_WIDTH];
        double hw = p[Slot.HALO_WIDTH];
        for (int y = 2; y < height - 2; y++) {
            for (int x = 2; x < width - 2; x++) {
                int i = y * width + x;
                double gx = slopeAt(sum, i, 1);
                double gy = slopeAt(sum, i, width);
                double dx = x - p[Slot.X];
                double dy = y - p[Slot.Y];
                double ringL = laplacian(ring, i);
                double haloL = laplacian(halo, i);
                double byCore = s * ((1 + r - h) * laplacian(core, i) - r * w * w * ringL + h * hw * hw * haloL);
                slope[Slot.X][i] = (float) -gx;
                slope[Slot.Y][i] = (float) -gy;
                slope[Slot.ANGLE][i] = (float) (gy * dx - gx * dy);
                slope[Slot.RADIUS][i] = (float) (-(gx * dx + gy * dy + s * byCore) / p[Slot.RADIUS]);
                slope[Slot.CORE][i] = (float) byCore;
                slope[Slot.RING][i] = core[i] - ring[i];
                slope[Slot.RING_WIDTH][i] = (float) (-r * s * s * w * ringL);
                slope[Slot.HALO][i] = halo[i] - core[i];
                slope[Slot.HALO_WIDTH][i] = (float) (h * s * s * hw * haloL);
                slope[Slot.LEAN][i] = sum[i] * painter.across[i] / (float) (1 + p[Slot.LEAN] * painter.across[i]);
            }
        }
    }

    /** Clip, tone and background; the derivatives are carried through. */
    private void finish(double[] p) {
        double tone = p[Slot.TONE];
        double foot = Math.pow(TONE_FOOT, tone);
        double footSlope = tone * foot / TONE_FOOT;
        for (int i = 0; i < value.length; i++) {
            double signal = sum[i] - p[Slot.BLACK];
            double pass = 1;
            if (clipped) {
                double t = signal / softness;
                if (t < 6) {
                    pass = t < -6 ? 0 : NormalCurve.below(t);
                    signal = t < -6 ? 0 : signal * pass + softness * NormalCurve.density(t);
                }
            }
            double toned;
            double byTone;
            if (signal <= 0) {
                toned = footSlope * signal;
                pass *= footSlope;
                byTone = 0;
            } else {
                double log = Math.log(signal + TONE_FOOT);
                double power = Math.exp(tone * log);
                toned = power - foot;
                pass *= tone * power / (signal + TONE_FOOT);
                byTone = power * log - foot * Math.log(TONE_FOOT);
            }
            gain[i] = (float) pass;
            slope[Slot.BLACK][i] = -1;
            double dx = (i % width - p[Slot.X]) / p[Slot.RADIUS];
            double dy = (double) (i / width - p[Slot.Y]) / p[Slot.RADIUS];
            value[i] = (float) (p[Slot.BACK] + p[Slot.BACK_X] * dx + p[Slot.BACK_Y] * dy + toned);
            slope[Slot.TONE][i] = (float) byTone;
            slope[Slot.BACK][i] = 1;
            slope[Slot.BACK_X][i] = (float) dx;
            slope[Slot.BACK_Y][i] = (float) dy;
        }
        for (int k = 0; k < Slot.PATTERN; k++) {
            if (k != Slot.TONE && k != Slot.BACK && k != Slot.BACK_X && k != Slot.BACK_Y) {
                times(slope[k], gain, slope[k]);
            }
        }
    }

    private void patternSlopes(double[] p) {
        for (int c = 0; c < patternSlope.length; c++) {
            Arrays.fill(scene, 0);
            if (c < pattern.globeColours()) {
                globeHats(p, c);
            } else {
                ringHats(c - pattern.globeColours());
            }
            blur.smooth(scene, p, patternSlope[c]);
            times(patternSlope[c], gain, patternSlope[c]);
        }
    }

    private void globeHats(double[] p, int colour) {
        int[] hat = new int[4];
        double[] weight = new double[4];
        for (int i = 0; i < scene.length; i++) {
            if (painter.light[i] == 0) {
                continue;
            }
            int n = pattern.hats(painter.u[i], painter.v[i], hat, weight);
            for (int k = 0; k < n; k++) {
                if (pattern.colour(hat[k]) == colour) {
                    scene[i] = (float) (weight[k] * painter.light[i] * (1 + p[Slot.LEAN] * painter.across[i]));
                }
            }
        }
    }

    private void ringHats(int colour) {
        int first = pattern.globeSize();
        for (int i = 0; i < scene.length; i++) {
            if (painter.ringLight[i] > 0) {
                int hat = pattern.nearestRing(colour, painter.ringKnot[i]) - first;
                double weight = 1 - Math.abs(painter.ringKnot[i] - hat);
                scene[i] = weight > 0 ? (float) (weight * painter.ringLight[i]) : 0;
            }
        }
    }

    /** The hat a colour's derivative belongs to at a pixel, or −1. */
    int hatAt(int colour, int i) {
        return colour < pattern.globeColours()
                ? pattern.nearest(colour, painter.u[i], painter.v[i])
                : pattern.nearestRing(colour - pattern.globeColours(), painter.ringKnot[i]);
    }
}
