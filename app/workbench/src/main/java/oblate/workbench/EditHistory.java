/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What was done in this session and can be undone. On the event thread only.
 *
 * <p>Undoing is itself a new row in the archive that supersedes or withdraws; nothing is taken back in secret.
 */
public final class EditHistory {
    /** One thing a person did. */
    public interface Edit {
        /** What was done, e.g. "mark". */
        String what();

        /** Takes it back. */
        void undo();

        /** Does it again. */
        void redo();
    }

    private static final int MOST = 200;
    private final Deque<Edit> done = new ArrayDeque<>();
    private final Deque<Edit> undone = new ArrayDeque<>();
    private final Listeners listeners = new Listeners();

    /** Remembers what was just done; what had been undone can no longer be redone. */
    public void add(Edit edit) {
        done.push(edit);
        undone.clear();
        if (done.size() > MOST) {
            done.removeLast();
        }
        tell();
    }

    /** What would be undone next, in words. */
    public Optional<String> nextUndo() {
        return Optional.ofNullable(done.peek()).map(Edit::what);
    }

    /** What would be redone next, in words. */
    public Optional<String> nextRedo() {
        return Optional.ofNullable(undone.peek()).map(Edit::what);
    }

    /** Takes back the newest edit, if there is one. */
    public void undo() {
        if (!done.isEmpty()) {
            Edit edit = done.pop();
            undone.push(edit);
            edit.undo();
            tell();
        }
    }

    /** Does the newest undone edit again, if there is one. */
    public void redo() {
        if (!undone.isEmpty()) {
            Edit edit = undone.pop();
            done.push(edit);
            edit.redo();
            tell();
        }
    }

    /** Called after every change. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    private void tell() {
        listeners.tell();
    }

    /** Forgets the listeners of a jar that was switched off. */
    void forget(Predicate<Runnable> its) {
        listeners.forget(its);
    }
}
