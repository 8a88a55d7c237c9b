/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import oblate.base.ProblemException;

/** Reads any picture file one of the formats claims; refuses the rest with a sentence naming every format asked. Safe for many threads. */
public final class PictureReader {
    private static final int FIRST_BYTES = 64;

    private final List<ImageFormat> formats;
    private final PictureLimits limits;

    /**
     * @param formats asked in this order
     * @param limits checked before anything is decoded
     */
    public PictureReader(List<ImageFormat> formats, PictureLimits limits) {
        this.formats = List.copyOf(formats);
        this.limits = limits;
    }

    /**
     * Size and facts of a file.
     *
     * @throws oblate.base.ProblemException with an {@link ImageProblem}: missing, unreadable, empty, of no known format, too large, broken
     */
    public PictureHeader header(Path file) {
        return header(file, formatOf(file));
    }

    /**
     * Size, facts and pixels of a file.
     *
     * @throws oblate.base.ProblemException as {@link #header}, and when the pixels are cut short or broken
     */
    public DecodedPicture decode(Path file) {
        ImageFormat format = formatOf(file);
        PictureHeader header = header(file, format);
        PixelGrid pixels = DecodeGuard.run(file, "its pixels", () -> format.readPixels(file, header));
        if (pixels.widthPx() != header.widthPx()
                || pixels.heightPx() != header.heightPx()
                || pixels.channels() != header.channels()) {
            throw new ProblemException(
                    ImageProblem.BROKEN, file, "its pixels", "they are not of the size its header claims");
        }
        return new DecodedPicture(header, pixels);
    }

    private PictureHeader header(Path file, ImageFormat format) {
        PictureHeader header = DecodeGuard.run(file, "its header", () -> format.readHeader(file));
        if (header.widthPx() < 1 || header.heightPx() < 1) {
            throw new ProblemException(
                    ImageProblem.BROKEN,
                    file,
                    "its header",
                    "it claims " + header.widthPx() + " × " + header.heightPx() + " pixels");
        }
        if (header.widthPx() > limits.maxSidePx() || header.heightPx() > limits.maxSidePx()) {
            throw new ProblemException(
                    ImageProblem.TOO_LARGE, file, header.widthPx(), header.heightPx(), limits.maxSidePx() + " a side");
        }
        if ((long) header.widthPx() * header.heightPx() > limits.maxPixels()) {
            throw new ProblemException(
                    ImageProblem.TOO_LARGE, file, header.widthPx(), header.heightPx(), limits.maxPixels() + " in all");
        }
        return header;
    }

    @SuppressWarnings(
            "checkstyle:IllegalCatch") // border to a stranger's code: whatever its claims() throws costs only itself
    private ImageFormat formatOf(Path file) {
        byte[] firstBytes = firstBytes(file);
        for (ImageFormat format : formats) {
            try {
                if (format.claims(firstBytes.clone())) {
                    return format;
                }
            } catch (RuntimeException e) {
                // a format that cannot even look at the first bytes does not claim them
            }
        }
        String asked = formats.isEmpty()
                ? "no format is installed"
                : formats.stream().map(ImageFormat::label).collect(Collectors.joining(", "));
        throw new ProblemException(ImageProblem.NO_FORMAT, file, asked);
    }

    private byte[] firstBytes(Path file) {
        if (!Files.exists(file)) {
            throw new ProblemException(ImageProblem.MISSING, file);
        }
        if (!Files.isRegularFile(file)) {
            throw new ProblemException(
                    ImageProblem.UNREADABLE, file, Files.isDirectory(file) ? "it is a folder" : "it is no plain file");
        }
        try (InputStream in = Files.newInputStream(file)) {
            long length = Files.size(file);
            if (length == 0) {
                throw new ProblemException(ImageProblem.EMPTY, file);
            }
            if (length > limits.maxFileBytes()) {
                throw new ProblemException(ImageProblem.FILE_TOO_LONG, file, length, limits.maxFileBytes());
            }
            return in.readNBytes(FIRST_BYTES);
        } catch (IOException e) {
            throw unreadable(file, e);
        }
    }

    /** What the system says when it will not open a file, as one sentence. */
    static ProblemException unreadable(Path file, IOException e) {
        String why = e instanceof AccessDeniedException
                ? "access is denied"
                : e.getClass().getSimpleName() + ": " + e.getMessage();
        return new ProblemException(e, ImageProblem.UNREADABLE, file, why);
    }
}
