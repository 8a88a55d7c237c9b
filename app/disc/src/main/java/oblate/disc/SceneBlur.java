/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/**
 * Blurs and sharpens a scene as finishing does: a narrow core, less a ring round it, with a wide halo. Holds its images, so one per thread.
 */
final class SceneBlur {
    /** The parts of what {@link #smoothApart} gave last. */
    final float[] core;

    final float[] ring;
    final float[] halo;

    private final GaussianBlur blur;
    private final HalfSize half;
    private final GaussianBlur halfBlur;
    private final float[] halfCore;
    private final float[] halfRing;
    private final float[] halfHalo;

    SceneBlur(int width, int height) {
        blur = new GaussianBlur(width, height);
        core = new float[width * height];
        ring = new float[width * height];
        halo = new float[width * height];
        half = new HalfSize(width, height);
        halfBlur = new GaussianBlur(half.width, half.height);
        int quarter = half.width * half.height;
        halfCore = new float[quarter];
        halfRing = new float[quarter];
        halfHalo = new float[quarter];
    }

    /**
     * Blurs and sharpens the scene. Ring and halo are smooth enough to be taken from the core at half the size, unless they are hardly wider than it.
     */
    void smooth(float[] scene, double[] p, float[] out) {
        Spread spread = new Spread(p);
        blur.blur(scene, core, spread.core);
        float middle = (float) (1 + spread.ringStrength - spread.haloStrength);
        for (int i = 0; i < out.length; i++) {
            out[i] = middle * core[i];
        }
        half.down(core, halfCore);
        halfBlur.blur(halfCore, halfHalo, spread.halfHalo);
        float h = (float) spread.haloStrength;
        float r = (float) spread.ringStrength;
        if (spread.halfRing > 0) {
            halfBlur.blur(halfCore, halfRing, spread.halfRing);
            for (int i = 0; i < halfHalo.length; i++) {
                halfHalo[i] = h * halfHalo[i] - r * halfRing[i];
            }
        } else {
            blur.blur(core, ring, spread.fullRing);
            for (int i = 0; i < out.length; i++) {
                out[i] -= r * ring[i];
            }
            for (int i = 0; i < halfHalo.length; i++) {
                halfHalo[i] *= h;
            }
        }
        half.addUp(halfHalo, out);
    }

    /** The same, with core, ring and halo left each in its own image. */
    void smoothApart(float[] scene, double[] p, float[] out) {
        Spread spread = new Spread(p);
        blur.blur(scene, core, spread.core);
        half.down(core, halfCore);
        halfBlur.blur(halfCore, halfHalo, spread.halfHalo);
        Arrays.fill(halo, 0);
        half.addUp(halfHalo, halo);
        if (spread.halfRing > 0) {
            halfBlur.blur(halfCore, halfRing, spread.halfRing);
            Arrays.fill(ring, 0);
            half.addUp(halfRing, ring);
        } else {
            blur.blur(core, ring, spread.fullRing);
        }
        float r = (float) spread.ringStrength;
        float h = (float) spread.haloStrength;
        for (int i = 0; i < out.length; i++) {
            out[i] = (1 + r - h) * core[i] - r * ring[i] + h * halo[i];
        }
    }

    /** Widths of the three parts of the blur, each as what must still be added to the core. */
    private static final class Spread {
        /** Below this variance (px²) half the size is too coarse. */
        private static final double LEAST_VARIANCE = HalfSize.VARIANCE + 1.6;

        final double core;
        final double ringStrength;
        final double haloStrength;
        final double fullRing;
        final double halfRing;
        final double halfHalo;

        Spread(double[] p) {
            core = p[Slot.CORE];
            ringStrength = p[Slot.RING];
            haloStrength = p[Slot.HALO];
            double ring = core * core * (p[Slot.RING_WIDTH] * p[Slot.RING_WIDTH] - 1);
            fullRing = Math.sqrt(ring);
            halfRing = ring < LEAST_VARIANCE ? 0 : Math.sqrt(ring - HalfSize.VARIANCE) / 2;
            double wide = core * core * (p[Slot.HALO_WIDTH] * p[Slot.HALO_WIDTH] - 1);
            halfHalo = Math.sqrt(Math.max(LEAST_VARIANCE, wide) - HalfSize.VARIANCE) / 2;
        }
    }
}
