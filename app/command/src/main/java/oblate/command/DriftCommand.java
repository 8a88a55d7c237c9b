/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkFile;
import oblate.drift.MarkTable;
import oblate.drift.SystemConversion;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate drift FILE.csv}, or with {@code --archive}. */
@Command(
        name = "drift",
        mixinStandardHelpOptions = true,
        description = {
            "Fits the drift of each feature: rate per day and per 30 days, rotation period, speed, with errors.",
            "Marks come from a CSV file (time_utc, lon_deg and if known feature, lat_deg, sigma_deg) or from an archive."
        },
        footer = {
            "",
            "Longitudes grow westward on Jupiter: what runs ahead of its system has a negative rate.",
            "Examples:  oblate drift marks.csv --planet jupiter --system 2",
            "           oblate drift --archive season"
        })
final class DriftCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "CSV of marks; - for standard input")
    private String file;

    @Option(names = "--archive", paramLabel = "DIR", description = "take the marks of this archive")
    private Path archive;

    @Option(
            names = "--planet",
            paramLabel = "PLANET",
            description = "the planet (of an archive: when it holds several)")
    private String planet;

    @Option(
            names = "--system",
            paramLabel = "SYSTEM",
            description = "1, 2, 3 or iau: of the file's longitudes; of an archive's, left out, each feature's own")
    private String system;

    @Option(
            names = "--to-system",
            paramLabel = "SYSTEM",
            description = "fit in this system; each of a file's longitudes is converted at its own instant")
    private String toSystem;

    @Option(names = "--feature", paramLabel = "NAME", description = "only this feature")
    private String feature;

    @Mixin
    private OutputOptions output;

    DriftCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        if ((file == null) == (archive == null)) {
            throw new UsageException("give either a CSV file of marks or --archive DIR");
        }
        DriftRun run = new DriftRun(services, console);
        if (archive != null) {
            try (Archive open = services.openArchive(archive)) {
                PlanetModel model = new PlanetChoice(services).of(open, Optional.ofNullable(planet));
                Optional<RotationSystem> chosen = Optional.ofNullable(toSystem == null ? system : toSystem)
                        .map(s -> PlanetChoice.system(model, s));
                return run.archived(open, model, chosen, Optional.ofNullable(feature), output);
            }
        }
        if (planet == null || system == null) {
            throw new UsageException("a file of marks needs --planet and --system");
        }
        PlanetModel model = services.planet(planet);
        return run.fitAndPrint(model, series(read(model)), output);
    }

    private MarkTable read(PlanetModel model) {
        RotationSystem of = PlanetChoice.system(model, system);
        MarkTable table = file.equals("-")
                ? MarkFile.read(
                        new InputStreamReader(console.in(), StandardCharsets.UTF_8), "standard input", model, of)
                : MarkFile.read(Path.of(file), model, of.id());
        table.remarks().forEach(console::say);
        return table;
    }

    private List<LongitudeSeries> series(MarkTable table) {
        List<LongitudeSeries> series = table.series();
        int unnamed = table.unnamed().size();
        if (unnamed == table.rows().size()) {
            console.say("No mark has a feature's name: all are taken for one feature.");
        } else if (unnamed > 0) {
            console.say(unnamed + " marks without a feature's name are left out.");
        }
        RotationSystem to = toSystem == null ? table.system() : PlanetChoice.system(table.planet(), toSystem);
        return series.stream()
                .filter(s -> feature == null || feature.equals(s.feature()))
                .map(s -> to.equals(s.system()) ? s : new SystemConversion(services.sky()).inSystem(s, to))
                .toList();
    }
}
