/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import oblate.image.PixelGrid;

/**
 * A picture in ever coarser copies, each half as wide as the one before, so that what is shown small is not read in full. Immutable; making one is slow.
 *
 * @param levels the picture itself first; a pixel of level n is the mean of 2ⁿ × 2ⁿ pixels
 */
record Pyramid(List<PixelGrid> levels) {
    private static final int SMALLEST_PX = 300;

    Pyramid {
        levels = List.copyOf(levels);
    }

    static Pyramid of(PixelGrid pixels) {
        List<PixelGrid> levels = new ArrayList<>();
        PixelGrid at = pixels;
        levels.add(at);
        while (Math.max(at.widthPx(), at.heightPx()) > SMALLEST_PX) {
            at = halved(at);
            levels.add(at);
        }
        return new Pyramid(levels);
    }

    private static PixelGrid halved(PixelGrid of) {
        int width = (of.widthPx() + 1) / 2;
        int height = (of.heightPx() + 1) / 2;
        List<float[]> planes = new ArrayList<>();
        for (int c = 0; c < of.channels(); c++) {
            float[] from = of.plane(c);
            float[] to = new float[width * height];
            IntStream.range(0, height).parallel().forEach(y -> halveRow(from, of, y, to, width));
            planes.add(to);
        }
        return new PixelGrid(width, height, planes, of.low(), of.high());
    }

    private static void halveRow(float[] from, PixelGrid of, int y, float[] to, int width) {
        int bottom = Math.min(2 * y + 1, of.heightPx() - 1);
        for (int x = 0; x < width; x++) {
            int right = Math.min(2 * x + 1, of.widthPx() - 1);
            float sum = 0;
            int n = 0;
            for (int row = 2 * y; row <= bottom; row++) {
                for (int column = 2 * x; column <= right; column++) {
                    float v = from[row * of.widthPx() + column];
                    if (!Float.isNaN(v)) {
                        sum += v;
                        n++;
                    }
                }
            }
            to[y * width + x] = n == 0 ? Float.NaN : sum / n;
        }
    }

    /** The coarsest level that still has a pixel for each on the screen. */
    int levelFor(double screenPerPicturePx) {
        int level = (int) Math.floor(Math.log(1 / screenPerPicturePx) / Math.log(2) + 1e-9);
        return Math.max(0, Math.min(levels.size() - 1, level));
    }
}
