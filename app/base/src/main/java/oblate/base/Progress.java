/* SPDX-License-Identifier: Apache-2.0 */
package oblate.base;

/** How far a long piece of work has come, told to whoever waits; and their wish to stop. Called from any thread. */
public interface Progress {

    /** Tells nobody and is never cancelled. */
    Progress SILENT = new Progress() {
        @Override
        public void report(long done, long total, String message) {
            // nobody is listening
        }

        @Override
        public boolean isCancelled() {
            return false;
        }
    };

    /**
     * @param done steps finished, 0…total
     * @param total steps in all; 0 when not known
     * @param message what is being done, a few words
     */
    void report(long done, long total, String message);

    /** Whether the person asked to stop; long work looks at this between steps and ends early, leaving nothing half-done. */
    boolean isCancelled();
}
