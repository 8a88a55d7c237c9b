/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.MarkSearch;
import oblate.archive.PictureSearch;
import oblate.base.ProblemException;
import oblate.base.Progress;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import oblate.report.Reports;
import oblate.sample.SampleSeason;
import oblate.sample.SampleTruth;
import oblate.sky.PlanetModel;

/** The whole job on the sample season, from files on disk to tables, with the truth beside it. */
final class Demo {
    private final Services services;
    private final Console console;
    private final Path folder;

    Demo(Services services, Console console, Path folder) {
        this.services = services;
        this.console = console;
        this.folder = folder;
    }

    Path archiveFolder() {
        return folder.resolve("archive");
    }

    /** Runs every step and prints the summary; 0 when every drift was recovered, 1 also when it was stopped. */
    int run() {
        long start = System.nanoTime();
        SampleTruth truth = season();
        try (Archive archive = services.openOrMakeArchive(archiveFolder(), console)) {
            PlanetModel jupiter = services.planet("jupiter");
            DemoFiling.Tally filed = new DemoFiling(services, console, archive).file(folder.resolve("season"), truth);
            DemoFits.Tally fits = new DemoFits(services, console, archive).fitAll(truth);
            if (isStopped()) {
                return 1;
            }
            DemoMarks.Tally marks = new DemoMarks(services, console, archive).markAll(truth);
            List<Drift> drifts = drifts(archive, jupiter, truth);
            DemoTimings timings = new DemoTimings(services, console, archive, jupiter);
            List<Path> tables = tables(archive, jupiter, drifts, timings);
            DemoSummary summary = new DemoSummary(console, truth);
            int status = summary.print(filed, fits, marks, drifts);
            timings.print();
            tables.forEach(t -> console.out().println("Table: " + t));
            console.out()
                    .println("Archive: " + archiveFolder() + " ("
                            + archive.pictures(PictureSearch.all()).size() + " pictures)");
            console.say("Done in " + Duration.ofNanos(System.nanoTime() - start).toSeconds() + " s.");
            return status;
        }
    }

    /** Whether an earlier run was stopped before its end: the tables are written last. */
    boolean isUnfinished() {
        return !Files.exists(folder.resolve("drifts.csv"));
    }

    private boolean isStopped() {
        return console.watcher().filter(Progress::isCancelled).isPresent();
    }

    private SampleTruth season() {
        Path season = folder.resolve("season");
        if (Files.isDirectory(season.resolve("truth"))) {
            console.say("The sample season is there already.");
            return SampleTruth.readFrom(season);
        }
        ConsoleProgress progress = new ConsoleProgress(console, "Drawing the sample season (invented)");
        SampleTruth truth = SampleSeason.standard().writeTo(season, progress);
        progress.finish();
        return truth;
    }

    private List<Drift> drifts(Archive archive, PlanetModel planet, SampleTruth truth) {
        List<Drift> drifts = new ArrayList<>();
        for (LongitudeSeries series : new MarkSeries().ofArchive(archive, planet, Optional.empty())) {
            if (truth.feature(series.feature()).isEmpty()) {
                continue;
            }
            try {
                drifts.add(new DriftFitter().fit(series));
            } catch (ProblemException e) {
                console.say(e.getMessage());
            }
        }
        return drifts;
    }

    private List<Path> tables(Archive archive, PlanetModel planet, List<Drift> drifts, DemoTimings timings) {
        Reports reports = new Reports();
        MarkSearch all = MarkSearch.all();
        return List.of(
                write(timings.table(), "timings"),
                write(reports.positions(archive, planet, all, Optional.empty()), "positions"),
                write(reports.drifts(planet, drifts), "drifts"));
    }

    private Path write(ReportTable table, String name) {
        ReportFormat csv = services.reportFormats().stream()
                .filter(f -> f.id().equals("csv"))
                .findFirst()
                .orElseThrow();
        Path file = folder.resolve(name + ".csv");
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            csv.write(table, out);
        } catch (IOException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_WRITE, file, e.getMessage());
        }
        return file;
    }

    /** A picture of the archive with what is true about it. */
    record Pair(ArchivedPicture picture, SampleTruth.Picture truth) {}

    /** Archived pictures by the file they came from. */
    static List<Pair> pairs(Archive archive, SampleTruth truth) {
        List<Pair> pairs = new ArrayList<>();
        List<ArchivedPicture> pictures = archive.pictures(PictureSearch.all());
        for (SampleTruth.Picture one : truth.pictures()) {
            String name = one.file().substring(one.file().lastIndexOf('/') + 1);
            pictures.stream()
                    .filter(p -> p.originalName().equals(name))
                    .findFirst()
                    .ifPresent(p -> pairs.add(new Pair(p, one)));
        }
        return pairs;
    }
}
