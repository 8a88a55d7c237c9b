/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import oblate.base.Progress;

/**
 * The three streams of a run.
 *
 * @param in standard input
 * @param out results
 * @param err words for people
 * @param interactive whether a person watches {@code err} on a terminal
 * @param watcher is told the progress of long work instead of {@code err}, and may stop it
 */
public record Console(
        InputStream in, PrintStream out, PrintStream err, boolean interactive, Optional<Progress> watcher) {

    /** Progress goes to {@code err}. */
    public Console(InputStream in, PrintStream out, PrintStream err, boolean interactive) {
        this(in, out, err, interactive, Optional.empty());
    }

    /** The same, with words and results unsaid and progress told to a watcher. */
    Console watchedBy(Progress progress) {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        return new Console(in, nowhere, nowhere, false, Optional.of(progress));
    }

    /** A line of words. */
    public void say(String sentence) {
        err.println(sentence);
    }
}
