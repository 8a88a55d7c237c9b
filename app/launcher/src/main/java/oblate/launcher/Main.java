/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import oblate.command.Program;

/** Entry of the runnable distribution. */
public final class Main {

    private Main() {}

    /** Follows the words of the command line and exits with their status. */
    public static void main(String[] args) {
        int status = Program.onProcess(args);
        System.exit(status);
    }
}
