/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.InputStream;
import java.io.PrintStream;

/**
 * The three streams of a run.
 *
 * @param in standard input
 * @param out results
 * @param err words for people
 * @param interactive whether a person watches {@code err} on a terminal
 */
public record Console(InputStream in, PrintStream out, PrintStream err, boolean interactive) {

    /** A line of words. */
    public void say(String sentence) {
        err.println(sentence);
    }
}
