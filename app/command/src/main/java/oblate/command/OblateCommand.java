/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import oblate.command.Program.LaunchHint;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Option;

/** {@code oblate} alone: opens the window. */
@Command(
        name = "oblate",
        description = {"Archive and measuring desk for planet pictures.", "Without a command, opens the window.", ""},
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        subcommands = HelpCommand.class,
        synopsisSubcommandLabel = "COMMAND",
        commandListHeading = "%nCommands:%n",
        footer = {
            "",
            "Results go to standard output, words to standard error.",
            "Exit status: 0 done, 1 some inputs were refused (each named, with why), 2 wrong usage.",
            "First steps:  oblate demo    then    oblate demo --open"
        })
final class OblateCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;
    private final LaunchHint hint;

    @Option(names = "--archive", paramLabel = "DIR", description = "archive to open in the window")
    private Path archive;

    OblateCommand(Services services, Console console, LaunchHint hint) {
        this.services = services;
        this.console = console;
        this.hint = hint;
    }

    @Override
    public Integer call() {
        return open(archive);
    }

    /**
     * Opens the window.
     *
     * @param folder the archive; null for the last one
     */
    int open(Path folder) {
        if (!hint.windowPossible()) {
            throw new UsageException("no display to open a window on; give a command instead (oblate help lists them)");
        }
        return new Window(services, console).open(folder);
    }
}
