/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.image.BufferedImage;

/** Shows a picture in red only, as a darkroom lamp would, so that it spares dark-adapted eyes. */
public final class RedLight {
    private static final double LARGEST = 0.82;

    private RedLight() {}

    /** One colour made red, its alpha kept. */
    public static int of(int argb) {
        int light = (int) (LARGEST * (0.299 * (argb >> 16 & 255) + 0.587 * (argb >> 8 & 255) + 0.114 * (argb & 255)));
        return argb & 0xFF000000 | light << 16 | light / 9 << 8 | light / 12;
    }

    /** A red copy; brightness is kept in proportion, below a set luminance. */
    public static BufferedImage on(BufferedImage source) {
        int w = source.getWidth();
        int h = source.getHeight();
        int[] argb = source.getRGB(0, 0, w, h, null, 0, w);
        for (int i = 0; i < argb.length; i++) {
            argb[i] = of(argb[i]);
        }
        BufferedImage red = new BufferedImage(w, h, BufferedImage.TYPE_INT_ARGB);
        red.setRGB(0, 0, w, h, argb, 0, w);
        return red;
    }
}
