/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;

/** One picture's correction and what follows from it for its marks and fits, all in one transaction. */
final class CorrectionStep {
    private final Handle handle;
    private final Instant now;
    private final KeptPictures pictures;
    private final KeptMarks marks;
    private final FitRows fits = new FitRows();

    CorrectionStep(Handle handle, Instant now, KeptPictures pictures, KeptMarks marks) {
        this.handle = handle;
        this.now = now;
        this.pictures = pictures;
        this.marks = marks;
    }

    ArchivedPicture picture(long id) {
        return pictures.existing(handle, id);
    }

    List<StoredFit> fitsOf(long pictureId) {
        return fits.ofPicture(handle, pictureId);
    }

    List<StoredMark> marksOf(long pictureId) {
        return marks.find(handle, MarkSearch.ofPicture(pictureId));
    }

    void correct(PictureCorrecting.Corrected corrected, String reason) {
        new PictureCorrecting().update(handle, corrected, reason, now);
    }

    void supersede(StoredMark before, NewMark mark, String reason) {
        marks.supersede(handle, before, mark, reason, now);
    }

    void withdraw(StoredMark mark, String reason) {
        marks.withdraw(handle, mark, reason, now);
    }

    void withdraw(StoredFit fit, String reason) {
        fits.withdraw(handle, fit, reason, now);
    }
}
