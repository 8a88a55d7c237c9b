/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import java.util.List;
import oblate.command.Program;

/** Entry of the runnable distribution. */
public final class Main {

    private Main() {}

    /** Follows the words of the command line and exits with their status. */
    public static void main(String[] args) {
        boolean window =
                args.length == 0 || args[0].startsWith("-") || List.of(args).contains("--open");
        if (!window) {
            // Charts and maps are drawn without any display, also where one is named but not there.
            System.setProperty("java.awt.headless", "true");
        }
        int status = Program.onProcess(args);
        System.exit(status);
    }
}
