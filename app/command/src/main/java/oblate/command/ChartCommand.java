/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import oblate.archive.Archive;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkFile;
import oblate.drift.MarkSeries;
import oblate.drift.MarkTable;
import oblate.report.ChartOrder;
import oblate.report.ChartWriter;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code oblate chart FILE.csv --out CHART.png}, or with {@code --archive}. */
@Command(
        name = "chart",
        mixinStandardHelpOptions = true,
        description = {
            "Draws longitudes against date, or speeds against latitude, as PNG or SVG.",
            "Marks come from a CSV file as oblate drift takes it, or from an archive."
        },
        footer = {
            "",
            "Examples:  oblate chart marks.csv --planet jupiter --system 2 --out drift.png",
            "           oblate chart --archive season --kind speed --out speeds.svg"
        })
final class ChartCommand implements Callable<Integer> {
    private final Services services;
    private final Console console;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "CSV of marks")
    private Path file;

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
            description = "1, 2, 3 or iau: of the file's longitudes; to draw an archive's in")
    private String system;

    @Option(names = "--feature", paramLabel = "NAME", description = "only this feature")
    private String feature;

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            defaultValue = "longitude",
            description = "longitude (against date) or speed (against latitude); default: ${DEFAULT-VALUE}")
    private String kind;

    @Option(
            names = "--predict",
            paramLabel = "TIME",
            description = "draw where each feature is expected up to this instant, with one standard error")
    private String predict;

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "the chart, .png or .svg")
    private Path out;

    @Option(names = "--width", paramLabel = "PX", defaultValue = "1000", description = "default: ${DEFAULT-VALUE}")
    private int widthPx;

    @Option(names = "--height", paramLabel = "PX", defaultValue = "800", description = "default: ${DEFAULT-VALUE}")
    private int heightPx;

    @Option(names = "--scale", paramLabel = "1|2", defaultValue = "1", description = "2 for dense screens")
    private int scale;

    @Option(
            names = "--theme",
            paramLabel = "THEME",
            defaultValue = "print",
            description = "light, dark or print; default: ${DEFAULT-VALUE}")
    private String theme;

    ChartCommand(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    @Override
    public Integer call() {
        if ((file == null) == (archive == null)) {
            throw new UsageException("give either a CSV file of marks or --archive DIR");
        }
        ChartOrder.Kind what = choice("--kind", kind, ChartOrder.Kind.values());
        ChartOrder.Theme colours = choice("--theme", theme, ChartOrder.Theme.values());
        ChartOrder.Format format = format();
        ChartOrder.Size size = size();
        Optional<Instant> until = until(what);
        List<ChartOrder.Feature> features = fitted(series(what));
        if (what == ChartOrder.Kind.SPEED) {
            features = withSpeed(features);
        }
        if (features.isEmpty()) {
            console.say("There is nothing to draw: "
                    + (what == ChartOrder.Kind.SPEED ? "no drift has a speed." : "no feature has marks here."));
            return 1;
        }
        write(new ChartOrder(what, features, until, size, colours, format));
        return 0;
    }

    private static <E extends Enum<E>> E choice(String option, String word, E[] known) {
        List<String> words = new ArrayList<>();
        for (E each : known) {
            if (each.name().equalsIgnoreCase(word)) {
                return each;
            }
            words.add(each.name().toLowerCase(Locale.ROOT));
        }
        throw new UsageException(option + " \"" + word + "\" is not known; choose one of " + String.join(", ", words));
    }

    private ChartOrder.Format format() {
        String name = out.toString().toLowerCase(Locale.ROOT);
        for (ChartOrder.Format each : ChartOrder.Format.values()) {
            if (name.endsWith("." + each.name().toLowerCase(Locale.ROOT))) {
                return each;
            }
        }
        throw new UsageException("--out \"" + out + "\" has no ending of a chart; let it end in .png or .svg");
    }

    private ChartOrder.Size size() {
        try {
            return new ChartOrder.Size(widthPx, heightPx, scale);
        } catch (IllegalArgumentException e) {
            UsageException bad = new UsageException("a chart of " + widthPx + " x " + heightPx + " px at scale " + scale
                    + " is not possible; give --width and --height of " + ChartOrder.Size.LEAST_PX + " to "
                    + ChartOrder.Size.MOST_PX + " and --scale 1 or 2");
            bad.initCause(e);
            throw bad;
        }
    }

    private Optional<Instant> until(ChartOrder.Kind what) {
        if (predict == null) {
            return Optional.empty();
        }
        if (what != ChartOrder.Kind.LONGITUDE) {
            throw new UsageException("--predict belongs to --kind longitude");
        }
        try {
            return Optional.of(OffsetDateTime.parse(predict).toInstant());
        } catch (DateTimeException e) {
            UsageException bad =
                    new UsageException("--predict \"" + predict + "\" is no instant; write it as 2024-12-07T20:00:00Z");
            bad.initCause(e);
            throw bad;
        }
    }

    private List<LongitudeSeries> series(ChartOrder.Kind what) {
        List<LongitudeSeries> all = archive == null ? ofFile() : ofArchive();
        List<LongitudeSeries> wanted = all.stream()
                .filter(s -> feature == null || feature.equals(s.feature()))
                .toList();
        List<String> systems =
                wanted.stream().map(s -> s.system().id()).distinct().sorted().toList();
        if (what == ChartOrder.Kind.LONGITUDE && systems.size() > 1) {
            throw new UsageException("the features' longitudes are in systems " + String.join(", ", systems)
                    + "; choose one for the chart with --system");
        }
        return wanted;
    }

    private List<LongitudeSeries> ofFile() {
        if (planet == null || system == null) {
            throw new UsageException("a file of marks needs --planet and --system");
        }
        PlanetModel model = services.planet(planet);
        MarkTable table =
                MarkFile.read(file, model, PlanetChoice.system(model, system).id());
        table.remarks().forEach(console::say);
        return table.series();
    }

    private List<LongitudeSeries> ofArchive() {
        try (Archive open = services.openArchive(archive)) {
            PlanetModel model = new PlanetChoice(services).of(open, Optional.ofNullable(planet));
            Optional<RotationSystem> chosen = Optional.ofNullable(system).map(s -> PlanetChoice.system(model, s));
            return new MarkSeries().ofArchive(open, model, chosen);
        }
    }

    /** A feature that cannot be fitted is drawn without a line, and it is said why. */
    private List<ChartOrder.Feature> fitted(List<LongitudeSeries> series) {
        DriftFitter fitter = new DriftFitter();
        List<ChartOrder.Feature> features = new ArrayList<>();
        for (LongitudeSeries one : series) {
            Optional<Drift> drift = Optional.empty();
            try {
                drift = Optional.of(fitter.fit(one));
            } catch (ProblemException e) {
                console.say(e.getMessage());
            }
            features.add(new ChartOrder.Feature(one, drift));
        }
        return features;
    }

    private List<ChartOrder.Feature> withSpeed(List<ChartOrder.Feature> features) {
        List<ChartOrder.Feature> kept = new ArrayList<>();
        for (ChartOrder.Feature each : features) {
            if (each.drift().filter(d -> d.speedMS().isPresent()).isPresent()) {
                kept.add(each);
            } else {
                console.say(each.series().feature() + ": has no speed (no drift or no latitude) and is left out.");
            }
        }
        return kept;
    }

    private void write(ChartOrder order) {
        List<ChartWriter> writers = services.plugins().load(ChartWriter.class);
        if (writers.isEmpty()) {
            throw new ProblemException(CommandProblem.CANNOT_WRITE, out, "no plug-in here draws charts");
        }
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            writers.get(0).write(order, bytes);
            Files.write(out, bytes.toByteArray());
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, out, e.getMessage());
        }
    }
}
