/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

/**
 * How large a picture may be before it is refused undecoded.
 *
 * @param maxSidePx longest side (px)
 * @param maxPixels width × height
 * @param maxFileBytes length of the file
 */
public record PictureLimits(int maxSidePx, long maxPixels, long maxFileBytes) {

    /** 20 000 px a side, 120 million pixels, 2 GB: far above any planet picture, well below what hurts. */
    public static PictureLimits usual() {
        return new PictureLimits(20_000, 120_000_000L, 2_000_000_000L);
    }
}
