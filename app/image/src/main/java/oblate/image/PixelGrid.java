/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.util.List;

/**
 * A decoded picture: one or three planes of samples, row after row from the top left as displayed.
 *
 * <p>Integer samples are divided by the largest value their type can store, so they lie in 0…1. Floating-point and signed samples (FITS) are
 * kept as they are; {@link #low()} and {@link #high()} say which values are black and white. A sample that is not a number marks a missing
 * pixel. Safe for many threads as long as nobody writes into {@link #plane(int)}.
 */
public final class PixelGrid {
    private final int widthPx;
    private final int heightPx;
    private final List<float[]> planes;
    private final double low;
    private final double high;

    /**
     * @param widthPx width (px), at least 1
     * @param heightPx height (px), at least 1
     * @param planes 1 or 3 arrays of widthPx × heightPx samples: grey, or red, green, blue; not copied
     * @param low value that is black
     * @param high value that is white, above {@code low} (equal when the picture is constant)
     * @throws IllegalArgumentException when the sizes do not agree
     */
    public PixelGrid(int widthPx, int heightPx, List<float[]> planes, double low, double high) {
        if (widthPx < 1 || heightPx < 1 || (planes.size() != 1 && planes.size() != 3)) {
            throw new IllegalArgumentException(widthPx + " x " + heightPx + " x " + planes.size());
        }
        for (float[] plane : planes) {
            if (plane.length != (long) widthPx * heightPx) {
                throw new IllegalArgumentException("plane of " + plane.length);
            }
        }
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.planes = List.copyOf(planes);
        this.low = low;
        this.high = high;
    }

    /**
     * A grid of samples without a natural black and white: infinite samples become missing ones, and black and white are the least and the
     * largest of what is left (0 and 0 when nothing is).
     *
     * @param widthPx width (px), at least 1
     * @param heightPx height (px), at least 1
     * @param planes 1 or 3 arrays, not copied; infinite samples in them are overwritten
     */
    public static PixelGrid ranged(int widthPx, int heightPx, List<float[]> planes) {
        float low = Float.POSITIVE_INFINITY;
        float high = Float.NEGATIVE_INFINITY;
        for (float[] plane : planes) {
            for (int i = 0; i < plane.length; i++) {
                float value = plane[i];
                if (Float.isInfinite(value)) {
                    plane[i] = Float.NaN;
                } else if (!Float.isNaN(value)) {
                    low = Math.min(low, value);
                    high = Math.max(high, value);
                }
            }
        }
        boolean any = low <= high;
        return new PixelGrid(widthPx, heightPx, planes, any ? low : 0, any ? high : 0);
    }

    /** Width (px). */
    public int widthPx() {
        return widthPx;
    }

    /** Height (px). */
    public int heightPx() {
        return heightPx;
    }

    /** 1 for grey, 3 for colour. */
    public int channels() {
        return planes.size();
    }

    /** Samples of one channel, index y × width + x; the array itself, not to be written to. */
    public float[] plane(int channel) {
        return planes.get(channel);
    }

    /** The channel positions are measured in: green of a colour picture, the only one of a grey one. */
    public float[] measuringPlane() {
        return planes.get(planes.size() == 3 ? 1 : 0);
    }

    /** Sample at whole-pixel coordinates. */
    public float sample(int channel, int x, int y) {
        return planes.get(channel)[y * widthPx + x];
    }

    /** Value that is black. */
    public double low() {
        return low;
    }

    /** Value that is white. */
    public double high() {
        return high;
    }
}
