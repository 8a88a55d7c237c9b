/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

/**
 * A rectangle of whole pixels.
 *
 * @param leftPx first column (px)
 * @param topPx first row (px)
 * @param widthPx columns (px)
 * @param heightPx rows (px)
 */
public record Crop(int leftPx, int topPx, int widthPx, int heightPx) {

    /** All of a picture. */
    public static Crop all(PixelGrid grid) {
        return new Crop(0, 0, grid.widthPx(), grid.heightPx());
    }

    /**
     * What of it lies in a picture.
     *
     * @throws IllegalArgumentException when nothing does
     */
    public Crop within(PixelGrid grid) {
        int left = Math.max(0, leftPx);
        int top = Math.max(0, topPx);
        int right = (int) Math.min(grid.widthPx(), (long) leftPx + widthPx);
        int bottom = (int) Math.min(grid.heightPx(), (long) topPx + heightPx);
        if (right <= left || bottom <= top) {
            throw new IllegalArgumentException(this + " lies outside " + grid.widthPx() + " x " + grid.heightPx());
        }
        return new Crop(left, top, right - left, bottom - top);
    }
}
