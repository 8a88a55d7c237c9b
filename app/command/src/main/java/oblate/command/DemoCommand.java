/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code oblate demo}. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "Makes the sample season (invented), files it, fits every disc, marks the features, fits their drifts,",
            "writes the tables, and prints what it found beside what is true.",
            "Run again, it goes on from what is there."
        })
final class DemoCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Option(
            names = "--folder",
            paramLabel = "DIR",
            defaultValue = "oblate-sample",
            description = "where the season, its archive and the tables go (default: ${DEFAULT-VALUE} in this folder)")
    private Path folder;

    @Option(names = "--open", description = "then open the archive in the window")
    private boolean open;

    DemoCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        Demo demo = new Demo(services, console, folder);
        int status = demo.run();
        if (open) {
            return new Window(services, console).open(demo.archiveFolder());
        }
        console.say("To look at it:  oblate --archive " + demo.archiveFolder() + "   or  oblate demo --open");
        return status;
    }
}
