/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.archive.MarkSearch;
import oblate.report.Reports;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate report KIND --archive DIR}. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description = {"Writes a table from an archive: positions (one row per mark) or drifts (one row per feature)."},
        footer = {"", "Example:  oblate report positions --archive season --format csv --out positions.csv"})
final class ReportCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    /** What to report. */
    enum Kind {
        POSITIONS,
        DRIFTS
    }

    @Parameters(paramLabel = "KIND", description = "positions or drifts")
    private Kind kind;

    @Option(names = "--archive", required = true, paramLabel = "DIR", description = "the archive's folder")
    private Path archive;

    @Option(names = "--planet", paramLabel = "PLANET", description = "needed when the archive holds several planets")
    private String planet;

    @Option(
            names = "--system",
            paramLabel = "SYSTEM",
            description = "1, 2, 3 or iau; left out, each feature's own or the planet's custom at its latitude")
    private String system;

    @Option(names = "--feature", paramLabel = "NAME", description = "only this feature")
    private String feature;

    @Option(names = "--from", paramLabel = "TIME", description = "pictures not before this date or instant")
    private String from;

    @Option(names = "--to", paramLabel = "TIME", description = "pictures before this date or instant")
    private String to;

    @Option(
            names = "--note-sent",
            paramLabel = "WORDS",
            description =
                    "remember in the archive that these results went out, and where to; their pictures get a tick")
    private String noteSent;

    @Mixin
    private OutputOptions output;

    ReportCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        try (Archive open = services.openArchive(archive)) {
            PlanetModel model = new PlanetChoice(services).of(open, Optional.ofNullable(planet));
            Optional<RotationSystem> chosen = Optional.ofNullable(system).map(s -> PlanetChoice.system(model, s));
            if (kind == Kind.DRIFTS) {
                if (noteSent != null) {
                    throw new UsageException("--note-sent belongs to positions: drifts are of many pictures");
                }
                return new DriftRun(services, console)
                        .archived(open, model, chosen, Optional.ofNullable(feature), output);
            }
            MarkSearch search = new MarkSearch(
                    Optional.of(model.id()),
                    Optional.empty(),
                    Optional.ofNullable(feature),
                    Optional.ofNullable(from).map(SearchOptions::instant),
                    Optional.ofNullable(to).map(SearchOptions::instant),
                    false);
            output.write(new Reports().positions(open, model, search, chosen), services, console);
            if (noteSent != null) {
                noteSent(open, search);
            }
            return 0;
        }
    }

    private void noteSent(Archive open, MarkSearch search) {
        if (noteSent.isBlank()) {
            throw new UsageException("--note-sent is empty; say in a few words where it went");
        }
        List<Long> pictures = open.marks(search).stream()
                .map(m -> m.mark().pictureId())
                .distinct()
                .sorted()
                .toList();
        open.noteReported(pictures, "sent: " + noteSent);
        console.say("Noted: the results of " + pictures.size() + " pictures were sent (" + noteSent + ").");
    }
}
