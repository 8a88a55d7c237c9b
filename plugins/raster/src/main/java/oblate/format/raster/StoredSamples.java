/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.util.ArrayList;
import java.util.List;
import oblate.image.PixelGrid;

/** Takes samples out of what a decoder gives, as they are stored: no colour conversion, alpha left out, palettes looked up. */
final class StoredSamples {
    private StoredSamples() {}

    /**
     * The planes of a decoded picture.
     *
     * @param image what the decoder gave
     * @param channels 1 grey, 3 colour
     * @param signed whether integer samples carry a sign
     * @param orientation how it is displayed
     */
    static PixelGrid of(BufferedImage image, int channels, boolean signed, Orientation orientation) {
        if (image.getColorModel() instanceof IndexColorModel palette) {
            return ofPalette(image.getRaster(), palette, channels, orientation);
        }
        return of(image.getRaster(), channels, signed, orientation);
    }

    /** The planes of a raster whose first bands are grey, or red, green and blue. */
    static PixelGrid of(Raster raster, int channels, boolean signed, Orientation orientation) {
        if (raster.getNumBands() < channels) {
            throw new IllegalArgumentException(
                    "it has " + raster.getNumBands() + " channels where " + channels + " are claimed");
        }
        int type = raster.getTransferType();
        boolean natural = !signed
                && (type == DataBuffer.TYPE_BYTE || type == DataBuffer.TYPE_USHORT || type == DataBuffer.TYPE_INT);
        List<float[]> planes = new ArrayList<>();
        for (int band = 0; band < channels; band++) {
            float[] stored = natural ? fractions(raster, band) : asTheyAre(raster, band, signed);
            planes.add(orientation.display(stored, raster.getWidth(), raster.getHeight()));
        }
        int width = orientation.displayedWidthPx(raster.getWidth(), raster.getHeight());
        int height = orientation.displayedHeightPx(raster.getWidth(), raster.getHeight());
        return natural ? new PixelGrid(width, height, planes, 0, 1) : PixelGrid.ranged(width, height, planes);
    }

    private static float[] fractions(Raster raster, int band) {
        int width = raster.getWidth();
        int height = raster.getHeight();
        int bits = raster.getSampleModel().getSampleSize(band);
        double full = bits >= 32 ? 4294967295.0 : (1L << bits) - 1;
        long mask = bits >= 32 ? 0xffffffffL : (1L << bits) - 1;
        float[] plane = new float[width * height];
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            raster.getSamples(raster.getMinX(), raster.getMinY() + y, width, 1, band, row);
            for (int x = 0; x < width; x++) {
                plane[y * width + x] = (float) ((row[x] & mask) / full);
            }
        }
        return plane;
    }

    private static float[] asTheyAre(Raster raster, int band, boolean signed) {
        int width = raster.getWidth();
        int height = raster.getHeight();
        int type = raster.getTransferType();
        float[] plane = new float[width * height];
        double[] row = new double[width];
        for (int y = 0; y < height; y++) {
            raster.getSamples(raster.getMinX(), raster.getMinY() + y, width, 1, band, row);
            for (int x = 0; x < width; x++) {
                plane[y * width + x] = (float) (signed ? signed(row[x], type) : row[x]);
            }
        }
        return plane;
    }

    /** Rasters hand out bytes and shorts without their sign. */
    private static double signed(double sample, int type) {
        return switch (type) {
            case DataBuffer.TYPE_BYTE -> (byte) (int) sample;
            case DataBuffer.TYPE_USHORT -> (short) (int) sample;
            default -> sample;
        };
    }

    private static PixelGrid ofPalette(Raster raster, IndexColorModel palette, int channels, Orientation orientation) {
        int size = palette.getMapSize();
        byte[][] colours = new byte[3][size];
        palette.getReds(colours[0]);
        palette.getGreens(colours[1]);
        palette.getBlues(colours[2]);
        int width = raster.getWidth();
        int height = raster.getHeight();
        List<float[]> planes = new ArrayList<>();
        int[] row = new int[width];
        for (int channel = 0; channel < channels; channel++) {
            float[] plane = new float[width * height];
            for (int y = 0; y < height; y++) {
                raster.getSamples(raster.getMinX(), raster.getMinY() + y, width, 1, 0, row);
                for (int x = 0; x < width; x++) {
                    if (row[x] >= size) {
                        throw new IllegalArgumentException(
                                "a pixel names colour " + row[x] + " of a palette of " + size);
                    }
                    plane[y * width + x] = (float) ((colours[channel][row[x]] & 0xff) / 255.0);
                }
            }
            planes.add(orientation.display(plane, width, height));
        }
        return new PixelGrid(
                orientation.displayedWidthPx(width, height),
                orientation.displayedHeightPx(width, height),
                planes,
                0,
                1);
    }
}
