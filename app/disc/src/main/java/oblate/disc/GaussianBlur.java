/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/** Separable Gaussian smoothing of an image that is dark at its rim: beyond the edge there is nothing. Holds scratch, so one per thread. */
final class GaussianBlur {
    private static final double REACH = 4;
    private final int width;
    private final int height;
    private final float[] scratch;

    GaussianBlur(int width, int height) {
        this.width = width;
        this.height = height;
        scratch = new float[width * height];
    }

    /** Half of a kernel of unit total, from the middle outwards; for sigma below half a pixel the pixel's own spread is what is left. */
    private static float[] kernel(double sigma) {
        int reach = Math.max(1, (int) Math.ceil(REACH * sigma));
        double[] k = new double[reach + 1];
        double sum = 0;
        for (int i = 0; i <= reach; i++) {
            k[i] = Math.exp(-0.5 * i * i / (sigma * sigma));
            sum += i == 0 ? k[i] : 2 * k[i];
        }
        float[] half = new float[reach + 1];
        for (int i = 0; i <= reach; i++) {
            half[i] = (float) (k[i] / sum);
        }
        return half;
    }

    /** Smooths {@code in} into {@code out}, which must be another array. */
    void blur(float[] in, float[] out, double sigma) {
        blur(in, out, sigma, sigma);
    }

    /** Smooths with one width along rows and another across them. */
    void blur(float[] in, float[] out, double alongRows, double acrossRows) {
        float[] k = kernel(alongRows);
        for (int y = 0; y < height; y++) {
            row(in, y * width, k);
        }
        float[] across = kernel(acrossRows);
        for (int y = 0; y < height; y++) {
            column(out, y, across);
        }
    }

    private void row(float[] in, int start, float[] k) {
        float middle = k[0];
        for (int x = 0; x < width; x++) {
            scratch[start + x] = middle * in[start + x];
        }
        for (int t = 1; t < k.length && t < width; t++) {
            float f = k[t];
            for (int x = t; x < width; x++) {
                scratch[start + x] += f * in[start + x - t];
            }
            for (int x = 0; x < width - t; x++) {
                scratch[start + x] += f * in[start + x + t];
            }
        }
    }

    private void column(float[] out, int y, float[] k) {
        int start = y * width;
        float middle = k[0];
        for (int x = 0; x < width; x++) {
            out[start + x] = middle * scratch[start + x];
        }
        for (int t = 1; t < k.length; t++) {
            if (y - t >= 0) {
                add(out, start, start - t * width, k[t]);
            }
            if (y + t < height) {
                add(out, start, start + t * width, k[t]);
            }
        }
    }

    private void add(float[] out, int to, int from, float f) {
        for (int x = 0; x < width; x++) {
            out[to + x] += f * scratch[from + x];
        }
    }
}
