/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import oblate.archive.Archive;
import oblate.archive.ArchiveProblem;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureCorrections;
import oblate.archive.PictureFacts;
import oblate.base.ProblemException;
import oblate.base.ProblemKind;
import oblate.base.Progress;
import oblate.workbench.Edit;
import oblate.workbench.PanelContext;
import oblate.workbench.words.Texts;

/** Corrects the facts of pictures in the background, with progress and a way to stop, and remembers how to take it back. */
final class Corrector {
    private static final Texts TEXTS = Texts.of(Corrector.class);
    /** What would befall every further picture too, each after a wait. */
    private static final Set<ProblemKind> CONCERNS_ALL =
            Set.of(ArchiveProblem.BUSY, ArchiveProblem.CANNOT_WRITE, ArchiveProblem.ARCHIVE_GONE);

    private final PanelContext context;
    private final Archive archive;

    Corrector(PanelContext context) {
        this.context = context;
        archive = context.archive();
    }

    /** What came of it: what was changed, and the first trouble there was. */
    private record Outcome(List<Edit.FactsChange> changes, int looked, int asked, Optional<String> trouble) {}

    /**
     * Corrects pictures.
     *
     * @param ids the pictures
     * @param change makes new facts of the old ones
     * @param what what is done, for the menu, e.g. "site of 12 pictures"
     * @param reason why, for the history
     */
    void correct(List<Long> ids, UnaryOperator<PictureFacts> change, String what, String reason) {
        correct(ids, change, what, reason, done -> {});
    }

    /**
     * As above, and tells whether all of it was done.
     *
     * @param whenEnded gets true when every picture was corrected, false when there was trouble or it was stopped
     */
    void correct(
            List<Long> ids,
            UnaryOperator<PictureFacts> change,
            String what,
            String reason,
            Consumer<Boolean> whenEnded) {
        AtomicReference<Optional<Outcome>> outcome = new AtomicReference<>(Optional.empty());
        context.background()
                .run(
                        TEXTS.text("correcting", what),
                        progress -> {
                            outcome.set(Optional.of(run(ids, change, reason, progress)));
                            return ids.size();
                        },
                        done -> {})
                // Also when it was stopped: what was done until then can be taken back.
                .whenEnded(() -> {
                    whenEnded.accept(outcome.get()
                            .filter(o -> o.trouble().isEmpty() && o.looked() == ids.size())
                            .isPresent());
                    outcome.get().ifPresent(o -> finish(o, what));
                    context.shelf().refresh();
                });
    }

    private Outcome run(List<Long> ids, UnaryOperator<PictureFacts> change, String reason, Progress progress) {
        PictureCorrections corrections = new PictureCorrections(archive, context.sky());
        List<Edit.FactsChange> changes = new ArrayList<>();
        Optional<String> trouble = Optional.empty();
        int looked = 0;
        for (int i = 0; i < ids.size() && !progress.isCancelled(); i++) {
            progress.report(
                    i,
                    ids.size(),
                    TEXTS.text("correcting.step", Integer.toString(i + 1), Integer.toString(ids.size())));
            try {
                Optional<ArchivedPicture> picture = archive.picture(ids.get(i));
                if (picture.isPresent()) {
                    PictureFacts before = PictureFacts.of(picture.get());
                    PictureFacts after = change.apply(before);
                    if (!after.equals(before)) {
                        ArchivedPicture made = corrections.correct(ids.get(i), after, reason);
                        changes.add(new Edit.FactsChange(
                                ids.get(i),
                                before,
                                PictureFacts.of(made),
                                picture.get().timeConflicts()));
                    }
                }
                looked++;
            } catch (ProblemException e) {
                trouble = trouble.or(() -> Optional.of(e.getMessage()));
                if (CONCERNS_ALL.contains(e.kind())) {
                    break;
                }
            }
        }
        return new Outcome(changes, looked, ids.size(), trouble);
    }

    private void finish(Outcome outcome, String what) {
        if (!outcome.changes().isEmpty()) {
            context.edits().add(new Edit.FactsCorrected(outcome.changes(), what));
        }
        int done = outcome.changes().size();
        String said = done == 0 && outcome.trouble().isEmpty()
                ? TEXTS.text("corrected.none", Integer.toString(outcome.asked()))
                : TEXTS.text("corrected", what, Integer.toString(done), Integer.toString(outcome.asked()));
        context.say(outcome.trouble()
                .map(t -> TEXTS.text("corrected.trouble", t, Integer.toString(outcome.asked()), Integer.toString(done)))
                .orElse(said));
    }

    /** Settles that the times of pictures are right, though their sources disagree. */
    void settleTimes(List<ArchivedPicture> pictures, String reason) {
        List<Edit.Disagreement> settled = Collections.synchronizedList(new ArrayList<>());
        context.background()
                .run(
                        TEXTS.text("settling"),
                        progress -> {
                            for (int i = 0; i < pictures.size() && !progress.isCancelled(); i++) {
                                ArchivedPicture picture = pictures.get(i);
                                progress.report(i, pictures.size(), picture.originalName());
                                archive.settleTime(picture.id(), reason);
                                settled.add(new Edit.Disagreement(picture.id(), picture.timeConflicts()));
                            }
                            return settled;
                        },
                        done -> {})
                // Also when it was stopped or failed: what was settled until then can be taken back.
                .whenEnded(() -> {
                    if (!settled.isEmpty()) {
                        context.edits().add(new Edit.TimesSettled(settled, reason));
                    }
                    context.shelf().refresh();
                });
    }
}
