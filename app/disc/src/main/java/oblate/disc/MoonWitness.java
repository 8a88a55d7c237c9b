/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oblate.base.Progress;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;

/**
 * Fits a disc and hears the moons beside it: which end is north and whether the picture is mirrored, where the disc alone leaves that open, and whether
 * the stated time can be right. Stateless and safe for many threads.
 */
public final class MoonWitness {
    /** From this probability on the moons decide. */
    private static final double SURE = 0.95;

    private static final double LEAST_ANGLE_SIGMA_DEG = 0.3;
    private final Sky sky;

    /** @param sky where the moons are */
    public MoonWitness(Sky sky) {
        this.sky = sky;
    }

    /**
     * A fit with what the moons said.
     *
     * @param outcome the fit or the refusal
     * @param moons empty without a fit, without known moons or without any light beside the disc
     */
    public record Heard(FitOutcome outcome, Optional<MoonFinding> moons) {}

    /** Fits as {@link DiscFitter#fit} does, then looks for moons; what they contradict makes the fit doubtful. */
    public Heard fit(PixelGrid pixels, ApparentDisc disc, FitHints hints, Progress progress) {
        DiscFitter fitter = new DiscFitter();
        FitOutcome outcome = fitter.fit(pixels, disc, hints, progress);
        if (!(outcome instanceof FitOutcome.Fitted fitted)) {
            return new Heard(outcome, Optional.empty());
        }
        Optional<MoonFinding> moons = look(pixels, disc, fitted.fit());
        if (moons.isEmpty() || progress.isCancelled()) {
            return new Heard(outcome, moons);
        }
        MoonFinding found = moons.get();
        boolean open = hints.mirrored().isEmpty() || hints.poleAngle().isEmpty();
        if (open && decided(found)) {
            FitHints told = new FitHints(
                    hints.poleAngle()
                            .or(() -> Optional.of(new FitHints.Angle(
                                    found.placement().poleAngleDeg(),
                                    Math.max(
                                            LEAST_ANGLE_SIGMA_DEG,
                                            2 * fitted.fit().covariance().sigmaPoleAngleDeg())))),
                    hints.mirrored().or(() -> Optional.of(found.placement().mirrored())),
                    Optional.of(found.placement()));
            FitOutcome again = fitter.fit(pixels, disc, told, progress);
            if (again instanceof FitOutcome.Fitted better) {
                Optional<MoonFinding> second = look(pixels, disc, better.fit());
                return new Heard(new FitOutcome.Fitted(with(better.fit(), hints, second.orElse(found))), second);
            }
        }
        return new Heard(new FitOutcome.Fitted(with(fitted.fit(), hints, found)), moons);
    }

    private static boolean decided(MoonFinding found) {
        return Math.abs(found.turned() - 0.5) > SURE - 0.5 && Math.abs(found.mirrored() - 0.5) > SURE - 0.5;
    }

    /**
     * Looks for moons beside a placed disc.
     *
     * @param pixels the picture
     * @param disc what the sky says is in it
     * @param fit where it lies
     */
    public Optional<MoonFinding> look(PixelGrid pixels, ApparentDisc disc, DiscFit fit) {
        if (disc.planet().moons().isEmpty()) {
            return Optional.empty();
        }
        Plane plane = Plane.of(pixels, pixels.measuringPlane());
        return new MoonMatcher(sky, plane, new DiscFrame(disc, fit.placement()), fit.covariance()).look();
    }

    private static DiscFit with(DiscFit fit, FitHints hints, MoonFinding found) {
        List<Witness> witnesses = new ArrayList<>(fit.witnesses());
        List<String> reasons = new ArrayList<>(fit.reasons());
        double p = found.mirrored();
        if (!found.matches().isEmpty()) {
            witnesses.add(new Witness("mirrored", "moons", p, Math.sqrt(p * (1 - p))));
        }
        hints.mirrored()
                .filter(m -> (m ? p : 1 - p) < 1 - SURE)
                .ifPresent(m -> reasons.add(String.format(
                        Locale.ROOT,
                        "The moons say the picture is %s, with a probability of %.0f %%; the opposite was given.",
                        m ? "not mirrored" : "mirrored",
                        100 * (m ? 1 - p : p))));
        found.clock().ifPresent(clock -> {
            if (Double.isFinite(clock.sigmaS())) {
                witnesses.add(new Witness("clock offset", "moons", clock.offsetS(), clock.sigmaS()));
            }
            if (clock.verdict() == ClockFinding.Verdict.DISAGREES) {
                reasons.add(clock.words());
            }
        });
        return new DiscFit(
                fit.placement(),
                fit.covariance(),
                reasons.isEmpty() ? fit.trust() : Trust.DOUBTFUL,
                reasons,
                fit.method(),
                fit.channel(),
                fit.rmsPx(),
                fit.edgePoints(),
                witnesses);
    }
}
