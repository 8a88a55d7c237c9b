/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.DiscFitter;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.disc.Placement;
import oblate.disc.Trust;
import oblate.sample.SampleTruth;

/** Fits every dated picture of the sample season. */
final class DemoFits {
    /** Observers know how their camera sits to some degrees: the fit is told the pole angle rounded to this step (deg). */
    private static final double KNOWN_TO_DEG = 15;

    private final Services services;
    private final Console console;
    private final Archive archive;

    DemoFits(Services services, Console console, Archive archive) {
        this.services = services;
        this.console = console;
        this.archive = archive;
    }

    /**
     * How the fits came out against the truth.
     *
     * @param trusted trusted fits
     * @param doubtful doubtful fits
     * @param refused sentences of those refused
     * @param centreErrorPx distance from the true centre (px), sorted
     * @param radiusErrorPercent signed error of the radius (%), sorted
     * @param angleErrorDeg error of the pole angle (deg), absolute, sorted
     */
    record Tally(
            int trusted,
            int doubtful,
            List<String> refused,
            List<Double> centreErrorPx,
            List<Double> radiusErrorPercent,
            List<Double> angleErrorDeg) {}

    private record Fitted(Demo.Pair pair, Optional<DiscFit> fit, String refusal) {}

    Tally fitAll(SampleTruth truth) {
        List<Demo.Pair> dated = Demo.pairs(archive, truth).stream()
                .filter(p -> p.picture().time().isPresent())
                .toList();
        services.sky();
        services.reader();
        Subjects subjects = new Subjects(services, console);
        List<ManyPictures.Answer<Fitted>> answers =
                new ManyPictures(console).each(dated, "Fitting discs", pair -> fit(subjects, pair));
        List<String> refused = new ArrayList<>();
        List<Fitted> fits = new ArrayList<>();
        for (int i = 0; i < answers.size(); i++) {
            ManyPictures.Answer<Fitted> answer = answers.get(i);
            if (answer.value() != null && answer.value().fit().isPresent()) {
                fits.add(answer.value());
            } else {
                refused.add(dated.get(i).picture().name() + ": "
                        + (answer.value() == null
                                ? answer.refusal()
                                : answer.value().refusal()));
            }
        }
        return tally(fits, refused);
    }

    private Fitted fit(Subjects subjects, Demo.Pair pair) {
        if (pair.picture().fitted()) {
            return new Fitted(pair, archive.currentFit(pair.picture().id()).map(f -> f.fit()), "");
        }
        double known = KNOWN_TO_DEG * Math.rint(pair.truth().poleAngleDeg() / KNOWN_TO_DEG);
        FitHints said = new FitHints(
                Optional.of(new FitHints.Angle(known, KNOWN_TO_DEG / 2)), Optional.empty(), Optional.empty());
        Subject subject = subjects.ofArchive(archive, pair.picture(), said);
        FitOutcome outcome = new DiscFitter()
                .fit(
                        services.reader().decode(subject.file()).pixels(),
                        subject.disc(),
                        subject.hints(),
                        Progress.SILENT);
        if (outcome instanceof FitOutcome.Fitted fitted) {
            archive.keepFit(pair.picture().id(), fitted.fit(), subject.disc().ephemeris(), Version.text());
            return new Fitted(pair, Optional.of(fitted.fit()), "");
        }
        return new Fitted(pair, Optional.empty(), ((FitOutcome.Refused) outcome).reason());
    }

    private static Tally tally(List<Fitted> fits, List<String> refused) {
        List<Double> centre = new ArrayList<>();
        List<Double> radius = new ArrayList<>();
        List<Double> angle = new ArrayList<>();
        int trusted = 0;
        for (Fitted one : fits) {
            DiscFit fit = one.fit().orElseThrow();
            Placement p = fit.placement();
            SampleTruth.Picture t = one.pair().truth();
            trusted += fit.trust() == Trust.TRUSTED ? 1 : 0;
            centre.add(Math.hypot(p.centreXPx() - t.cxPx(), p.centreYPx() - t.cyPx()));
            radius.add(100 * (p.equatorialRadiusPx() / t.rePx() - 1));
            angle.add(Math.abs(Math.IEEEremainder(p.poleAngleDeg() - t.poleAngleDeg(), 360)));
        }
        return new Tally(
                trusted,
                fits.size() - trusted,
                refused,
                centre.stream().sorted().toList(),
                radius.stream().sorted().toList(),
                angle.stream().sorted().toList());
    }
}
