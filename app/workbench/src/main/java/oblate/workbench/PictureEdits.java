/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import java.util.function.Predicate;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureCorrections;
import oblate.archive.PictureFacts;
import oblate.sky.Sky;
import oblate.workbench.words.Texts;

/** Takes back and does again what was said of pictures; one that was changed elsewhere meanwhile is left as it is. Slow: off the event thread. */
final class PictureEdits {
    private static final Texts TEXTS = Texts.of(PictureEdits.class);
    private static final String UNDONE = TEXTS.text("why.undone");
    private static final String REDONE = TEXTS.text("why.redone");
    private final Archive archive;
    private final PictureCorrections corrections;

    PictureEdits(Archive archive, Sky sky) {
        this.archive = archive;
        corrections = new PictureCorrections(archive, sky);
    }

    EditPerformer.Outcome undo(Edit edit, EditJournal journal) {
        int left = 0;
        if (edit instanceof Edit.FactsCorrected e) {
            for (Edit.FactsChange change : e.changes()) {
                boolean done = correct(change.pictureId(), change.after(), change.before(), UNDONE);
                if (done && !change.conflicts().isEmpty()) {
                    archive.reopenTime(change.pictureId(), change.conflicts(), UNDONE);
                }
                left += done ? 0 : 1;
            }
        } else if (edit instanceof Edit.TimesSettled e) {
            for (Edit.Disagreement d : e.settled()) {
                boolean asExpected = is(d.pictureId(), p -> p.timeConflicts().isEmpty());
                if (asExpected) {
                    archive.reopenTime(d.pictureId(), d.conflicts(), UNDONE);
                }
                left += asExpected ? 0 : 1;
            }
        }
        return told(edit, journal, left);
    }

    EditPerformer.Outcome redo(Edit edit, EditJournal journal) {
        int left = 0;
        if (edit instanceof Edit.FactsCorrected e) {
            for (Edit.FactsChange change : e.changes()) {
                left += correct(change.pictureId(), change.before(), change.after(), REDONE) ? 0 : 1;
            }
        } else if (edit instanceof Edit.TimesSettled e) {
            for (Edit.Disagreement d : e.settled()) {
                boolean asExpected = is(d.pictureId(), p -> p.timeConflicts().equals(d.conflicts()));
                if (asExpected) {
                    archive.settleTime(d.pictureId(), e.reason());
                }
                left += asExpected ? 0 : 1;
            }
        }
        return told(edit, journal, left);
    }

    private boolean is(long pictureId, Predicate<ArchivedPicture> expected) {
        return archive.picture(pictureId).filter(expected).isPresent();
    }

    private boolean correct(long pictureId, PictureFacts from, PictureFacts to, String reason) {
        boolean asExpected = is(pictureId, p -> PictureFacts.of(p).equals(from));
        if (asExpected) {
            corrections.correct(pictureId, to, reason);
        }
        return asExpected;
    }

    static EditPerformer.Outcome told(Edit edit, EditJournal journal, int left) {
        if (left == edit.weight()) {
            return EditPerformer.elsewhere(edit, "edit.elsewhere.picture");
        }
        Optional<String> remark = left == 0
                ? Optional.empty()
                : Optional.of(TEXTS.text("edit.left", Integer.toString(left), Integer.toString(edit.weight())));
        return new EditPerformer.Outcome.Performed(journal, Optional.empty(), remark);
    }
}
