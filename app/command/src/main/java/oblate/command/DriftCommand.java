/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkFile;
import oblate.drift.MarkTable;
import oblate.drift.RateWindow;
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
            "Each is taken for a constant rate, one change of rate, a constant acceleration or an oscillation, whichever the marks speak for.",
            "Marks come from a CSV file (time_utc, lon_deg and if known feature, lat_deg, sigma_deg) or from an archive."
        },
        footer = {
            "",
            "Longitudes grow westward on Jupiter: what runs ahead of its system has a negative rate.",
            "Examples:  oblate drift marks.csv --planet jupiter --system 2",
            "           oblate drift --archive season",
            "           oblate drift marks.csv --planet jupiter --system 2 --link --assignments tracks.csv",
            "           oblate drift marks.csv --planet jupiter --system 2 --predict 2025-01-20T00:00:00Z,2025-02-01T00:00:00Z"
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

    @Option(
            names = "--link",
            description =
                    "join marks without a feature's name into tracks, by longitude, latitude, kind and size_deg where given")
    private boolean link;

    @Option(
            names = "--assignments",
            paramLabel = "FILE",
            description = "with --link: write row, track, doubtful (yes, no) and the reason there")
    private Path assignments;

    @Option(
            names = "--settle",
            paramLabel = "FILE",
            description =
                    "with --link: links settled by hand (row, track, reason; track none takes a mark out, open takes earlier words back); an archive keeps them")
    private Path settle;

    @Option(
            names = "--rates",
            paramLabel = "LOW,HIGH",
            description = "drifts to look for (deg per day, in the system of the fit or, with --link, of the marks)")
    private String rates;

    @Option(names = "--period", paramLabel = "DAYS", description = "period of an oscillation; left out, it is fitted")
    private Double periodDays;

    @Option(
            names = "--predict",
            paramLabel = "TIME",
            description = "print where each feature is expected at these instants, with errors, instead of the drifts")
    private List<String> predict;

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
        if (!link && (assignments != null || settle != null)) {
            throw new UsageException("--assignments and --settle belong to --link");
        }
        DriftRun run = new DriftRun(
                services, console, fitter(), Optional.ofNullable(predict).map(DriftPredictions::at));
        if (archive != null) {
            try (Archive open = services.openArchive(archive)) {
                return ofArchive(open, run);
            }
        }
        if (planet == null || system == null) {
            throw new UsageException("a file of marks needs --planet and --system");
        }
        PlanetModel model = services.planet(planet);
        MarkTable table = read(model);
        return run.fitAndPrint(model, link ? series(linking().linked(table)) : series(table), output);
    }

    private int ofArchive(Archive open, DriftRun run) {
        PlanetModel model = new PlanetChoice(services).of(open, Optional.ofNullable(planet));
        Optional<RotationSystem> chosen =
                Optional.ofNullable(toSystem == null ? system : toSystem).map(s -> PlanetChoice.system(model, s));
        if (!link) {
            return run.archived(open, model, chosen, Optional.ofNullable(feature), output);
        }
        MarkTable linked = linking()
                .linked(open, model, chosen.orElseGet(() -> model.globe().iauSystem()));
        if (linked.rows().isEmpty()) {
            console.say("The archive has no marks on " + model.label()
                    + " that make a track; add marks with: oblate marks add");
            return 1;
        }
        return run.fitAndPrint(
                model,
                linked.series().stream()
                        .filter(s -> feature == null || feature.equals(s.feature()))
                        .toList(),
                output);
    }

    private DriftLinking linking() {
        return new DriftLinking(window(), Optional.ofNullable(settle), Optional.ofNullable(assignments), console);
    }

    private DriftFitter fitter() {
        DriftFitter fitter = !link && rates != null ? new DriftFitter(window().orElseThrow()) : new DriftFitter();
        if (periodDays == null) {
            return fitter;
        }
        if (!(periodDays > 0) || periodDays > 1e5) {
            throw new UsageException("--period " + periodDays + " is no period; give days above 0");
        }
        return fitter.withPeriodDays(periodDays);
    }

    private Optional<RateWindow> window() {
        if (rates == null) {
            return Optional.empty();
        }
        try {
            String[] bounds = rates.split(",", -1);
            if (bounds.length == 2) {
                return Optional.of(new RateWindow(Double.parseDouble(bounds[0]), Double.parseDouble(bounds[1])));
            }
        } catch (IllegalArgumentException e) {
            throw badRates(e);
        }
        throw badRates(null);
    }

    private UsageException badRates(Throwable cause) {
        UsageException bad = new UsageException("--rates \"" + rates
                + "\" is no window; give the lower and the higher drift in deg per day, such as -3,2");
        bad.initCause(cause);
        return bad;
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
        if (unnamed == table.rows().size() && unnamed > 0) {
            console.say("No mark has a feature's name: all are taken for one feature (--link joins them into tracks).");
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
