/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.MarkSearch;
import oblate.archive.NewMark;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.base.Progress;
import oblate.sky.Sky;
import oblate.workbench.words.Texts;

/**
 * Takes edits back and does them again by adding, superseding and withdrawing rows; nothing is deleted. Rows that were changed from elsewhere meanwhile are left
 * alone. Slow: off the event thread.
 */
final class EditPerformer {
    private static final Texts TEXTS = Texts.of(EditPerformer.class);
    private static final String UNDONE = TEXTS.text("why.undone");
    private static final String REDONE = TEXTS.text("why.redone");
    private final Archive archive;

    private final PictureEdits pictures;
    private final StateEdits states;

    EditPerformer(Archive archive, Sky sky) {
        this.archive = archive;
        pictures = new PictureEdits(archive, sky);
        states = new StateEdits(archive);
    }

    /** What came of it. */
    sealed interface Outcome {
        /**
         * It was done.
         *
         * @param journal with the rows that stand for others now
         * @param markId the mark that is there now, if one is
         * @param remark what a person should know, one sentence
         */
        record Performed(EditJournal journal, Optional<Long> markId, Optional<String> remark) implements Outcome {
            Performed(EditJournal journal, Optional<Long> markId) {
                this(journal, markId, Optional.empty());
            }
        }

        /**
         * It was done to the first of its pictures only, because it was stopped or because of trouble.
         *
         * @param pictures how many; less than the edit's weight
         * @param why one sentence or two
         */
        record Stopped(int pictures, String why) implements Outcome {}

        /**
         * It cannot be done any more.
         *
         * @param why one sentence
         */
        record Refused(String why) implements Outcome {}
    }

    /**
     * @param progress told of edits of many pictures, and asked whether to stop
     */
    Outcome undo(Edit edit, EditJournal journal, Progress progress) {
        if (edit instanceof Edit.MarkAdded e) {
            return withdraw(journal, e, e.markId(), UNDONE);
        }
        if (edit instanceof Edit.MarkReplaced e) {
            return replace(journal, e, e.newId(), e.oldId(), UNDONE);
        }
        if (edit instanceof Edit.MarkWithdrawn e) {
            return add(journal, e, e.markId());
        }
        if (edit instanceof Edit.FitKept e) {
            return withdrawFit(journal, e, e.fitId(), UNDONE);
        }
        if (edit instanceof Edit.FitWithdrawn e) {
            return keepAgain(journal, e, e.fitId());
        }
        if (edit instanceof Edit.StatesSeen e) {
            return states.undo(e, journal);
        }
        return pictures.undo(edit, journal, progress);
    }

    /**
     * @param progress told of edits of many pictures, and asked whether to stop
     */
    Outcome redo(Edit edit, EditJournal journal, Progress progress) {
        if (edit instanceof Edit.MarkAdded e) {
            return add(journal, e, e.markId());
        }
        if (edit instanceof Edit.MarkReplaced e) {
            return replace(journal, e, e.oldId(), e.newId(), REDONE);
        }
        if (edit instanceof Edit.MarkWithdrawn e) {
            return withdraw(journal, e, e.markId(), REDONE);
        }
        if (edit instanceof Edit.FitKept e) {
            boolean asBefore = e.before()
                    .map(b -> isCurrent(e.pictureId(), journal.fit(b)))
                    .orElseGet(() -> archive.currentFit(e.pictureId()).isEmpty());
            return asBefore ? keepAgain(journal, e, e.fitId()) : elsewhere(e, "edit.elsewhere.fit");
        }
        if (edit instanceof Edit.FitWithdrawn e) {
            return withdrawFit(journal, e, e.fitId(), REDONE);
        }
        if (edit instanceof Edit.StatesSeen e) {
            return states.redo(e, journal);
        }
        return pictures.redo(edit, journal, progress);
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

    static Outcome elsewhere(Edit edit, String key) {
        return new Outcome.Refused(TEXTS.text(key, edit.what()));
    }

    private Outcome withdraw(EditJournal journal, Edit edit, long markId, String reason) {
        Optional<StoredMark> mark = living(edit.pictureId(), journal.mark(markId));
        if (mark.isEmpty()) {
            return elsewhere(edit, "edit.elsewhere.mark");
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
            return elsewhere(edit, "edit.elsewhere.mark");
        }
        StoredMark again = archive.addMark(mark.get().mark());
        return new Outcome.Performed(journal.withMark(markId, again.id()), Optional.of(again.id()));
    }

    private Outcome replace(EditJournal journal, Edit edit, long fromId, long toId, String reason) {
        Optional<StoredMark> now = living(edit.pictureId(), journal.mark(fromId));
        Optional<StoredMark> wanted = row(edit.pictureId(), toId);
        if (now.isEmpty() || wanted.isEmpty()) {
            return elsewhere(edit, "edit.elsewhere.mark");
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

    private Outcome withdrawFit(EditJournal journal, Edit edit, long fitId, String reason) {
        long now = journal.fit(fitId);
        if (!isCurrent(edit.pictureId(), now)) {
            return elsewhere(edit, "edit.elsewhere.fit");
        }
        archive.withdrawFit(now, reason);
        return new Outcome.Performed(journal, Optional.empty());
    }

    private Outcome keepAgain(EditJournal journal, Edit edit, long fitId) {
        Optional<StoredFit> wanted = fit(edit.pictureId(), journal.fit(fitId))
                .filter(f -> f.withdrawnReason().isPresent());
        if (wanted.isEmpty()) {
            return elsewhere(edit, "edit.elsewhere.fit");
        }
        StoredFit fit = wanted.get();
        StoredFit again = archive.keepFit(fit.pictureId(), fit.fit(), fit.ephemeris(), fit.software());
        return new Outcome.Performed(journal.withFit(fitId, again.id()), Optional.empty());
    }
}
