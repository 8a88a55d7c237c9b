/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.HistoryEntry;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code oblate history --archive DIR}. */
@Command(
        name = "history",
        mixinStandardHelpOptions = true,
        description = "Lists what was done to an archive, newest first.")
final class HistoryCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(
            names = "--limit",
            defaultValue = "50",
            paramLabel = "N",
            description = "at most so many (default: ${DEFAULT-VALUE})")
    private int limit;

    @Mixin
    private OutputOptions output;

    HistoryCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        try (Archive open = services.openArchive(archive)) {
            TableOf<HistoryEntry> t = new TableOf<>("History");
            t.text("at_utc", "when", h -> h.atUtc().toString());
            t.text("action", "what", HistoryEntry::action);
            t.text("subject", "to what", HistoryEntry::subject);
            t.text("detail", "in words", HistoryEntry::detail);
            output.write(t.rows(open.history(limit)), services, console);
            return 0;
        }
    }
}
