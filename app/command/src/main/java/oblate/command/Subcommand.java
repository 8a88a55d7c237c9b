/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import oblate.base.Plugin;

/** Extension point: a subcommand. Its id is the word typed after {@code oblate}. */
public interface Subcommand extends Plugin {

    /**
     * The command itself: a {@code Callable<Integer>} with picocli's annotations, giving the exit status.
     *
     * @param services what it may ask
     * @param console where it talks
     */
    Object command(Services services, Console console);
}
