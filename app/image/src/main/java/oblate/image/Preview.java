/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.awt.image.BufferedImage;

/**
 * A drawn picture in 8 bits a channel.
 *
 * @param widthPx width (px)
 * @param heightPx height (px)
 * @param argb one number a pixel, row after row: alpha, red, green, blue; alpha is 0 where the picture has no sample; not copied
 */
@SuppressWarnings("ArrayRecordComponent") // pixels by the million, compared by nobody
public record Preview(int widthPx, int heightPx, int[] argb) {

    /** The same as an image to paint or write. */
    public BufferedImage toImage() {
        BufferedImage image = new BufferedImage(widthPx, heightPx, BufferedImage.TYPE_INT_ARGB);
        image.setRGB(0, 0, widthPx, heightPx, argb, 0, widthPx);
        return image;
    }
}
