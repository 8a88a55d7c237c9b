/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.util.Arrays;
import oblate.image.Crop;
import oblate.image.PixelGrid;
import oblate.image.Tone;

/** Where the bright part of a picture lies, for showing only: nothing is measured with it. */
final class BrightBox {
    private static final double SHARE = 0.18;
    private static final double ROOM = 0.10;

    private BrightBox() {}

    /** A square about the rows and columns that hold something bright; all of the picture when nothing stands out. */
    static Crop of(PixelGrid pixels) {
        float[] plane = pixels.measuringPlane();
        int w = pixels.widthPx();
        int h = pixels.heightPx();
        int step = Math.max(1, Math.min(w, h) / 200);
        float[] levels = sampled(pixels, Crop.all(pixels), step);
        double white = at(levels, 0.995);
        double black = at(levels, 0.05);
        double threshold = black + SHARE * (white - black);
        int[] columns = new int[w];
        int[] rows = new int[h];
        for (int y = 0; y < h; y += step) {
            for (int x = 0; x < w; x += step) {
                if (plane[y * w + x] > threshold) {
                    columns[x]++;
                    rows[y]++;
                }
            }
        }
        int left = first(columns);
        int right = last(columns);
        int top = first(rows);
        int bottom = last(rows);
        if (right <= left || bottom <= top) {
            return square(0, 0, w, h);
        }
        return square(left, top, right - left + step, bottom - top + step);
    }

    private static Crop square(int left, int top, int width, int height) {
        int side = (int) (Math.max(width, height) * (1 + 2 * ROOM));
        return new Crop(left + width / 2 - side / 2, top + height / 2 - side / 2, side, side);
    }

    /** Black as the picture has it, white a little above nearly the brightest sample of the part. */
    static Tone tone(PixelGrid pixels, Crop crop) {
        Crop part = crop.within(pixels);
        int step = Math.max(1, Math.min(part.widthPx(), part.heightPx()) / 150);
        float[] levels = sampled(pixels, part, step);
        double white = at(levels, 0.999);
        double black = Math.min(pixels.low(), white);
        return white > black ? new Tone(black, black + (white - black) * 1.06, 1) : Tone.plain(pixels);
    }

    private static float[] sampled(PixelGrid pixels, Crop part, int step) {
        float[] levels = new float[((part.widthPx() + step - 1) / step) * ((part.heightPx() + step - 1) / step)];
        int count = 0;
        float[] plane = pixels.measuringPlane();
        for (int y = 0; y < part.heightPx(); y += step) {
            for (int x = 0; x < part.widthPx(); x += step) {
                float value = plane[(part.topPx() + y) * pixels.widthPx() + part.leftPx() + x];
                if (!Float.isNaN(value)) {
                    levels[count++] = value;
                }
            }
        }
        float[] all = Arrays.copyOf(levels, count);
        Arrays.sort(all);
        return all;
    }

    private static double at(float[] sorted, double share) {
        return sorted.length == 0 ? 0 : sorted[(int) Math.min(sorted.length - 1, share * sorted.length)];
    }

    private static int first(int[] counts) {
        int i = 0;
        while (i < counts.length && counts[i] < 2) {
            i++;
        }
        return i;
    }

    private static int last(int[] counts) {
        int i = counts.length - 1;
        while (i >= 0 && counts[i] < 2) {
            i--;
        }
        return i;
    }
}
