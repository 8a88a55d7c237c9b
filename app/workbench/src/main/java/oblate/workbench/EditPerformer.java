/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.MarkSearch;
import oblate.archive.NewMark;
import oblate.archive.PictureCorrections;
import oblate.archive.PictureFacts;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.sky.Sky;

/**
 * Takes edits back and does them again by adding, superseding and withdrawing rows; nothing is deleted. Rows that were changed from elsewhere meanwhile are left
 * alone. Slow: off the event thread.
 */
final class EditPerformer {
    private static final String UNDONE = "undone";
    private static final String REDONE = "done again";
    private final Archive archive;

    private final PictureCorrections corrections;

    EditPerformer(Archive archive, Sky sky) {
        this.archive = archive;
        corrections = new PictureCorrections(archive, sky);
    }

    /** What came of it. */
    sealed interface Outcome {
        /**
         * It was done.
         *
         * @param journal with the rows that stand for others now
         * @param markId the mark that is there now, if one is
         */
        record Performed(EditJournal journal, Optional<Long> markId) implements Outcome {}

        /**
         * It cannot be done any more.
         *
         * @param why one sentence
         */
        record Refused(String why) implements Outcome {}
    }

    Outcome undo(Edit edit, EditJournal journal) {
        if (edit instanceof Edit.MarkAdded e) {
            return withdraw(journal, e, e.markId(), UNDONE);
        }
        if (edit instanceof Edit.MarkReplaced e) {
            return replace(journal, e, e.newId(), e.oldId(), UNDONE);
        }
        if (edit instanceof Edit.MarkWithdrawn e) {
            return add(journal, e, e.markId());
        }
        if (edit instanceof Edit.FactsCorrected e) {
            return correct(journal, e, e.after(), e.before(), UNDONE);
        }
        return undoFit(journal, (Edit.FitKept) edit);
    }

    Outcome redo(Edit edit, EditJournal journal) {
        if (edit instanceof Edit.MarkAdded e) {
            return add(journal, e, e.markId());
        }
        if (edit instanceof Edit.MarkReplaced e) {
            return replace(journal, e, e.oldId(), e.newId(), REDONE);
        }
        if (edit instanceof Edit.MarkWithdrawn e) {
            return withdraw(journal, e, e.markId(), REDONE);
        }
        if (edit instanceof Edit.FactsCorrected e) {
            return correct(journal, e, e.before(), e.after(), REDONE);
        }
        return redoFit(journal, (Edit.FitKept) edit);
    }

    private Optional<StoredMark> row(long pictureId, long markId) {
        MarkSearch all = new MarkSearch(
                Optional.empty(), Optional.of(pictureId), Optional.empty(), Optional.empty(), Optional.empty(), true);
        return archive.marks(all).stream().filter(m -> m.id() == markId).findFirst();
    }

    /** The living row of a mark: measuring anew is followed, any other change from elsewhere is not. */
    Optional<StoredMark> living(long pictureId, long markId) {
        Optional<StoredMark> at = row(pictureId, markId);
        while (at.isPresent() && at.get().supersededBy().isPresent()) {
            StoredMark before = at.get();
            at = row(pictureId, before.supersededBy().get()).filter(next -> sameMark(before.mark(), next.mark()));
        }
        return at.filter(StoredMark::isCurrent);
    }

    private static boolean sameMark(NewMark a, NewMark b) {
        return a.pixel().equals(b.pixel())
                && a.featureId().equals(b.featureId())
                && a.what().equals(b.what());
    }

    private static Outcome elsewhere(Edit edit, String thing) {
        return new Outcome.Refused("This " + thing + " was changed elsewhere meanwhile, so " + edit.what()
                + " can no longer be undone or done again; it was skipped.");
    }

    private Outcome withdraw(EditJournal journal, Edit edit, long markId, String reason) {
        Optional<StoredMark> mark = living(edit.pictureId(), journal.mark(markId));
        if (mark.isEmpty()) {
            return elsewhere(edit, "mark");
        }
        archive.withdrawMark(mark.get().id(), reason);
        return new Outcome.Performed(
                mark.get().id() == markId
                        ? journal
                        : journal.withMark(markId, mark.get().id()),
                Optional.empty());
    }

    private Outcome add(EditJournal journal, Edit edit, long markId) {
        Optional<StoredMark> mark = row(edit.pictureId(), journal.mark(markId));
        if (mark.isEmpty() || mark.get().withdrawnReason().isEmpty()) {
            return elsewhere(edit, "mark");
        }
        StoredMark again = archive.addMark(mark.get().mark());
        return new Outcome.Performed(journal.withMark(markId, again.id()), Optional.of(again.id()));
    }

    private Outcome replace(EditJournal journal, Edit edit, long fromId, long toId, String reason) {
        Optional<StoredMark> now = living(edit.pictureId(), journal.mark(fromId));
        Optional<StoredMark> wanted = row(edit.pictureId(), toId);
        if (now.isEmpty() || wanted.isEmpty()) {
            return elsewhere(edit, "mark");
        }
        StoredMark fresh = archive.supersedeMark(now.get().id(), wanted.get().mark(), reason);
        return new Outcome.Performed(journal.withMark(fromId, fresh.id()), Optional.of(fresh.id()));
    }

    private Optional<StoredFit> fit(long pictureId, long fitId) {
        return archive.fitHistory(pictureId).stream()
                .filter(f -> f.id() == fitId)
                .findFirst();
    }

    private boolean isCurrent(long pictureId, long fitId) {
        return archive.currentFit(pictureId).filter(f -> f.id() == fitId).isPresent();
    }

    private Outcome correct(EditJournal journal, Edit edit, PictureFacts from, PictureFacts to, String reason) {
        boolean asExpected = archive.picture(edit.pictureId())
                .map(PictureFacts::of)
                .filter(from::equals)
                .isPresent();
        if (!asExpected) {
            return elsewhere(edit, "picture");
        }
        corrections.correct(edit.pictureId(), to, reason);
        return new Outcome.Performed(journal, Optional.empty());
    }

    private Outcome undoFit(EditJournal journal, Edit.FitKept edit) {
        long now = journal.fit(edit.fitId());
        if (!isCurrent(edit.pictureId(), now)) {
            return elsewhere(edit, "fit");
        }
        archive.withdrawFit(now, UNDONE);
        return new Outcome.Performed(journal, Optional.empty());
    }

    private Outcome redoFit(EditJournal journal, Edit.FitKept edit) {
        Optional<StoredFit> wanted = fit(edit.pictureId(), journal.fit(edit.fitId()));
        boolean asBefore = edit.before()
                .map(b -> isCurrent(edit.pictureId(), journal.fit(b)))
                .orElseGet(() -> archive.currentFit(edit.pictureId()).isEmpty());
        if (wanted.isEmpty() || !asBefore) {
            return elsewhere(edit, "fit");
        }
        StoredFit fit = wanted.get();
        StoredFit again = archive.keepFit(fit.pictureId(), fit.fit(), fit.ephemeris(), fit.software());
        return new Outcome.Performed(journal.withFit(edit.fitId(), again.id()), Optional.empty());
    }
}
