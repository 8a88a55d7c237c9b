/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import oblate.base.ProblemException;

/** Does one thing to many inputs over the cores, giving the results in the order of the inputs; one bad input costs only itself. */
final class ManyPictures {
    private final Console console;
    private final int threads;

    ManyPictures(Console console) {
        this.console = console;
        this.threads = Math.max(1, Runtime.getRuntime().availableProcessors());
    }

    /**
     * One answer.
     *
     * @param value what came of it; null when refused
     * @param refusal the sentence when it was refused; null else
     */
    record Answer<R>(R value, String refusal) {
        private static final String NOT_DONE = "stopped before it was done";

        private static <R> Answer<R> stopped() {
            return new Answer<>(null, NOT_DONE);
        }
    }

    <T, R> List<Answer<R>> each(List<T> inputs, String work, Function<T, R> task) {
        ConsoleProgress progress = new ConsoleProgress(console, work);
        AtomicInteger done = new AtomicInteger();
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<Answer<R>>> pending = new ArrayList<>();
            for (T input : inputs) {
                pending.add(pool.submit(() -> {
                    Answer<R> answer = progress.isCancelled() ? Answer.stopped() : answer(input, task);
                    if (inputs.size() > 1) {
                        progress.report(done.incrementAndGet(), inputs.size(), "");
                    }
                    return answer;
                }));
            }
            List<Answer<R>> answers = new ArrayList<>();
            for (Future<Answer<R>> future : pending) {
                answers.add(future.get());
            }
            return answers;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } finally {
            pool.shutdownNow();
            progress.finish();
        }
    }

    private static <T, R> Answer<R> answer(T input, Function<T, R> task) {
        try {
            return new Answer<>(task.apply(input), null);
        } catch (ProblemException e) {
            return new Answer<>(null, e.getMessage());
        }
    }
}
