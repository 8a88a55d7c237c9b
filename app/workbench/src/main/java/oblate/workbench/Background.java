/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.workbench.words.Texts;

/**
 * Runs work off the event thread and brings its result back onto it. Long work is shown with its progress and can be stopped; archive calls run
 * one after the other, in the order they were asked for.
 */
public final class Background implements AutoCloseable {
    private static final Texts TEXTS = Texts.of(Background.class);
    private static final int SOON_MS = 60;
    private static final long LAST_CALLS_S = 4;
    private final ExecutorService inOrder = Executors.newSingleThreadExecutor(named("oblate-archive"));
    private final ExecutorService longWork = Executors.newSingleThreadExecutor(named("oblate-work"));
    private final ExecutorService prompt = Executors.newSingleThreadExecutor(named("oblate-prompt"));
    private final ExecutorService small = Executors.newFixedThreadPool(2, named("oblate-small"));
    private final AtomicInteger pending = new AtomicInteger();
    private final List<Job> jobs = new ArrayList<>();
    private final Listeners listeners = new Listeners();
    private final Consumer<String> sayProblem;
    private final Function<Throwable, Optional<String>> blame;

    /**
     * @param sayProblem shows one sentence to a person; called on the event thread
     */
    public Background(Consumer<String> sayProblem) {
        this(sayProblem, thrown -> Optional.empty());
    }

    /**
     * @param sayProblem shows one sentence to a person; called on the event thread
     * @param blame the sentence that names the plug-in something unexpected came from, if it came from one; called on the event thread
     */
    Background(Consumer<String> sayProblem, Function<Throwable, Optional<String>> blame) {
        this.sayProblem = sayProblem;
        this.blame = blame;
    }

    private static ThreadFactory named(String name) {
        AtomicInteger number = new AtomicInteger();
        return task -> {
            Thread thread = new Thread(task, name + "-" + number.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        };
    }

    /**
     * Long work that tells its progress.
     *
     * @param <T> what comes of it
     */
    @FunctionalInterface
    public interface Work<T> {
        /** Does the work; looks at {@link Progress#isCancelled()} between steps. */
        T run(Progress progress);
    }

    /**
     * Runs long work, shown at the foot of the window until it ends.
     *
     * @param title what is being done, a few words
     * @param work the work, off the event thread
     * @param whenDone gets its result on the event thread, unless it failed or was stopped
     * @return the work under way
     */
    public <T> Job run(String title, Work<T> work, Consumer<T> whenDone) {
        Job job = new Job(title, this::tellListeners);
        jobs.add(job);
        return begin(job, longWork, work, result -> {
            if (!job.isCancelled()) {
                whenDone.accept(result);
            }
        });
    }

    /**
     * Runs archive calls that may take long, in the order asked for among the {@linkplain #quietly short ones}, shown at the foot of the window before other
     * work, which they hold up.
     *
     * @param work looks at {@link Progress#isCancelled()} between steps and returns what it did until then
     * @param whenDone gets its result on the event thread, also when it was stopped
     */
    <T> Job inOrder(String title, Work<T> work, Consumer<T> whenDone) {
        Job job = new Job(title, this::tellListeners);
        jobs.add(0, job);
        return begin(job, inOrder, work, whenDone);
    }

    private <T> Job begin(Job job, ExecutorService where, Work<T> work, Consumer<T> whenDone) {
        tellListeners();
        submit(where, () -> work.run(job), whenDone, () -> {
            jobs.remove(job);
            tellListeners();
            job.ended();
        });
        return job;
    }

    /** Runs a short archive call, in the order asked for, without showing it; {@code whenDone} gets its result on the event thread. */
    public <T> void quietly(Supplier<T> call, Consumer<T> whenDone) {
        submit(inOrder, call, whenDone, () -> {});
    }

    /** Runs what a person is waiting for at this moment, such as opening a picture, ahead of long work and of thumbnails. */
    public <T> void promptly(Supplier<T> call, Consumer<T> whenDone) {
        submit(prompt, call, whenDone, () -> {});
    }

    /** Runs a small piece of work whose order does not matter, such as a thumbnail. */
    public <T> void aside(Supplier<T> call, Consumer<T> whenDone) {
        submit(small, call, whenDone, () -> {});
    }

    /** Does something on the event thread a moment later, when what waits to be painted has been; until then it counts as under way. */
    public void soon(Runnable deed) {
        pending.incrementAndGet();
        Timer timer = new Timer(SOON_MS, e -> {
            try {
                if (!inOrder.isShutdown()) {
                    deed.run();
                }
            } finally {
                pending.decrementAndGet();
            }
        });
        timer.setRepeats(false);
        timer.start();
    }

    @SuppressWarnings(
            "checkstyle:IllegalCatch") // border: work of any panel may fail in any way, and a person must hear of it
    private <T> void submit(ExecutorService where, Supplier<T> call, Consumer<T> whenDone, Runnable atEnd) {
        if (where.isShutdown()) {
            // The window is closed: nobody waits for this any more.
            return;
        }
        pending.incrementAndGet();
        where.execute(() -> {
            Runnable back;
            try {
                T result = call.get();
                back = () -> whenDone.accept(result);
            } catch (RuntimeException | Error e) {
                back = () -> sayProblem.accept(sentence(e));
            }
            Runnable last = back;
            SwingUtilities.invokeLater(() -> {
                try {
                    atEnd.run();
                } finally {
                    try {
                        last.run();
                    } finally {
                        pending.decrementAndGet();
                    }
                }
            });
        });
    }

    private String sentence(Throwable e) {
        if (e instanceof ProblemException) {
            return e.getMessage();
        }
        Optional<String> named = blame.apply(e);
        if (named.isPresent()) {
            return named.get();
        }
        System.getLogger(Background.class.getName()).log(System.Logger.Level.ERROR, "unexpected failure", e);
        return TEXTS.text(
                "unexpected", e.getClass().getSimpleName() + (e.getMessage() == null ? "" : ": " + e.getMessage()));
    }

    /** Work under way that is shown, oldest first. On the event thread. */
    public List<Job> jobs() {
        return List.copyOf(jobs);
    }

    /** Whether nothing is under way or waiting. */
    public boolean isIdle() {
        return pending.get() == 0;
    }

    /** Called on the event thread when work begins, moves or ends. */
    public void whenChanged(Runnable listener) {
        listeners.add(listener);
    }

    private void tellListeners() {
        listeners.tell();
    }

    /** Stops what runs, takes nothing more, and waits for the archive calls already asked for, so that no mark dropped at the last moment is lost. */
    @Override
    public void close() {
        jobs().forEach(Job::stop);
        List.of(inOrder, longWork, prompt, small).forEach(ExecutorService::shutdown);
        try {
            if (!inOrder.awaitTermination(LAST_CALLS_S, TimeUnit.SECONDS)) {
                System.getLogger(Background.class.getName())
                        .log(System.Logger.Level.WARNING, "the archive did not take the last changes in time");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Forgets the listeners of a jar that was switched off. */
    void forget(Predicate<Runnable> its) {
        listeners.forget(its);
    }
}
