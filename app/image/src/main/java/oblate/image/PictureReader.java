package oblate.image;

import java.nio.file.Path;
import java.util.List;

/** Reads any picture file one of the formats claims; refuses the rest with a sentence naming every format asked. Safe for many threads. */
public final class PictureReader {
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
        throw new UnsupportedOperationException(file + "" + formats + limits);
    }

    /**
     * Size, facts and pixels of a file.
     *
     * @throws oblate.base.ProblemException as {@link #header}, and when the pixels are cut short or broken
     */
    public DecodedPicture decode(Path file) {
        throw new UnsupportedOperationException(file + "");
    }
}
