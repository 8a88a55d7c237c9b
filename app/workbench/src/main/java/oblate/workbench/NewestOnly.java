/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.SwingUtilities;
import oblate.base.ProblemException;

/**
 * Asks in the background, only ever for what was wanted last: questions that come while one is being answered wait, and all but the newest are
 * dropped. On the event thread only.
 *
 * @param <Q> question
 * @param <A> answer
 */
public final class NewestOnly<Q, A> {
    private final Background background;
    private final Function<Q, A> answer;
    private final Consumer<A> whenAnswered;
    private final Consumer<String> whenNot;
    private Optional<Q> next = Optional.empty();
    private boolean busy;

    /** An answer, or why there is none. */
    private record Outcome<A>(Optional<A> answer, String problem) {}

    /**
     * Asks through a window's background.
     *
     * @param answer off the event thread
     * @param whenNot gets one sentence when there is no answer
     */
    public NewestOnly(
            Background background, Function<Q, A> answer, Consumer<A> whenAnswered, Consumer<String> whenNot) {
        this.background = background;
        this.answer = answer;
        this.whenAnswered = whenAnswered;
        this.whenNot = whenNot;
    }

    /** Asks; the answer is given unless a newer question takes its place. */
    public void ask(Q question) {
        next = Optional.of(question);
        if (!busy) {
            start();
        }
    }

    private void start() {
        Q question = next.orElseThrow();
        next = Optional.empty();
        busy = true;
        background.aside(() -> tried(question), this::came);
    }

    private Outcome<A> tried(Q question) {
        boolean ended = false;
        try {
            A answered = answer.apply(question);
            ended = true;
            return new Outcome<>(Optional.of(answered), "");
        } catch (ProblemException e) {
            ended = true;
            return new Outcome<>(Optional.empty(), e.getMessage());
        } finally {
            if (!ended) {
                // an unexpected failure, which the background tells; later questions must not wait for it for ever
                SwingUtilities.invokeLater(this::free);
            }
        }
    }

    private void free() {
        busy = false;
        if (next.isPresent()) {
            start();
        }
    }

    private void came(Outcome<A> outcome) {
        free();
        outcome.answer().ifPresentOrElse(whenAnswered, () -> whenNot.accept(outcome.problem()));
    }
}
