/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import javax.swing.SwingUtilities;

/**
 * Notices from a thread of its own when the event thread does not come back, and where it is meanwhile. It counts beats it was awake for, so
 * that a machine that slept is not taken for a stall.
 */
final class EventWatch implements AutoCloseable {
    /** What the watch tells. */
    interface Listener {
        /**
         * The event thread has not come back; told at every beat while it lasts, on the watch's own thread.
         *
         * @param seconds for how long by now
         * @param frames where it is, innermost first
         */
        void stalled(long seconds, List<StackTraceElement> frames);

        /** It has come back. On the event thread. */
        void over(long seconds);
    }

    private final Duration beat;
    private final int beatsAllowed;
    private final Listener listener;
    private final AtomicLong missed = new AtomicLong();
    private final Thread thread = new Thread(this::watch, "oblate-watch");
    private volatile Thread eventThread;
    private volatile boolean asked;

    /**
     * @param beat how often to look
     * @param bound how long the event thread may stay away, a few beats
     */
    EventWatch(Duration beat, Duration bound, Listener listener) {
        this.beat = beat;
        this.beatsAllowed = (int) Math.max(1, bound.toMillis() / beat.toMillis());
        this.listener = listener;
        thread.setDaemon(true);
    }

    void start() {
        thread.start();
    }

    private void watch() {
        while (!thread.isInterrupted()) {
            if (!asked) {
                asked = true;
                SwingUtilities.invokeLater(this::answer);
            }
            try {
                Thread.sleep(beat.toMillis());
            } catch (InterruptedException e) {
                return;
            }
            Thread watched = eventThread;
            if (asked && missed.incrementAndGet() > beatsAllowed && watched != null) {
                listener.stalled(seconds(missed.get()), List.of(watched.getStackTrace()));
            }
        }
    }

    private void answer() {
        eventThread = Thread.currentThread();
        long beats = missed.getAndSet(0);
        asked = false;
        if (beats > beatsAllowed) {
            listener.over(seconds(beats));
        }
    }

    private long seconds(long beats) {
        return Math.round(beats * beat.toMillis() / 1000.0);
    }

    @Override
    public void close() {
        thread.interrupt();
    }
}
