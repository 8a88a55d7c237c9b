/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Clock;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/** The catalog as the parts of an archive work on it: one transaction a call, which has one time, and a note whether anything was written. */
final class Ledger {
    private final Catalog catalog;
    private final Clock clock;
    private final AtomicBoolean written = new AtomicBoolean();

    Ledger(Catalog catalog, Clock clock) {
        this.catalog = catalog;
        this.clock = clock;
    }

    Dialect dialect() {
        return catalog.dialect();
    }

    Clock clock() {
        return clock;
    }

    boolean isWritten() {
        return written.get();
    }

    <T> T read(Function<Handle, T> work) {
        return catalog.read(work);
    }

    /** Writes; the work is handed the time to note. */
    <T> T write(BiFunction<Handle, Instant, T> work) {
        T result = catalog.write(handle -> work.apply(handle, clock.instant()));
        written.set(true);
        return result;
    }
}
