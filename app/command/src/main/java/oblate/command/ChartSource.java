/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkFile;
import oblate.drift.MarkSeries;
import oblate.drift.MarkTable;
import oblate.report.SeriesChart;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Where the marks of a chart come from. */
final class ChartSource {
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

    @Option(names = "--feature", paramLabel = "NAME", description = "only this feature; may be given several times")
    private List<String> features = new ArrayList<>();

    ChartSource(Services services, Console console) {
        this.services = services;
        this.console = console;
    }

    /** The archive named, if one is. */
    Optional<Path> archive() {
        return Optional.ofNullable(archive);
    }

    /** Whether a file of marks is named. */
    boolean hasFile() {
        return file != null;
    }

    /** Features asked for, in the order given; empty for all. */
    List<String> features() {
        return features;
    }

    /** The planet's word, if one is given. */
    Optional<String> planet() {
        return Optional.ofNullable(planet);
    }

    /** Planet of an archive. */
    PlanetModel planetOf(Archive open) {
        return new PlanetChoice(services).of(open, Optional.ofNullable(planet));
    }

    /** System asked for. */
    Optional<RotationSystem> system(PlanetModel model) {
        return Optional.ofNullable(system).map(s -> PlanetChoice.system(model, s));
    }

    /** Series of the features asked for, in the order they were. */
    List<LongitudeSeries> series() {
        if ((file == null) == (archive == null)) {
            throw new UsageException("give either a CSV file of marks or --archive DIR");
        }
        List<LongitudeSeries> all = archive == null ? ofFile() : ofArchive();
        if (features.isEmpty()) {
            return all;
        }
        List<LongitudeSeries> wanted = new ArrayList<>();
        for (String name : features) {
            Optional<LongitudeSeries> found =
                    all.stream().filter(s -> s.feature().equals(name)).findFirst();
            found.ifPresentOrElse(
                    wanted::add,
                    () -> console.say("no marks of \"" + name + "\" here; "
                            + Nearest.hint(
                                    name,
                                    all.stream().map(LongitudeSeries::feature).toList())));
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
            PlanetModel model = planetOf(open);
            return new MarkSeries().ofArchive(open, model, system(model));
        }
    }

    /** A feature that cannot be fitted is kept without a drift, and it is said why. */
    List<SeriesChart.Feature> fitted(List<LongitudeSeries> series) {
        DriftFitter fitter = new DriftFitter();
        List<SeriesChart.Feature> fitted = new ArrayList<>();
        for (LongitudeSeries one : series) {
            Optional<Drift> drift = Optional.empty();
            try {
                drift = Optional.of(fitter.fit(one));
            } catch (ProblemException e) {
                console.say(e.getMessage());
            }
            fitted.add(new SeriesChart.Feature(one, drift));
        }
        return fitted;
    }
}
