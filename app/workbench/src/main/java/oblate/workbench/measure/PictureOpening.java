/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.base.ProblemException;
import oblate.workbench.WorkbenchContext;

/**
 * What came of opening a picture: the picture, or one sentence why not.
 *
 * @param picture the picture
 * @param pyramid its pixels made ready for showing
 * @param trouble why it could not be opened
 */
record PictureOpening(Optional<OpenPicture> picture, Optional<Pyramid> pyramid, Optional<String> trouble) {
    /** Reads a picture; a missing, broken or giant file is an outcome, not an exception. Slow. */
    static PictureOpening of(WorkbenchContext context, ArchivedPicture picture) {
        try {
            OpenPicture read = OpenPicture.read(context, picture);
            return new PictureOpening(Optional.of(read), Optional.of(Pyramid.of(read.pixels())), Optional.empty());
        } catch (ProblemException e) {
            return new PictureOpening(Optional.empty(), Optional.empty(), Optional.of(e.getMessage()));
        } catch (OutOfMemoryError e) {
            String words = picture.originalName() + ": its " + picture.widthPx() + " × " + picture.heightPx()
                    + " pixels need more memory than the program was given ("
                    + (Runtime.getRuntime().maxMemory() >> 20)
                    + " MB); start it with OBLATE_JAVA_OPTIONS=-Xmx4g, or cut the picture to the planet.";
            return new PictureOpening(Optional.empty(), Optional.empty(), Optional.of(words));
        }
    }
}
