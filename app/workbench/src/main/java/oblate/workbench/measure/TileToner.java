/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import oblate.image.PixelGrid;
import oblate.image.Tone;

/** Turns a square of samples into an image to paint. Stateless; off the event thread. */
final class TileToner {
    /** Side of a tile (px of its level). */
    static final int SIDE = 256;

    /** Tiles overlap by this much, so that no seam shows between them when they are turned (px). */
    static final int BORDER = 1;

    private static final int STEPS = 4095;

    /** Width of the blur that is taken away when sharpening (picture px). */
    private static final double BLUR_PX = 1.6;

    private TileToner() {}

    /**
     * One tile with its border; what lies outside the picture is black.
     *
     * @param level samples of one level of a pyramid
     * @param step picture pixels in one of its pixels
     */
    static BufferedImage image(PixelGrid level, int step, int column, int row, Look look) {
        int side = SIDE + 2 * BORDER;
        BufferedImage image = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
        int[] rgb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        int left = column * SIDE - BORDER;
        int top = row * SIDE - BORDER;
        byte[] levels = table(look.tone());
        boolean one = level.channels() == 1 || look.channel() != Look.Channel.ALL;
        int first = level.channels() == 1 || look.channel() == Look.Channel.ALL
                ? 0
                : look.channel().ordinal() - 1;
        for (int c = first; c <= (one ? first : 2); c++) {
            float[] part = part(level, c, left, top, side, look.sharpen() > 0 ? BLUR_PX / step : 0, look.sharpen());
            int shift = 16 - 8 * c;
            for (int i = 0; i < rgb.length; i++) {
                int v = levels[index(part[i], look.tone())] & 255;
                rgb[i] |= one ? v * 0x010101 : v << shift;
            }
        }
        if (look.red()) {
            redden(rgb);
        }
        return image;
    }

    private static byte[] table(Tone tone) {
        byte[] table = new byte[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            table[i] = (byte) tone.level(tone.black() + (tone.white() - tone.black()) * i / STEPS);
        }
        return table;
    }

    private static int index(float sample, Tone tone) {
        double share = (sample - tone.black()) / (tone.white() - tone.black());
        return share > 0 ? (int) Math.min(STEPS, Math.round(share * STEPS)) : 0;
    }

    private static void redden(int[] rgb) {
        for (int i = 0; i < rgb.length; i++) {
            rgb[i] = oblate.workbench.look.RedLight.of(rgb[i]);
        }
    }

    private static float[] part(
            PixelGrid level, int channel, int left, int top, int side, double blurPx, double amount) {
        if (blurPx < 0.4) {
            return cut(level, channel, left, top, side);
        }
        int margin = (int) Math.ceil(3 * blurPx);
        int wide = side + 2 * margin;
        float[] all = cut(level, channel, left - margin, top - margin, wide);
        float[] soft = blurred(all, wide, blurPx, margin);
        float[] sharp = new float[side * side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int at = (y + margin) * wide + x + margin;
                sharp[y * side + x] = (float) (all[at] + amount * (all[at] - soft[at]));
            }
        }
        return sharp;
    }

    /** Samples of a square; beyond the edge the nearest ones go on for the blur, but stay black when shown. */
    private static float[] cut(PixelGrid level, int channel, int left, int top, int side) {
        float[] plane = level.plane(channel);
        float[] part = new float[side * side];
        java.util.Arrays.fill(part, Float.NaN);
        for (int y = Math.max(0, -top); y < Math.min(side, level.heightPx() - top); y++) {
            int from = Math.max(0, -left);
            int to = Math.min(side, level.widthPx() - left);
            if (to > from) {
                System.arraycopy(plane, (top + y) * level.widthPx() + left + from, part, y * side + from, to - from);
            }
        }
        return part;
    }

    /** Blurred along rows, then along columns; missing samples count for nothing. */
    private static float[] blurred(float[] of, int side, double sigma, int reach) {
        double[] kernel = new double[2 * reach + 1];
        for (int i = -reach; i <= reach; i++) {
            kernel[i + reach] = Math.exp(-i * i / (2 * sigma * sigma));
        }
        return along(along(of, side, kernel, 1), side, kernel, side);
    }

    private static float[] along(float[] of, int side, double[] kernel, int stride) {
        int reach = kernel.length / 2;
        float[] out = new float[of.length];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int at = y * side + x;
                int place = stride == 1 ? x : y;
                double sum = 0;
                double weight = 0;
                for (int k = Math.max(-reach, -place); k <= Math.min(reach, side - 1 - place); k++) {
                    float v = of[at + k * stride];
                    if (!Float.isNaN(v)) {
                        sum += kernel[k + reach] * v;
                        weight += kernel[k + reach];
                    }
                }
                out[at] = weight > 0 ? (float) (sum / weight) : Float.NaN;
            }
        }
        return out;
    }
}
