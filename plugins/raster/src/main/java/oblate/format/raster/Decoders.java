/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.raster;

import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * The decoding libraries. Streams are made by hand and cached in memory, so the switch {@code ImageIO.setUseCache}, which is one for the
 * whole program and decides on temporary files, is left as whoever owns it set it.
 */
final class Decoders {

    private Decoders() {}

    static ImageReader png() throws IOException {
        return registered("png");
    }

    static ImageReader jpeg() throws IOException {
        return registered("jpeg");
    }

    /** Made without the registry, because the JDK's own TIFF reader, which refuses common files, may come first there. */
    static ImageReader tiff() throws IOException {
        return new TIFFImageReaderSpi().createReaderInstance(null);
    }

    private static ImageReader registered(String name) throws IOException {
        ImageReader chosen = null;
        for (Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(name); readers.hasNext(); ) {
            ImageReader reader = readers.next();
            boolean better = reader.getClass().getName().startsWith("com.twelvemonkeys");
            if (chosen == null || better) {
                chosen = reader;
            }
        }
        if (chosen == null) {
            throw new IOException("this Java has no decoder for it");
        }
        return chosen;
    }

    /** The first picture of a file. */
    static BufferedImage read(ImageReader reader, Path file) throws IOException {
        return with(reader, file, () -> reader.read(0));
    }

    /** The first picture of a file as its channels are stored, without turning them into colours. */
    static Raster readRaster(ImageReader reader, Path file) throws IOException {
        return with(reader, file, () -> reader.readRaster(0, null));
    }

    private static <T> T with(ImageReader reader, Path file, Reading<T> reading) throws IOException {
        Losses losses = new Losses();
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file));
                MemoryCacheImageInputStream stream = new MemoryCacheImageInputStream(in)) {
            reader.setInput(stream, true, true);
            reader.addIIOReadWarningListener(losses);
            T result = reading.read();
            Optional<String> loss = losses.first();
            if (loss.isPresent()) {
                throw new IOException(loss.get());
            }
            return result;
        } finally {
            reader.dispose();
        }
    }

    /** One call of a decoder. */
    @FunctionalInterface
    private interface Reading<T> {
        T read() throws IOException;
    }

    /** Listens for warnings which mean that pixels were made up; decoders only murmur where a measurement must refuse. */
    private static final class Losses implements javax.imageio.event.IIOReadWarningListener {
        private String first;

        @Override
        public void warningOccurred(ImageReader source, String warning) {
            String text = String.valueOf(warning).toLowerCase(Locale.ROOT);
            boolean lossy = text.contains("premature end")
                    || text.contains("truncated")
                    || text.contains("corrupt jpeg data")
                    || text.contains("unexpected end");
            if (lossy && !text.contains("extraneous bytes") && first == null) {
                first = warning;
            }
        }

        Optional<String> first() {
            return Optional.ofNullable(first);
        }
    }
}
