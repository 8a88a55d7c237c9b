/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

/** Something to be done before the first use, by the thread that comes first; the others wait for it. When it fails, the next use tries again. */
final class FirstUse {
    private final Runnable deed;
    private volatile boolean done;

    FirstUse(Runnable deed) {
        this.deed = deed;
    }

    /** Nothing is left to do. */
    static FirstUse done() {
        FirstUse nothing = new FirstUse(() -> {});
        nothing.done = true;
        return nothing;
    }

    void ensure() {
        if (!done) {
            synchronized (this) {
                if (!done) {
                    deed.run();
                    done = true;
                }
            }
        }
    }
}
