/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.BackupReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate backup FILE --archive DIR}. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description = "Writes a whole archive into one zip file and reads that back to verify it. Overwrites nothing.")
final class BackupCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "FILE", description = "the new file, e.g. season-2031-03-25.zip")
    private Path file;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    BackupCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        try (Archive open = services.openArchive(archive)) {
            ConsoleProgress progress = new ConsoleProgress(console, "Backing up");
            BackupReport report = open.backup(file, progress);
            progress.finish();
            console.out()
                    .println(report.pictures() + " pictures, " + report.bytes() + " bytes written to " + report.path()
                            + ", read back and found equal.");
            return 0;
        }
    }
}
