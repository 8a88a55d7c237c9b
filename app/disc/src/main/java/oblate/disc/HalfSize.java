/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Brings an image to half its size and back, for what is too smooth to need every pixel: down by means of four, up by cubic B-splines. Both widen what
 * they carry, by {@link #VARIANCE} together. Holds scratch, so one per thread.
 */
final class HalfSize {
    /** What going down and up again adds to the variance of a spread, along each axis (px²): 1/4 for the means, 4/3 for the spline. */
    static final double VARIANCE = 0.25 + 4.0 / 3;

    /** Cubic B-spline at distances 1/4, 3/4, 5/4, 7/4 of its knots. */
    private static final float NEAR = 235 / 384f;

    private static final float NEXT = 121 / 384f;
    private static final float FAR = 27 / 384f;
    private static final float LAST = 1 / 384f;
    private static final int PAD = 2;

    final int width;
    final int height;
    private final int fullWidth;
    private final int fullHeight;
    private final float[] wide;
    private final float[] line;

    HalfSize(int fullWidth, int fullHeight) {
        this.fullWidth = fullWidth;
        this.fullHeight = fullHeight;
        width = (fullWidth + 1) / 2;
        height = (fullHeight + 1) / 2;
        wide = new float[fullWidth * (height + 2 * PAD)];
        line = new float[width + 2 * PAD];
    }

    /** Means of four; what lies beyond the edge is dark. */
    void down(float[] full, float[] half) {
        for (int y = 0; y < height; y++) {
            int first = 2 * y * fullWidth;
            boolean second = 2 * y + 1 < fullHeight;
            for (int x = 0; x < fullWidth / 2; x++) {
                int i = first + 2 * x;
                float below = second ? full[i + fullWidth] + full[i + fullWidth + 1] : 0;
                half[y * width + x] = 0.25f * (full[i] + full[i + 1] + below);
            }
            if ((fullWidth & 1) == 1) {
                int i = first + fullWidth - 1;
                half[y * width + width - 1] = 0.25f * (full[i] + (second ? full[i + fullWidth] : 0));
            }
        }
    }

    /** Adds the smooth image to the full one. */
    void addUp(float[] half, float[] full) {
        for (int y = 0; y < height; y++) {
            System.arraycopy(half, y * width, line, PAD, width);
            widen((y + PAD) * fullWidth);
        }
        for (int y = 0; y < fullHeight; y++) {
            int middle = (y / 2 + PAD) * fullWidth;
            int step = (y & 1) == 0 ? -fullWidth : fullWidth;
            add(full, y * fullWidth, middle, step);
        }
    }

    private void widen(int start) {
        for (int x = 0; x < fullWidth; x++) {
            int i = x / 2 + PAD;
            int step = (x & 1) == 0 ? -1 : 1;
            wide[start + x] = NEAR * line[i] + NEXT * line[i + step] + FAR * line[i - step] + LAST * line[i + 2 * step];
        }
    }

    private void add(float[] full, int to, int middle, int step) {
        int next = middle + step;
        int far = middle - step;
        int last = middle + 2 * step;
        for (int x = 0; x < fullWidth; x++) {
            full[to + x] +=
                    NEAR * wide[middle + x] + NEXT * wide[next + x] + FAR * wide[far + x] + LAST * wide[last + x];
        }
    }
}
