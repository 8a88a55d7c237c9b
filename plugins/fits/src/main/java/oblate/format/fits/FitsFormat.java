/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import oblate.base.ProblemException;
import oblate.image.DecodeGuard;
import oblate.image.ImageFormat;
import oblate.image.ImageProblem;
import oblate.image.PictureHeader;
import oblate.image.PixelGrid;

/** FITS: the first image of a file, integer or floating, plain, tile-compressed or the whole file packed by gzip. */
public final class FitsFormat implements ImageFormat {
    private static final byte[] START = "SIMPLE  =".getBytes(StandardCharsets.US_ASCII);

    @Override
    public String id() {
        return "fits";
    }

    @Override
    public String label() {
        return "FITS";
    }

    @Override
    public boolean claims(byte[] firstBytes) {
        boolean plain =
                firstBytes.length >= START.length && Arrays.equals(firstBytes, 0, START.length, START, 0, START.length);
        return plain || FitsFile.isGzip(firstBytes);
    }

    @Override
    public PictureHeader readHeader(Path file) {
        return DecodeGuard.run(file, "its FITS header", () -> {
            try (FitsFile fits = FitsFile.open(file)) {
                FitsImage image = find(file, fits);
                return new PictureHeader(
                        id(),
                        image.widthPx(),
                        image.heightPx(),
                        image.channels(),
                        Math.abs(image.bitpix()),
                        image.bitpix() < 0,
                        image.facts());
            }
        });
    }

    @Override
    public PixelGrid readPixels(Path file, PictureHeader header) {
        return DecodeGuard.run(file, "its FITS data", () -> {
            try (FitsFile fits = FitsFile.open(file)) {
                FitsImage image = find(file, fits);
                return image.readPixels(fits);
            }
        });
    }

    private static FitsImage find(Path file, FitsFile fits) throws IOException {
        FitsHeader primary = fits.nextHeader();
        if (primary == null) {
            throw new ProblemException(
                    ImageProblem.UNSUPPORTED,
                    file,
                    fits.packed() ? "gzip round something that is no FITS file" : "a FITS header with no content");
        }
        FitsHeader header = primary;
        for (int number = 1; header != null; number++) {
            if (FitsImage.isImage(header)) {
                return FitsImage.of(file, primary, header, number, fits);
            }
            fits.skipData(header);
            header = fits.nextHeader();
        }
        throw new ProblemException(
                ImageProblem.UNSUPPORTED, file, "FITS without a picture in it (tables or headers only)");
    }
}
