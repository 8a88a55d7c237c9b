/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.awt.image.Raster;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import oblate.base.ProblemException;
import oblate.image.DecodeGuard;
import oblate.image.ImageFormat;
import oblate.image.ImageProblem;
import oblate.image.PictureHeader;
import oblate.image.PixelGrid;

/** JPEG: grey, YCbCr, RGB, CMYK and YCCK, baseline and progressive, 8 bits. */
public final class JpegFormat implements ImageFormat {

    @Override
    public String id() {
        return "jpeg";
    }

    @Override
    public String label() {
        return "JPEG";
    }

    @Override
    public boolean claims(byte[] firstBytes) {
        return JpegMarkers.begins(firstBytes);
    }

    @Override
    public PictureHeader readHeader(Path file) {
        JpegMarkers markers = DecodeGuard.run(file, "its segments", () -> markers(file, false));
        int components = markers.components();
        if (components == 2 || components > 4) {
            throw new ProblemException(ImageProblem.UNSUPPORTED, file, "JPEG with " + components + " channels");
        }
        if (markers.bits() != 8) {
            throw new ProblemException(
                    ImageProblem.UNSUPPORTED, file, "JPEG with " + markers.bits() + " bits a sample");
        }
        if (markers.lossless() || markers.arithmetic()) {
            throw new ProblemException(
                    ImageProblem.UNSUPPORTED,
                    file,
                    markers.lossless() ? "lossless JPEG" : "JPEG with arithmetic coding");
        }
        return new PictureHeader(
                id(),
                markers.orientation().displayedWidthPx(markers.widthPx(), markers.heightPx()),
                markers.orientation().displayedHeightPx(markers.widthPx(), markers.heightPx()),
                components == 1 ? 1 : 3,
                markers.bits(),
                false,
                markers.facts().facts());
    }

    @Override
    public PixelGrid readPixels(Path file, PictureHeader header) {
        JpegMarkers markers = DecodeGuard.run(file, "its scans", () -> markers(file, true));
        return DecodeGuard.run(file, "its pixels", () -> {
            Raster raster = Decoders.readRaster(Decoders.jpeg(), file);
            int channels = header.channels();
            if (raster.getNumBands() != markers.components()) {
                throw new IOException(
                        "it decodes to " + raster.getNumBands() + " channels where it claims " + markers.components());
            }
            if (channels == 1) {
                return StoredSamples.of(raster, 1, false, markers.orientation());
            }
            return colours(raster, markers);
        });
    }

    /** Red, green and blue from what is stored; the formulas of ITU-T T.871, rounded to whole steps as every JPEG reader does. */
    private static PixelGrid colours(Raster raster, JpegMarkers markers) {
        int width = raster.getWidth();
        int height = raster.getHeight();
        int bands = raster.getNumBands();
        float[][] planes = new float[3][width * height];
        int[] row = new int[width * bands];
        int[] rgb = new int[3];
        boolean lumaChroma = markers.lumaChroma();
        for (int y = 0; y < height; y++) {
            raster.getPixels(raster.getMinX(), raster.getMinY() + y, width, 1, row);
            for (int x = 0; x < width; x++) {
                int at = x * bands;
                if (lumaChroma) {
                    toRgb(row[at], row[at + 1], row[at + 2], rgb);
                } else {
                    rgb[0] = row[at];
                    rgb[1] = row[at + 1];
                    rgb[2] = row[at + 2];
                }
                double light = 1;
                if (bands == 4) {
                    light = ink(row, at, markers, rgb);
                }
                for (int c = 0; c < 3; c++) {
                    planes[c][y * width + x] = (float) (rgb[c] / 255.0 * light);
                }
            }
        }
        return new PixelGrid(
                markers.orientation().displayedWidthPx(width, height),
                markers.orientation().displayedHeightPx(width, height),
                List.of(
                        markers.orientation().display(planes[0], width, height),
                        markers.orientation().display(planes[1], width, height),
                        markers.orientation().display(planes[2], width, height)),
                0,
                1);
    }

    /** Turns cyan, magenta, yellow in {@code rgb} into the light they leave, and gives the share black leaves; Adobe's are inverted. */
    private static double ink(int[] row, int at, JpegMarkers markers, int[] rgb) {
        int black = row[at + 3];
        if (markers.adobe()) {
            return black / 255.0; // stored inverted: 255 is no ink, so the stored value is the light already
        }
        for (int c = 0; c < 3; c++) {
            rgb[c] = 255 - rgb[c];
        }
        return (255 - black) / 255.0;
    }

    private static void toRgb(int luma, int blueness, int redness, int[] rgb) {
        double cb = blueness - 128.0;
        double cr = redness - 128.0;
        rgb[0] = clamp(luma + 1.402 * cr);
        rgb[1] = clamp(luma - 0.344136286 * cb - 0.714136286 * cr);
        rgb[2] = clamp(luma + 1.772 * cb);
    }

    private static int clamp(double value) {
        return (int) Math.max(0, Math.min(255, Math.round(value)));
    }

    private static JpegMarkers markers(Path file, boolean toTheEnd) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            return JpegMarkers.read(in, toTheEnd);
        }
    }
}
