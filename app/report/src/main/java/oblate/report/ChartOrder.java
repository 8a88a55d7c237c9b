/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

/**
 * A chart as it is wished for.
 *
 * @param content what it shows
 * @param size of the drawing
 * @param theme colours
 * @param format of the file
 */
public record ChartOrder(ChartContent content, Size size, Theme theme, Format format) {

    /** Colours of the whole. */
    public enum Theme {
        /** On a light screen. */
        LIGHT,
        /** On a dark screen. */
        DARK,
        /** Shades of dim red, for eyes used to the dark. */
        RED,
        /** On white paper. */
        PRINT
    }

    /** Kind of file. */
    public enum Format {
        /** Pixels. */
        PNG,
        /** Lines and text. */
        SVG
    }

    /**
     * Size of the drawing.
     *
     * @param widthPx width before scaling (px), 200…10000
     * @param heightPx height before scaling (px), 200…10000
     * @param scale 1 or 2: how many pixels of the file make one of the drawing, each way
     */
    public record Size(int widthPx, int heightPx, int scale) {
        /** Least width and height (px). */
        public static final int LEAST_PX = 200;
        /** Most width and height (px). */
        public static final int MOST_PX = 10_000;

        /** Checks the ranges. */
        public Size {
            if (Math.min(widthPx, heightPx) < LEAST_PX
                    || Math.max(widthPx, heightPx) > MOST_PX
                    || scale < 1
                    || scale > 2) {
                throw new IllegalArgumentException(widthPx + " x " + heightPx + " x " + scale);
            }
        }
    }
}
