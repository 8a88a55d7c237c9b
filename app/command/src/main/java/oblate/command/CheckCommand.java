/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.CheckReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code oblate check --archive DIR}. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Verifies every file of an archive against its SHA-256, and every row of the catalog.")
final class CheckCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(names = "--repair", description = "mend what can be mended without losing anything")
    private boolean repair;

    CheckCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        try (Archive open = services.openArchive(archive)) {
            ConsoleProgress progress = new ConsoleProgress(console, "Checking");
            CheckReport report = open.check(repair, progress);
            progress.finish();
            report.repaired().forEach(console::say);
            report.faults().forEach(console::say);
            console.out()
                    .println(report.pictures() + " pictures, " + report.bytes() + " bytes checked: "
                            + (report.isClean() ? "clean." : report.faults().size() + " faults."));
            return report.isClean() ? 0 : 1;
        }
    }
}
