/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.util.Arrays;

/** Small pictures of pictures: a part of a grid, averaged over areas down to a size and turned into 8 bits. Stateless. */
public final class Previews {

    /**
     * Draws a part of a grid.
     *
     * @param grid the picture
     * @param crop the part wanted; what lies outside the picture is cut off
     * @param maxSidePx longest side of the result (px), at least 1; a part smaller than that is not enlarged
     * @param tone what becomes black and white
     * @throws IllegalArgumentException when nothing of the part lies in the picture
     */
    public Preview draw(PixelGrid grid, Crop crop, int maxSidePx, Tone tone) {
        Crop part = crop.within(grid);
        double shrink = Math.max(1, Math.max(part.widthPx(), part.heightPx()) / (double) Math.max(1, maxSidePx));
        int width = Math.max(1, (int) Math.round(part.widthPx() / shrink));
        int height = Math.max(1, (int) Math.round(part.heightPx() / shrink));
        int[] argb = new int[width * height];
        byte[] seen = new byte[width * height];
        for (int channel = 0; channel < grid.channels(); channel++) {
            float[] plane = averaged(grid, channel, part, width, height);
            int shift = 16 - 8 * channel;
            for (int i = 0; i < plane.length; i++) {
                if (!Float.isNaN(plane[i])) {
                    seen[i] = 1;
                    int level = tone.level(plane[i]);
                    argb[i] |= grid.channels() == 1 ? level * 0x010101 : level << shift;
                }
            }
        }
        for (int i = 0; i < argb.length; i++) {
            argb[i] = seen[i] == 0 ? 0 : argb[i] | 0xff000000;
        }
        return new Preview(width, height, argb);
    }

    /** One channel of a part, each result the mean of the area it covers; missing samples count for nothing. */
    private static float[] averaged(PixelGrid grid, int channel, Crop part, int width, int height) {
        float[] source = grid.plane(channel);
        if (width == part.widthPx() && height == part.heightPx()) {
            float[] copy = new float[width * height];
            for (int y = 0; y < height; y++) {
                System.arraycopy(source, (part.topPx() + y) * grid.widthPx() + part.leftPx(), copy, y * width, width);
            }
            return copy;
        }
        double stepX = part.widthPx() / (double) width;
        double stepY = part.heightPx() / (double) height;
        float[] result = new float[width * height];
        double[] sums = new double[width];
        double[] weights = new double[width];
        for (int y = 0; y < height; y++) {
            Arrays.fill(sums, 0);
            Arrays.fill(weights, 0);
            double top = y * stepY;
            double bottom = top + stepY;
            for (int row = (int) top; row < Math.min(part.heightPx(), Math.ceil(bottom - 1e-9)); row++) {
                double share = Math.min(row + 1, bottom) - Math.max(row, top);
                int start = (part.topPx() + row) * grid.widthPx() + part.leftPx();
                addRow(source, start, part.widthPx(), stepX, share, sums, weights);
            }
            for (int x = 0; x < width; x++) {
                result[y * width + x] = weights[x] > 0 ? (float) (sums[x] / weights[x]) : Float.NaN;
            }
        }
        return result;
    }

    private static void addRow(
            float[] source, int start, int length, double stepX, double share, double[] sums, double[] weights) {
        for (int x = 0; x < sums.length; x++) {
            double left = x * stepX;
            double right = left + stepX;
            int last = (int) Math.min(length, Math.ceil(right - 1e-9));
            for (int column = (int) left; column < last; column++) {
                float value = source[start + column];
                if (!Float.isNaN(value)) {
                    double weight = share * (Math.min(column + 1, right) - Math.max(column, left));
                    sums[x] += weight * value;
                    weights[x] += weight;
                }
            }
        }
    }
}
