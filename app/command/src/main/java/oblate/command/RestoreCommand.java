/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.BackupReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate restore FILE --archive DIR}. */
@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        description = "Brings an archive back from a backup into a new or empty folder, verifying every file.")
final class RestoreCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(paramLabel = "FILE", description = "a file made with: oblate backup")
    private Path file;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "a new or empty folder")
    private Path archive;

    RestoreCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ConsoleProgress progress = new ConsoleProgress(console, "Restoring");
        BackupReport report = Archive.restore(file, archive, progress);
        progress.finish();
        console.out()
                .println(report.pictures() + " pictures, " + report.bytes() + " bytes restored to " + report.path()
                        + " and verified.");
        return 0;
    }
}
