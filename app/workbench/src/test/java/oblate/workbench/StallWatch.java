/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.lang.System.Logger.Level;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Times every dispatch of the event thread during a window test ({@code @RegisterExtension}). What takes longer than the first bound is
 * reported, what takes longer than the second fails the test with the place the event thread was at; the second is generous, because test machines
 * are busy. What is dispatched within a dispatch counts for the outer one.
 */
public final class StallWatch implements BeforeEachCallback, AfterEachCallback {
    private final Duration reported;
    private final Duration failing;
    private final List<Stall> stalls = new ArrayList<>();
    private Timed queue;
    private Thread looker;

    /**
     * A dispatch that took long.
     *
     * @param ms how long
     * @param event what was dispatched
     * @param frames where the event thread was once the first bound was passed, innermost first
     */
    public record Stall(double ms, String event, List<StackTraceElement> frames) {
        @Override
        public String toString() {
            StringBuilder text = new StringBuilder(Math.round(ms) + " ms in " + event);
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
        queue = new Timed();
        Toolkit.getDefaultToolkit().getSystemEventQueue().push(queue);
        looker = new Thread(this::look, "stall-watch");
        looker.setDaemon(true);
        looker.start();
    }

    /** Ends the watch and gives what took longer than the first bound. */
    List<Stall> stop() {
        looker.interrupt();
        queue.end();
        return stalls();
    }

    /** What took longer than the first bound so far. */
    List<Stall> stalls() {
        synchronized (stalls) {
            return List.copyOf(stalls);
        }
    }

    private void look() {
        Timed watched = queue;
        try {
            while (true) {
                Thread.sleep(5);
                watched.look(reported.toNanos());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The event queue while the watch lasts. */
    private final class Timed extends EventQueue {
        private final Object lock = new Object();
        private int depth;
        private long begunNs;
        private Thread thread;
        private List<StackTraceElement> frames = List.of();

        @Override
        protected void dispatchEvent(AWTEvent event) {
            synchronized (lock) {
                if (depth++ == 0) {
                    begunNs = System.nanoTime();
                    thread = Thread.currentThread();
                    frames = List.of();
                }
            }
            try {
                super.dispatchEvent(event);
            } finally {
                ended(event);
            }
        }

        private void ended(AWTEvent event) {
            synchronized (lock) {
                if (--depth > 0) {
                    return;
                }
                long took = System.nanoTime() - begunNs;
                if (took > reported.toNanos()) {
                    synchronized (stalls) {
                        stalls.add(new Stall(took / 1e6, event.paramString(), frames));
                    }
                }
            }
        }

        void look(long boundNs) {
            synchronized (lock) {
                if (depth > 0 && frames.isEmpty() && System.nanoTime() - begunNs > boundNs) {
                    frames = List.of(thread.getStackTrace());
                }
            }
        }

        /** Takes the queue off again; on the event thread, as the queue itself demands. */
        void end() {
            try {
                EventQueue.invokeAndWait(this::pop);
            } catch (InterruptedException | java.lang.reflect.InvocationTargetException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
