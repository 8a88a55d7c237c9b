/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import java.awt.image.BufferedImage;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import oblate.image.DecodeGuard;
import oblate.image.ImageFormat;
import oblate.image.PictureHeader;
import oblate.image.PixelGrid;

/** PNG: grey, colour, palette, with or without alpha, 1 to 16 bits, interlaced or not. Alpha is dropped. */
public final class PngFormat implements ImageFormat {

    @Override
    public String id() {
        return "png";
    }

    @Override
    public String label() {
        return "PNG";
    }

    @Override
    public boolean claims(byte[] firstBytes) {
        return PngChunks.signed(firstBytes);
    }

    @Override
    public PictureHeader readHeader(Path file) {
        return DecodeGuard.run(file, "its chunks", () -> {
            PngChunks chunks = chunks(file, false);
            Orientation orientation = chunks.orientation();
            return new PictureHeader(
                    id(),
                    orientation.displayedWidthPx(chunks.widthPx(), chunks.heightPx()),
                    orientation.displayedHeightPx(chunks.widthPx(), chunks.heightPx()),
                    chunks.channels(),
                    chunks.bitDepth(),
                    false,
                    chunks.facts().facts());
        });
    }

    @Override
    public PixelGrid readPixels(Path file, PictureHeader header) {
        PngChunks chunks = DecodeGuard.run(file, "its chunks", () -> chunks(file, true));
        return DecodeGuard.run(file, "its pixels", () -> {
            BufferedImage image = Decoders.read(Decoders.png(), file);
            return StoredSamples.of(image, header.channels(), false, chunks.orientation());
        });
    }

    private static PngChunks chunks(Path file, boolean checkPixels) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            return PngChunks.read(in, checkPixels);
        }
    }
}
