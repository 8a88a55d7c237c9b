/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.report.ReportTable;
import oblate.report.Reports;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Fits drifts of many series and prints them; a series that cannot be fitted costs only itself. */
final class DriftRun {
    private final Services services;
    private final Console console;
    private final DriftFitter fitter;
    private final Optional<DriftPredictions> predictions;

    DriftRun(Services services, Console console) {
        this(services, console, new DriftFitter(), Optional.empty());
    }

    DriftRun(Services services, Console console, DriftFitter fitter, Optional<DriftPredictions> predictions) {
        this.services = services;
        this.console = console;
        this.fitter = fitter;
        this.predictions = predictions;
    }

    /** Fits the named features of an archive. */
    int archived(
            Archive archive,
            PlanetModel planet,
            Optional<RotationSystem> system,
            Optional<String> feature,
            OutputOptions output) {
        List<LongitudeSeries> series = new MarkSeries()
                .ofArchive(archive, planet, system).stream()
                        .filter(s -> feature.isEmpty() || feature.get().equals(s.feature()))
                        .toList();
        if (series.isEmpty()) {
            console.say("The archive has no named mark"
                    + feature.map(f -> " of \"" + f + "\"").orElse("") + " on " + planet.label()
                    + "; add marks with: oblate marks add");
            return 1;
        }
        return fitAndPrint(planet, series, output);
    }

    /** Fits series and prints the table. */
    int fitAndPrint(PlanetModel planet, List<LongitudeSeries> series, OutputOptions output) {
        if (series.isEmpty()) {
            console.say("There is nothing to fit: no feature or track has marks here.");
            return 1;
        }
        int status = 0;
        List<Drift> drifts = new ArrayList<>();
        for (LongitudeSeries one : series) {
            try {
                Drift drift = fitter.fit(one);
                drift.warnings().forEach(w -> console.say(named(one.feature()) + w));
                drifts.add(drift);
            } catch (ProblemException e) {
                console.say(e.getMessage());
                status = 1;
            }
        }
        if (!drifts.isEmpty()) {
            output.write(table(planet, drifts, output), services, console);
        }
        return status;
    }

    private static String named(String feature) {
        return feature.isEmpty() ? "Of these marks: " : feature + ": ";
    }

    private ReportTable table(PlanetModel planet, List<Drift> drifts, OutputOptions output) {
        if (predictions.isPresent()) {
            return predictions.get().table(planet, drifts);
        }
        return output.isText() ? DriftText.of(planet, drifts) : new Reports().drifts(planet, drifts);
    }
}
