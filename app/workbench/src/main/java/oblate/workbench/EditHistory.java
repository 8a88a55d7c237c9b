/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.Supplier;
import oblate.archive.Archive;
import oblate.archive.StoredMark;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.sky.Sky;
import oblate.workbench.words.Texts;

/**
 * What was done to the archive and can be undone, kept on the disk beside the window's settings, so that it outlives the window. To be called on the event
 * thread; the work itself runs in the background, in the order asked for.
 *
 * <p>Undoing is itself a new row in the archive that supersedes or withdraws; nothing is taken back in secret. An edit whose rows were changed from elsewhere
 * meanwhile is said to be no longer undoable and skipped.
 */
public final class EditHistory {
    private static final Texts TEXTS = Texts.of(EditHistory.class);
    private final EditPerformer performer;
    private final JournalFile file;
    private final Background background;
    private final Consumer<String> say;
    private final Listeners listeners = new Listeners();
    private final List<Consumer<Restored>> restoredListeners = new ArrayList<>();
    // Written by the one thread of ordered archive calls, read by the event thread.
    private volatile EditJournal journal = EditJournal.empty();

    /** Reads what earlier sessions kept; a broken journal is set aside and {@code say} told. */
    EditHistory(Archive archive, Sky sky, Path settingsFolder, Background background, Consumer<String> say) {
        this.background = background;
        this.say = say;
        performer = new EditPerformer(archive, sky);
        file = new JournalFile(settingsFolder, archive.folder());
        background.quietly(
                () -> {
                    JournalFile.Found found = file.read();
                    journal = found.journal();
                    return found.remark();
                },
                remark -> {
                    remark.ifPresent(say);
                    tell();
                });
    }

    /**
     * Something that was done.
     *
     * @param edit what is to be remembered of it; empty when there is nothing to undo
     * @param result what comes of it
     */
    public record Done<T>(Optional<Edit> edit, T result) {
        /** With an edit to be remembered. */
        public static <T> Done<T> of(Edit edit, T result) {
            return new Done<>(Optional.of(edit), result);
        }
    }

    /**
     * What an undo or a redo did.
     *
     * @param edit the edit taken back or done again
     * @param markId the mark that is there now, if one is
     */
    public record Restored(Edit edit, Optional<Long> markId) {}

    /** Remembers what was done to the archive already. */
    public void add(Edit edit) {
        background.quietly(() -> keep(journal.with(edit)), trouble -> {
            trouble.ifPresent(say);
            tell();
        });
    }

    private record Told<T>(Optional<T> result, Optional<String> trouble) {}

    /**
     * Does something to the archive in the background and remembers it.
     *
     * @param deed archive calls, off the event thread
     * @param whenDone gets the result on the event thread
     * @param whenFailed gets one sentence on the event thread when the archive refused; nothing is remembered then
     */
    public <T> void perform(Supplier<Done<T>> deed, Consumer<T> whenDone, Consumer<String> whenFailed) {
        background.quietly(() -> performed(deed), told -> {
            told.result()
                    .ifPresentOrElse(
                            result -> {
                                told.trouble().ifPresent(say);
                                tell();
                                whenDone.accept(result);
                            },
                            () -> whenFailed.accept(told.trouble().orElse("")));
        });
    }

    private <T> Told<T> performed(Supplier<Done<T>> deed) {
        Done<T> done;
        try {
            done = deed.get();
        } catch (ProblemException e) {
            return new Told<>(Optional.empty(), Optional.of(e.getMessage()));
        }
        Optional<String> trouble = done.edit().flatMap(edit -> keep(journal.with(edit)));
        return new Told<>(Optional.of(done.result()), trouble);
    }

    private Optional<String> keep(EditJournal fresh) {
        journal = fresh;
        try {
            file.write(fresh);
            return Optional.empty();
        } catch (ProblemException e) {
            return Optional.of(e.getMessage());
        }
    }

    /**
     * The living row of a mark under whatever number it has by now; empty when it was withdrawn or changed elsewhere. Slow: off the event thread.
     *
     * @param pictureId its picture
     * @param markId any of its rows
     */
    public Optional<StoredMark> livingMark(long pictureId, long markId) {
        return performer.living(pictureId, journal.mark(markId));
    }

    /** What would be undone next, in words. */
    public Optional<String> nextUndo() {
        return last(journal.done()).map(Edit::what);
    }

    /** What would be redone next, in words. */
    public Optional<String> nextRedo() {
        return last(journal.undone()).map(Edit::what);
    }

    private static Optional<Edit> last(List<Edit> edits) {
        return edits.isEmpty() ? Optional.empty() : Optional.of(edits.get(edits.size() - 1));
    }

    /** Takes back the newest edit, if there is one; one of many pictures shows its progress and can be stopped between two of them. */
    public void undo() {
        background.inOrder(TEXTS.text("edit.undoing"), progress -> turn(true, progress), this::turned);
    }

    /** Does the newest undone edit again, if there is one; as {@link #undo}. */
    public void redo() {
        background.inOrder(TEXTS.text("edit.redoing"), progress -> turn(false, progress), this::turned);
    }

    private Told<Restored> turn(boolean back, Progress progress) {
        EditJournal before = journal;
        Optional<Edit> edit = last(back ? before.done() : before.undone());
        if (edit.isEmpty() || progress.isCancelled()) {
            return new Told<>(Optional.empty(), Optional.empty());
        }
        EditPerformer.Outcome outcome =
                back ? performer.undo(edit.get(), before, progress) : performer.redo(edit.get(), before, progress);
        if (outcome instanceof EditPerformer.Outcome.Performed done) {
            EditJournal fresh = done.journal();
            Optional<String> trouble = keep(back ? fresh.back(true) : fresh.forth(true));
            return new Told<>(Optional.of(new Restored(edit.get(), done.markId())), trouble.or(done::remark));
        }
        if (outcome instanceof EditPerformer.Outcome.Stopped stopped) {
            return stopped(back, before, edit.get(), stopped);
        }
        keep(back ? before.back(false) : before.forth(false));
        return new Told<>(Optional.empty(), Optional.of(((EditPerformer.Outcome.Refused) outcome).why()));
    }

    /** The part that was done goes to the other side, the rest stays where it is and is next again. */
    private Told<Restored> stopped(boolean back, EditJournal before, Edit edit, EditPerformer.Outcome.Stopped stopped) {
        if (stopped.pictures() == 0) {
            return new Told<>(Optional.empty(), Optional.of(stopped.why()));
        }
        Optional<String> trouble =
                keep(back ? before.backPartly(stopped.pictures()) : before.forthPartly(stopped.pictures()));
        return new Told<>(
                Optional.of(new Restored(edit.part(0, stopped.pictures()), Optional.empty())),
                Optional.of(trouble.map(t -> stopped.why() + " " + t).orElse(stopped.why())));
    }

    private void turned(Told<Restored> told) {
        told.trouble().ifPresent(say);
        tell();
        told.result().ifPresent(r -> List.copyOf(restoredListeners).forEach(l -> l.accept(r)));
    }

    /** Called on the event thread after every change. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    /** Called on the event thread after an undo or a redo changed the archive. */
    public void whenRestored(Consumer<Restored> listener) {
        restoredListeners.add(listener);
    }

    private void tell() {
        listeners.tell();
    }

    /** Forgets the listeners of a jar that was switched off. */
    void forget(Predicate<Runnable> its) {
        listeners.forget(its);
    }
}
