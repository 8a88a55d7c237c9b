/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

/**
 * The Exif orientation: how stored rows and columns lie in the picture as displayed.
 *
 * @param code 1…8; 1 is as stored, 2, 4, 5 and 7 mirror, 5 to 8 exchange width and height
 */
record Orientation(int code) {
    static final Orientation AS_STORED = new Orientation(1);

    /** Codes outside 1…8 mean nothing and are taken for 1. */
    static Orientation of(int code) {
        return code >= 2 && code <= 8 ? new Orientation(code) : AS_STORED;
    }

    boolean swapsSides() {
        return code >= 5;
    }

    int displayedWidthPx(int storedWidthPx, int storedHeightPx) {
        return swapsSides() ? storedHeightPx : storedWidthPx;
    }

    int displayedHeightPx(int storedWidthPx, int storedHeightPx) {
        return swapsSides() ? storedWidthPx : storedHeightPx;
    }

    /** The samples of one plane in the order in which they are displayed; the same array when nothing moves. */
    float[] display(float[] stored, int storedWidthPx, int storedHeightPx) {
        if (code == 1) {
            return stored;
        }
        int width = displayedWidthPx(storedWidthPx, storedHeightPx);
        int height = displayedHeightPx(storedWidthPx, storedHeightPx);
        float[] displayed = new float[stored.length];
        int right = storedWidthPx - 1;
        int bottom = storedHeightPx - 1;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int column =
                        switch (code) {
                            case 2, 3 -> right - x;
                            case 5, 8 -> code == 5 ? y : right - y;
                            case 6, 7 -> code == 6 ? y : right - y;
                            default -> x;
                        };
                int row =
                        switch (code) {
                            case 3, 4 -> bottom - y;
                            case 5, 8 -> x;
                            case 6, 7 -> bottom - x;
                            default -> y;
                        };
                displayed[y * width + x] = stored[row * storedWidthPx + column];
            }
        }
        return displayed;
    }
}
