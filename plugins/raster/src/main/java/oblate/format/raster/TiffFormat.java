/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import com.drew.lang.RandomAccessFileReader;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import oblate.base.ProblemException;
import oblate.image.DecodeGuard;
import oblate.image.ImageFormat;
import oblate.image.ImageProblem;
import oblate.image.PictureHeader;
import oblate.image.PixelGrid;

/** TIFF and BigTIFF: grey, colour, palette, with or without alpha, 1 to 32 bits, integer or floating, strips or tiles. The first page only. */
public final class TiffFormat implements ImageFormat {

    @Override
    public String id() {
        return "tiff";
    }

    @Override
    public String label() {
        return "TIFF";
    }

    @Override
    public boolean claims(byte[] firstBytes) {
        return TiffTags.begins(firstBytes);
    }

    @Override
    public PictureHeader readHeader(Path file) {
        return DecodeGuard.run(file, "its tags", () -> {
            try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "r")) {
                TiffLayout layout = TiffLayout.of(file, TiffTags.read(raw), raw.length());
                FactList facts = new FactList();
                raw.seek(0);
                if (!layout.big()) {
                    ExifFacts.add(new RandomAccessFileReader(raw), facts);
                }
                if (layout.pages() > 1) {
                    facts.add("TIFF", "Pages", layout.pages() + ", of which the first is read");
                }
                Orientation orientation = layout.orientation();
                return new PictureHeader(
                        id(),
                        orientation.displayedWidthPx(layout.widthPx(), layout.heightPx()),
                        orientation.displayedHeightPx(layout.widthPx(), layout.heightPx()),
                        layout.channels(),
                        layout.bits(),
                        layout.floating(),
                        facts.facts());
            }
        });
    }

    @Override
    public PixelGrid readPixels(Path file, PictureHeader header) {
        TiffLayout layout = DecodeGuard.run(file, "its tags", () -> {
            try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "r")) {
                return TiffLayout.of(file, TiffTags.read(raw), raw.length());
            }
        });
        return DecodeGuard.run(file, "its pixels", () -> {
            if (layout.floating()) {
                // As a picture the decoder would cut floating samples off at 0 and 1; as a raster it leaves them alone.
                Raster raster = Decoders.readRaster(Decoders.tiff(), file);
                checkSize(layout, raster.getWidth(), raster.getHeight());
                return StoredSamples.of(raster, header.channels(), false, layout.orientation());
            }
            BufferedImage image = Decoders.read(Decoders.tiff(), file);
            checkSize(layout, image.getWidth(), image.getHeight());
            return StoredSamples.of(image, header.channels(), layout.signed(), layout.orientation());
        });
    }

    private static void checkSize(TiffLayout layout, int width, int height) throws IOException {
        if (width != layout.widthPx() || height != layout.heightPx()) {
            throw new IOException("it decodes to " + width + " × " + height + " pixels");
        }
    }

    static ProblemException unsupported(Path file, String what) {
        return new ProblemException(ImageProblem.UNSUPPORTED, file, what);
    }
}
