/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.nio.file.Path;
import oblate.base.Plugin;

/**
 * Extension point: a kind of picture file.
 *
 * <p>Implementations hold no state and are safe for many threads. They treat every file as hostile: {@link #readHeader} decides the pixel size
 * without decoding, and {@link #readPixels} is called only after that size passed the {@link PictureLimits}.
 */
public interface ImageFormat extends Plugin {

    /** Whether the first bytes (at most 64, fewer for a short file) look like this format. The file's name plays no part. */
    boolean claims(byte[] firstBytes);

    /**
     * Reads size and facts, no pixels.
     *
     * @throws oblate.base.ProblemException with an {@link ImageProblem} when the file is broken
     */
    PictureHeader readHeader(Path file);

    /**
     * Decodes the pixels, as displayed (top left first).
     *
     * @param header what {@link #readHeader} gave for this file
     * @throws oblate.base.ProblemException with an {@link ImageProblem} when the file is broken or cut short
     */
    PixelGrid readPixels(Path file, PictureHeader header);
}
