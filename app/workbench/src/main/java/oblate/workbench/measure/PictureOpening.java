/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.base.ProblemException;
import oblate.workbench.WorkbenchContext;
import oblate.workbench.words.Texts;

/**
 * What came of opening a picture: the picture, or one sentence why not.
 *
 * @param picture the picture
 * @param pyramid its pixels made ready for showing
 * @param trouble why it could not be opened
 */
record PictureOpening(Optional<OpenPicture> picture, Optional<Pyramid> pyramid, Optional<String> trouble) {
    private static final Texts TEXTS = Texts.of(PictureOpening.class);
    /** Reads a picture; a missing, broken or giant file is an outcome, not an exception. Slow. */
    static PictureOpening of(WorkbenchContext context, ArchivedPicture picture) {
        try {
            OpenPicture read = OpenPicture.read(context, picture);
            return new PictureOpening(Optional.of(read), Optional.of(Pyramid.of(read.pixels())), Optional.empty());
        } catch (ProblemException e) {
            return new PictureOpening(Optional.empty(), Optional.empty(), Optional.of(e.getMessage()));
        } catch (OutOfMemoryError e) {
            String words = TEXTS.text(
                    "opening.too.large",
                    picture.originalName(),
                    Integer.toString(picture.widthPx()),
                    Integer.toString(picture.heightPx()),
                    Long.toString(Runtime.getRuntime().maxMemory() >> 20));
            return new PictureOpening(Optional.empty(), Optional.empty(), Optional.of(words));
        }
    }
}
