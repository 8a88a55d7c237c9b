/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/** Separable Gaussian smoothing of an image that is dark at its rim: beyond the edge there is nothing. Holds scratch, so one per thread. */
final class GaussianBlur {
    private static final double REACH = 4;
    private final int width;
    private final int height;
    private final float[] scratch;
    private final float[] nothing;
    private float[] line = new float[0];

    GaussianBlur(int width, int height) {
        this.width = width;
        this.height = height;
        scratch = new float[width * height];
        nothing = new float[width];
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
        int reach = k.length - 1;
        if (line.length < width + 2 * reach) {
            line = new float[width + 2 * reach];
        }
        Arrays.fill(line, 0);
        for (int y = 0; y < height; y++) {
            System.arraycopy(in, y * width, line, reach, width);
            row(y * width, k, reach);
        }
        float[] across = kernel(acrossRows);
        for (int y = 0; y < height; y++) {
            column(out, y, across);
        }
    }

    /** Two taps to a pass, so that the sums go through memory half as often. */
    private void row(int start, float[] k, int reach) {
        float middle = k[0];
        for (int x = 0; x < width; x++) {
            scratch[start + x] = middle * line[reach + x];
        }
        int t = 1;
        for (; t + 1 <= reach; t += 2) {
            pairs(
                    scratch,
                    start,
                    line,
                    reach - t,
                    line,
                    reach + t,
                    k[t],
                    line,
                    reach - t - 1,
                    line,
                    reach + t + 1,
                    k[t + 1]);
        }
        if (t <= reach) {
            pair(scratch, start, line, reach - t, line, reach + t, k[t]);
        }
    }

    private void column(float[] out, int y, float[] k) {
        int start = y * width;
        int reach = k.length - 1;
        float middle = k[0];
        for (int x = 0; x < width; x++) {
            out[start + x] = middle * scratch[start + x];
        }
        int t = 1;
        for (; t + 1 <= reach; t += 2) {
            pairs(
                    out,
                    start,
                    above(y - t),
                    at(y - t),
                    above(y + t),
                    at(y + t),
                    k[t],
                    above(y - t - 1),
                    at(y - t - 1),
                    above(y + t + 1),
                    at(y + t + 1),
                    k[t + 1]);
        }
        if (t <= reach) {
            pair(out, start, above(y - t), at(y - t), above(y + t), at(y + t), k[t]);
        }
    }

    private float[] above(int y) {
        return y >= 0 && y < height ? scratch : nothing;
    }

    private int at(int y) {
        return y >= 0 && y < height ? y * width : 0;
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // plain arrays of an inner loop
    private void pairs(
            float[] out,
            int to,
            float[] a,
            int i,
            float[] b,
            int j,
            float f,
            float[] c,
            int k,
            float[] d,
            int l,
            float g) {
        for (int x = 0; x < width; x++) {
            out[to + x] += f * (a[i + x] + b[j + x]) + g * (c[k + x] + d[l + x]);
        }
    }

    @SuppressWarnings("checkstyle:ParameterNumber") // plain arrays of an inner loop
    private void pair(float[] out, int to, float[] a, int i, float[] b, int j, float f) {
        for (int x = 0; x < width; x++) {
            out[to + x] += f * (a[i + x] + b[j + x]);
        }
    }
}
