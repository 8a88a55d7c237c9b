/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * Who wants to be told. Every listener is told, whatever another one throws: that goes to the thread's handler of what nobody caught, which
 * names the plug-in. On the event thread only.
 */
final class Listeners {
    private final List<Runnable> all = new ArrayList<>();

    void add(Runnable listener) {
        all.add(listener);
    }

    /** Forgets some listeners, e.g. those of a jar that was switched off. */
    void forget(Predicate<Runnable> which) {
        all.removeIf(which);
    }

    @SuppressWarnings("checkstyle:IllegalCatch") // border: a stranger's listener must not keep the others from hearing
    void tell() {
        for (Runnable listener : List.copyOf(all)) {
            try {
                listener.run();
            } catch (RuntimeException | Error e) {
                Thread here = Thread.currentThread();
                here.getUncaughtExceptionHandler().uncaughtException(here, e);
            }
        }
    }
}
