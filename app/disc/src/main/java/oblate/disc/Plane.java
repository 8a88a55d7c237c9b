/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import oblate.image.PixelGrid;

/**
 * Samples of one channel, scaled so that black is 0 and a bright part of the picture about 1; NaN where nothing is known. Not copied, not
 * changed after it is made.
 */
record Plane(int width, int height, float[] samples) {
    private static final float FLAT_ROW = 0.02f;
    private static final float LIVELY_ROW = 0.3f;

    /** One channel of a picture, black at 0 and the 99th percentile at 1. */
    static Plane of(PixelGrid pixels, float[] channel) {
        float[] finite = new float[channel.length];
        int n = 0;
        for (float v : channel) {
            if (Float.isFinite(v)) {
                finite[n++] = v;
            }
        }
        if (n == 0) {
            return new Plane(pixels.widthPx(), pixels.heightPx(), channel.clone());
        }
        Arrays.sort(finite, 0, n);
        float low = (float) Math.max(pixels.low(), finite[0]);
        float high = finite[(int) (0.99 * (n - 1))];
        if (!(high > low)) {
            high = finite[n - 1];
        }
        float scale = high > low ? 1 / (high - low) : 1;
        float[] samples = new float[channel.length];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Float.isFinite(channel[i]) ? (channel[i] - low) * scale : Float.NaN;
        }
        forgetLostLines(samples, pixels.widthPx(), pixels.heightPx());
        return new Plane(pixels.widthPx(), pixels.heightPx(), samples);
    }

    /** Rows without any contrast between rows that have some are lines that were lost, not dark sky: nothing is known there. */
    private static void forgetLostLines(float[] samples, int width, int height) {
        boolean[] flat = new boolean[height];
        int first = -1;
        int last = -1;
        for (int y = 0; y < height; y++) {
            float low = Float.POSITIVE_INFINITY;
            float high = Float.NEGATIVE_INFINITY;
            for (int x = 0; x < width; x++) {
                float v = samples[y * width + x];
                low = Math.min(low, v);
                high = Math.max(high, v);
            }
            flat[y] = high - low < FLAT_ROW;
            if (high - low > LIVELY_ROW) {
                first = first < 0 ? y : first;
                last = y;
            }
        }
        for (int y = first + 1; y > 0 && y < last; y++) {
            if (flat[y]) {
                Arrays.fill(samples, y * width, (y + 1) * width, Float.NaN);
            }
        }
    }

    /** Whether two samples differ. */
    boolean hasContrast() {
        float low = Float.POSITIVE_INFINITY;
        float high = Float.NEGATIVE_INFINITY;
        for (float v : samples) {
            if (!Float.isNaN(v)) {
                low = Math.min(low, v);
                high = Math.max(high, v);
            }
        }
        return high > low;
    }

    /** Median of the known samples; 0 without any. */
    float median() {
        float[] finite = new float[samples.length];
        int n = 0;
        for (float v : samples) {
            if (!Float.isNaN(v)) {
                finite[n++] = v;
            }
        }
        Arrays.sort(finite, 0, n);
        return n == 0 ? 0 : finite[n / 2];
    }

    float at(int x, int y) {
        return x < 0 || y < 0 || x >= width || y >= height ? Float.NaN : samples[y * width + x];
    }

    /** Means over squares of a side; the squares begin at the top left, what is left over at the right and bottom is dropped. */
    Plane binned(int side) {
        if (side == 1) {
            return this;
        }
        int w = Math.max(1, width / side);
        int h = Math.max(1, height / side);
        float[] out = new float[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                out[y * w + x] = mean(x * side, y * side, side);
            }
        }
        return new Plane(w, h, out);
    }

    private float mean(int x0, int y0, int side) {
        double sum = 0;
        int n = 0;
        for (int y = y0; y < Math.min(height, y0 + side); y++) {
            for (int x = x0; x < Math.min(width, x0 + side); x++) {
                float v = samples[y * width + x];
                if (!Float.isNaN(v)) {
                    sum += v;
                    n++;
                }
            }
        }
        return n * 2 >= side * side ? (float) (sum / n) : Float.NaN;
    }

    /** Bilinear sample, NaN off the plane or beside a missing one. */
    double sample(double x, double y) {
        int ix = (int) Math.floor(x);
        int iy = (int) Math.floor(y);
        double fx = x - ix;
        double fy = y - iy;
        return (1 - fy) * ((1 - fx) * at(ix, iy) + fx * at(ix + 1, iy))
                + fy * ((1 - fx) * at(ix, iy + 1) + fx * at(ix + 1, iy + 1));
    }

    /** Sample by cubic interpolation (Keys 1981, a = −1/2); bilinear at the rim and beside missing samples. */
    double smooth(double x, double y) {
        int ix = (int) Math.floor(x);
        int iy = (int) Math.floor(y);
        if (ix < 1 || iy < 1 || ix + 2 >= width || iy + 2 >= height) {
            return sample(x, y);
        }
        double fx = x - ix;
        double fy = y - iy;
        double sum = 0;
        for (int j = -1; j <= 2; j++) {
            int i = (iy + j) * width + ix;
            sum += cubic(j - fy)
                    * (cubic(-1 - fx) * samples[i - 1]
                            + cubic(-fx) * samples[i]
                            + cubic(1 - fx) * samples[i + 1]
                            + cubic(2 - fx) * samples[i + 2]);
        }
        return Double.isNaN(sum) ? sample(x, y) : sum;
    }

    private static double cubic(double distance) {
        double d = Math.abs(distance);
        return d < 1 ? (1.5 * d - 2.5) * d * d + 1 : ((-0.5 * d + 2.5) * d - 4) * d + 2;
    }

    /** A rectangle, which may reach over the edge: what lies there is NaN. */
    Plane cut(int x0, int y0, int w, int h) {
        float[] out = new float[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                out[y * w + x] = at(x0 + x, y0 + y);
            }
        }
        return new Plane(w, h, out);
    }

    /** Standard deviation of the noise from one pixel to the next, by the median of second differences along rows; 0 when there are none. */
    double pixelNoise() {
        float[] d = new float[samples.length];
        int n = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 1; x < width - 1; x++) {
                int i = y * width + x;
                float v = samples[i - 1] - 2 * samples[i] + samples[i + 1];
                if (!Float.isNaN(v) && samples[i] > 0.2f) {
                    d[n++] = Math.abs(v);
                }
            }
        }
        if (n < 10) {
            return 0;
        }
        Arrays.sort(d, 0, n);
        return 1.4826 * d[n / 2] / Math.sqrt(6);
    }
}
