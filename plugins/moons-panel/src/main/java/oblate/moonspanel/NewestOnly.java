/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import oblate.base.ProblemException;
import oblate.workbench.Background;

/**
 * Asks in the background, only ever for what was wanted last: questions that come while one is being answered wait, and all but the newest are
 * dropped. On the event thread only.
 *
 * @param <Q> question
 * @param <A> answer
 */
final class NewestOnly<Q, A> {
    private final Background background;
    private final Function<Q, A> answer;
    private final Consumer<A> whenAnswered;
    private final Consumer<String> whenNot;
    private Optional<Q> next = Optional.empty();
    private boolean busy;

    /** An answer, or why there is none. */
    private record Outcome<A>(Optional<A> answer, String problem) {}

    /**
     * @param answer off the event thread
     * @param whenNot gets one sentence when there is no answer
     */
    NewestOnly(Background background, Function<Q, A> answer, Consumer<A> whenAnswered, Consumer<String> whenNot) {
        this.background = background;
        this.answer = answer;
        this.whenAnswered = whenAnswered;
        this.whenNot = whenNot;
    }

    void ask(Q question) {
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
        try {
            return new Outcome<>(Optional.of(answer.apply(question)), "");
        } catch (ProblemException e) {
            return new Outcome<>(Optional.empty(), e.getMessage());
        }
    }

    private void came(Outcome<A> outcome) {
        busy = false;
        if (next.isPresent()) {
            start();
        }
        outcome.answer().ifPresentOrElse(whenAnswered, () -> whenNot.accept(outcome.problem()));
    }
}
