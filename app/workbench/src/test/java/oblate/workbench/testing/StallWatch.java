/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.testing;

import java.awt.EventQueue;
import java.lang.System.Logger.Level;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Watches during a window test how long the event thread keeps others waiting ({@code @RegisterExtension}): it is asked some twenty times a second, and
 * what it takes to answer is how long a key or a click would have waited. What takes longer than the first bound is reported, what takes longer than the
 * second fails the test with the place the event thread was at; the second is generous, because test machines are busy.
 *
 * <p>The queue of events is left as it is: robots that wait for a queue to run empty would wait in vain for one that was taken off again.
 */
public final class StallWatch implements BeforeEachCallback, AfterEachCallback {
    private static final long PAUSE_MS = 50;
    private final Duration reported;
    private final Duration failing;
    private final List<Stall> stalls = new ArrayList<>();
    private Thread looker;
    private volatile Thread eventThread;

    /**
     * A wait that took long.
     *
     * @param ms how long
     * @param frames where the event thread was once the first bound was passed, innermost first
     */
    public record Stall(double ms, List<StackTraceElement> frames) {
        @Override
        public String toString() {
            StringBuilder text = new StringBuilder(Math.round(ms) + " ms");
            frames.stream().limit(40).forEach(f -> text.append("\n\tat ").append(f));
            return text.toString();
        }
    }

    /** Reports above 100 ms, fails above 1000 ms. */
    public StallWatch() {
        this(Duration.ofMillis(100), Duration.ofMillis(1000));
    }

    /** With other bounds. */
    public StallWatch(Duration reported, Duration failing) {
        this.reported = reported;
        this.failing = failing;
    }

    @Override
    public void beforeEach(ExtensionContext context) {
        start();
    }

    @Override
    public void afterEach(ExtensionContext context) {
        List<Stall> all = stop();
        all.forEach(s -> System.getLogger(StallWatch.class.getName())
                .log(Level.INFO, context.getDisplayName() + ": the event thread stood still for " + s));
        all.stream().filter(s -> s.ms() > failing.toMillis()).findFirst().ifPresent(s -> {
            throw new AssertionError("the event thread stood still for " + s);
        });
    }

    void start() {
        try {
            EventQueue.invokeAndWait(() -> eventThread = Thread.currentThread());
        } catch (InterruptedException | java.lang.reflect.InvocationTargetException e) {
            throw new IllegalStateException(e);
        }
        looker = new Thread(this::look, "stall-watch");
        looker.setDaemon(true);
        looker.start();
    }

    /** Ends the watch and gives what took longer than the first bound. */
    List<Stall> stop() {
        looker.interrupt();
        try {
            looker.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return stalls();
    }

    /** What took longer than the first bound so far. */
    List<Stall> stalls() {
        synchronized (stalls) {
            return List.copyOf(stalls);
        }
    }

    private void look() {
        try {
            while (true) {
                ask();
                Thread.sleep(PAUSE_MS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void ask() throws InterruptedException {
        CountDownLatch answered = new CountDownLatch(1);
        AtomicReference<Thread> events = new AtomicReference<>();
        long asked = System.nanoTime();
        EventQueue.invokeLater(() -> {
            events.set(Thread.currentThread());
            answered.countDown();
        });
        if (answered.await(reported.toMillis(), TimeUnit.MILLISECONDS)) {
            eventThread = events.get();
            return;
        }
        List<StackTraceElement> frames = List.of(eventThread.getStackTrace());
        try {
            answered.await();
        } finally {
            synchronized (stalls) {
                stalls.add(new Stall((System.nanoTime() - asked) / 1e6, frames));
            }
        }
    }
}
