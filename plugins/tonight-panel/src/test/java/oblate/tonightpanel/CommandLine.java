/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import oblate.command.Console;
import oblate.command.Program;

/** What the command line says, to hold the window against. */
final class CommandLine {
    private CommandLine() {}

    /** Standard output of a run that must end well. */
    static String out(Path settings, String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Console console = new Console(
                new ByteArrayInputStream(new byte[0]),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                false);
        int status = new Program(console, Clock.systemUTC(), Map.of("OBLATE_SETTINGS", settings.toString())).run(words);
        if (status != 0) {
            throw new IllegalStateException(err.toString(StandardCharsets.UTF_8));
        }
        return out.toString(StandardCharsets.UTF_8);
    }
}
