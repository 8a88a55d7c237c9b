/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import javax.swing.SwingUtilities;
import oblate.base.Progress;

/** Long work under way: how far it has come, and a way to stop it. Safe for many threads. */
public final class Job implements Progress {
    private final String title;
    private final Runnable whenMoved;
    private volatile boolean cancelled;
    private volatile long done;
    private volatile long total;
    private volatile String message = "";
    private volatile long lastToldMs;
    private Runnable whenEnded = () -> {};

    Job(String title, Runnable whenMoved) {
        this.title = title;
        this.whenMoved = whenMoved;
    }

    /** What is being done. */
    public String title() {
        return title;
    }

    /** The part being done now; empty when not told. */
    public String message() {
        return message;
    }

    /** Share done, 0…1; negative when not known. */
    public double share() {
        return total > 0 ? Math.min(1, done / (double) total) : -1;
    }

    /** Asks the work to stop. */
    public void stop() {
        cancelled = true;
    }

    /** Called on the event thread once the work has ended, however it did, before its result is handed on. On the event thread. */
    public Job whenEnded(Runnable listener) {
        whenEnded = listener;
        return this;
    }

    void ended() {
        whenEnded.run();
    }

    @Override
    public void report(long stepsDone, long stepsTotal, String what) {
        done = stepsDone;
        total = stepsTotal;
        message = what;
        long now = System.currentTimeMillis();
        if (now - lastToldMs > 50) {
            lastToldMs = now;
            SwingUtilities.invokeLater(whenMoved);
        }
    }

    @Override
    public boolean isCancelled() {
        return cancelled;
    }
}
