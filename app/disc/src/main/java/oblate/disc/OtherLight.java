/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oblate.base.Progress;
import oblate.sky.ApparentDisc;

/**
 * Second thoughts about a picture whose disc has another shape than the sky says: perhaps the Sun stands elsewhere, because the time is wrong or the
 * picture was not taken from the Earth. The outline can then still be found; the fit stays doubtful.
 */
final class OtherLight {
    /** Where the Sun is tried first, planetary east and west of the sub-Earth point (deg); an outer planet's phase never gets there. */
    private static final double FIRST_DEG = 20;

    private static final double[] STEPS_DEG = {10, 5};
    /** Only so much of the first fit's residual may be left. */
    private static final double CLEARLY_BETTER = 0.8;

    private final ApparentDisc disc;
    private final Plane picture;
    private final FitHints hints;
    private final TemplateMatcher.Match match;
    private final String channel;
    private final Progress progress;

    private record Trial(double eastDeg, Attempt attempt, Orientation.Choice choice) {
        double loss() {
            return choice.rough().solution().loss();
        }
    }

    OtherLight(
            ApparentDisc disc,
            Plane picture,
            FitHints hints,
            TemplateMatcher.Match match,
            String channel,
            Progress progress) {
        this.progress = progress;
        this.disc = disc;
        this.picture = picture;
        this.hints = hints;
        this.match = match;
        this.channel = channel;
    }

    /** The fit under the light that suits the picture best, when that is clearly better than the first one; else the first one. */
    FitOutcome instead(Attempt.Result first) {
        if (disc.planet().rings().isPresent()) {
            return first.outcome();
        }
        Trial best = better(trial(-FIRST_DEG), trial(FIRST_DEG));
        for (double step : STEPS_DEG) {
            if (progress.isCancelled()) {
                return first.outcome();
            }
            double middle = best.eastDeg();
            Trial before = best;
            best = better(better(before, near(before, middle - step)), near(before, middle + step));
        }
        Attempt.Result result = best.attempt().result(best.choice());
        boolean clear = result.found().solution().loss()
                < CLEARLY_BETTER * first.found().solution().loss();
        if (!clear || !(result.outcome() instanceof FitOutcome.Fitted fitted)) {
            return first.outcome();
        }
        DiscFit fit = fitted.fit();
        List<String> reasons = new ArrayList<>();
        reasons.add(String.format(
                Locale.ROOT,
                "The light falls as at a phase angle of about %.0f°, not %.0f° as the sky has it at that time; check the time and where the picture is from.",
                disc.litFrom(best.eastDeg()).phaseAngleDeg(),
                disc.phaseAngleDeg()));
        reasons.addAll(fit.reasons());
        return new FitOutcome.Fitted(new DiscFit(
                fit.placement(),
                fit.covariance(),
                Trust.DOUBTFUL,
                reasons,
                fit.method(),
                fit.channel(),
                fit.rmsPx(),
                fit.edgePoints(),
                fit.witnesses()));
    }

    private Trial trial(double eastDeg) {
        Attempt attempt = new Attempt(disc.litFrom(eastDeg), picture, hints, match, channel);
        return new Trial(eastDeg, attempt, attempt.orientation());
    }

    /** Another light a little aside, from where the disc was found. */
    private Trial near(Trial found, double eastDeg) {
        Attempt attempt = new Attempt(disc.litFrom(eastDeg), picture, hints, match, channel);
        Orientation.Choice known = found.choice();
        return new Trial(
                eastDeg,
                attempt,
                new Orientation.Choice(
                        attempt.rough(known.rough().place()), known.north(), known.parity(), known.mirrorImage()));
    }

    private static Trial better(Trial a, Trial b) {
        return b.loss() < a.loss() ? b : a;
    }
}
