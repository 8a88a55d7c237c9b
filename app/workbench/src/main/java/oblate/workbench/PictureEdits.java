/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureCorrections;
import oblate.archive.PictureFacts;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.sky.Sky;
import oblate.workbench.words.Texts;

/**
 * Takes back and does again what was said of pictures, one after the other; one that was changed elsewhere meanwhile is left as it is. It can be stopped between
 * two pictures, and trouble with one leaves those before it done. Slow: off the event thread.
 */
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

    EditPerformer.Outcome undo(Edit edit, EditJournal journal, Progress progress) {
        return each(edit, journal, progress, i -> {
            if (edit instanceof Edit.FactsCorrected e) {
                return isTakenBack(e.changes().get(i));
            }
            Edit.Disagreement d = ((Edit.TimesSettled) edit).settled().get(i);
            boolean asExpected = is(d.pictureId(), p -> p.timeConflicts().isEmpty());
            if (asExpected) {
                archive.reopenTime(d.pictureId(), d.conflicts(), UNDONE);
            }
            return asExpected;
        });
    }

    EditPerformer.Outcome redo(Edit edit, EditJournal journal, Progress progress) {
        return each(edit, journal, progress, i -> {
            if (edit instanceof Edit.FactsCorrected e) {
                Edit.FactsChange change = e.changes().get(i);
                return isCorrected(change.pictureId(), change.before(), change.after(), REDONE);
            }
            Edit.TimesSettled e = (Edit.TimesSettled) edit;
            Edit.Disagreement d = e.settled().get(i);
            boolean asExpected = is(d.pictureId(), p -> p.timeConflicts().equals(d.conflicts()));
            if (asExpected) {
                archive.settleTime(d.pictureId(), e.reason());
            }
            return asExpected;
        });
    }

    /**
     * @param step does it to the picture at a place of the edit; false when it was changed elsewhere meanwhile
     */
    private static EditPerformer.Outcome each(Edit edit, EditJournal journal, Progress progress, IntPredicate step) {
        int all = edit.weight();
        int left = 0;
        for (int i = 0; i < all; i++) {
            if (progress.isCancelled()) {
                return new EditPerformer.Outcome.Stopped(
                        i, TEXTS.text("edit.stopped", edit.what(), Integer.toString(i), Integer.toString(all)));
            }
            progress.report(i, all, TEXTS.text("edit.step", Integer.toString(i + 1), Integer.toString(all)));
            try {
                left += step.test(i) ? 0 : 1;
            } catch (ProblemException e) {
                if (i == 0) {
                    throw e;
                }
                String so = TEXTS.text("edit.stopped", edit.what(), Integer.toString(i), Integer.toString(all));
                return new EditPerformer.Outcome.Stopped(i, e.getMessage() + " " + so);
            }
        }
        return told(edit, journal, left);
    }

    private boolean is(long pictureId, Predicate<ArchivedPicture> expected) {
        return archive.picture(pictureId).filter(expected).isPresent();
    }

    private boolean isTakenBack(Edit.FactsChange change) {
        // The facts and the disagreement go back in two steps; a failure may have come between them.
        boolean half = !change.conflicts().isEmpty()
                && is(
                        change.pictureId(),
                        p -> PictureFacts.of(p).equals(change.before())
                                && p.timeConflicts().isEmpty());
        boolean done = half || isCorrected(change.pictureId(), change.after(), change.before(), UNDONE);
        if (done && !change.conflicts().isEmpty()) {
            archive.reopenTime(change.pictureId(), change.conflicts(), UNDONE);
        }
        return done;
    }

    private boolean isCorrected(long pictureId, PictureFacts from, PictureFacts to, String reason) {
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
