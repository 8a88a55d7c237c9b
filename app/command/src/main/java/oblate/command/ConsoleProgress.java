/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Locale;
import oblate.base.Progress;

/** Shows progress on standard error: one line rewritten on a terminal, a line every tenth part elsewhere. Safe for many threads. */
final class ConsoleProgress implements Progress {
    private final Console console;
    private final String work;
    private long lastTenth = -1;
    private boolean open;

    ConsoleProgress(Console console, String work) {
        this.console = console;
        this.work = work;
    }

    @Override
    public synchronized void report(long done, long total, String message) {
        if (console.watcher().isPresent()) {
            console.watcher().get().report(done, total, work);
            return;
        }
        long tenth = total > 0 ? 10 * done / total : done / 20;
        if (console.interactive()) {
            String line = String.format(Locale.ROOT, "%s %d/%d %s", work, done, total, message);
            console.err().print("\r\u001b[K" + (line.length() > 100 ? line.substring(0, 100) : line));
            console.err().flush();
            open = true;
        } else if (tenth != lastTenth && total > 0) {
            lastTenth = tenth;
            console.say(String.format(Locale.ROOT, "%s %d/%d", work, done, total));
        }
    }

    /** Ends the rewritten line. */
    synchronized void finish() {
        if (open) {
            console.err().print("\r\u001b[K");
            console.err().flush();
            open = false;
        }
    }

    @Override
    public boolean isCancelled() {
        return Thread.currentThread().isInterrupted()
                || console.watcher().filter(Progress::isCancelled).isPresent();
    }
}
