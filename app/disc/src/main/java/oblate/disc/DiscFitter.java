/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.base.Progress;
import oblate.disc.ForwardStage.Found;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;

/** Finds the apparent disc in a picture. Stateless and safe for many threads. */
public final class DiscFitter {
    /** How a fit of this class was made, as kept with it. */
    public static final String METHOD = "forward model 1";

    private static final int LEAST_SIDE_PX = 16;
    private static final int STEPS = 4;
    private static final double NEAR_ANGLE_SIGMA_DEG = 5;
    private static final String CANCELLED = "The fit was cancelled; nothing was found or changed.";

    /**
     * Place of one colour's disc against green.
     *
     * @param channel "red" or "blue"
     * @param rightPx to the right of green (px)
     * @param downPx below green (px)
     * @param sigmaPx standard error in each direction (px)
     */
    public record ChannelShift(String channel, double rightPx, double downPx, double sigmaPx) {}

    /**
     * Finds, tightens, refines.
     *
     * @param pixels the picture
     * @param disc what the sky says is in it at its mid-time
     * @param given what is known already; a place given as near also counts as a word on the pole angle (to 5°) and on mirrored or not, where the
     *     hints have none of their own
     * @param progress told of the steps; cancelling gives a refusal
     */
    public FitOutcome fit(PixelGrid pixels, ApparentDisc disc, FitHints given, Progress progress) {
        FitHints hints = completed(given);
        if (Math.min(pixels.widthPx(), pixels.heightPx()) < LEAST_SIDE_PX) {
            return new FitOutcome.Refused("The picture is only " + pixels.widthPx() + " × " + pixels.heightPx()
                    + " px, too small to hold a disc worth measuring; use the full picture.");
        }
        Plane picture = Plane.of(pixels, pixels.measuringPlane());
        if (!picture.hasContrast()) {
            return new FitOutcome.Refused(
                    "The picture shows the same brightness everywhere, so there is no edge to find; check that the right file was chosen.");
        }
        progress.report(0, STEPS, "looking for the disc");
        StartSearch search = new StartSearch(disc, picture, hints);
        TemplateMatcher.Match match = search.find();
        if (match == null
                || match.correlation() < StartSearch.LEAST_CORRELATION
                || match.explained() < StartSearch.LEAST_EXPLAINED) {
            return new FitOutcome.Refused("Nothing in the picture looks like the disc of "
                    + disc.planet().label() + " as the sky shows it at that time; check planet, time and file.");
        }
        if (progress.isCancelled()) {
            return new FitOutcome.Refused(CANCELLED);
        }
        progress.report(1, STEPS, "tightening");
        String channel = pixels.channels() == 3 ? "green" : "grey";
        Attempt attempt = new Attempt(disc, picture, hints, match, channel);
        Orientation.Choice choice = attempt.orientation();
        if (progress.isCancelled()) {
            return new FitOutcome.Refused(CANCELLED);
        }
        progress.report(2, STEPS, "fitting the model");
        Attempt.Result result = attempt.result(choice);
        progress.report(3, STEPS, "judging the fit");
        FitOutcome outcome = result.oddShape() && !progress.isCancelled()
                ? new OtherLight(disc, picture, hints, match, channel, progress).instead(result)
                : result.outcome();
        progress.report(STEPS, STEPS, "done");
        return outcome;
    }

    /**
     * A first outline, good to a few per cent of the radius and quick enough to be waited for: the template's place, tightened by edge points where the
     * planet has no rings. Empty where nothing looks like the disc; whether it is one only {@link #fit} can tell.
     *
     * @param pixels the picture
     * @param disc what the sky says is in it
     * @param given what is known already; without a pole angle the outline's may be any
     */
    public Optional<Placement> outline(PixelGrid pixels, ApparentDisc disc, FitHints given) {
        FitHints hints = completed(given);
        if (Math.min(pixels.widthPx(), pixels.heightPx()) < LEAST_SIDE_PX) {
            return Optional.empty();
        }
        Plane picture = Plane.of(pixels, pixels.measuringPlane());
        if (!picture.hasContrast()) {
            return Optional.empty();
        }
        TemplateMatcher.Match match = new StartSearch(disc, picture, hints).quick();
        if (match == null || match.correlation() < StartSearch.LEAST_CORRELATION) {
            return Optional.empty();
        }
        GlobeView view = new GlobeView(disc);
        return Optional.of(
                view.ringOuter > 0
                        ? match.place()
                        : new LimbRays(view, picture).trace(match.place(), 0.15).place());
    }

    private static FitHints completed(FitHints given) {
        if (given.near().isEmpty()) {
            return given;
        }
        Placement near = given.near().get();
        return new FitHints(
                given.poleAngle().or(() -> Optional.of(new FitHints.Angle(near.poleAngleDeg(), NEAR_ANGLE_SIGMA_DEG))),
                given.mirrored().or(() -> Optional.of(near.mirrored())),
                given.near());
    }

    /**
     * Fits red and blue of a colour picture, starting from green's fit, and says where their discs lie against green's: a check on the
     * dispersion corrector, and what a position measured in one of these channels must be corrected by. Empty for a grey picture.
     *
     * @param pixels the picture
     * @param disc what the sky says is in it
     * @param fit the fit of its green channel
     */
    public List<ChannelShift> channelShifts(PixelGrid pixels, ApparentDisc disc, DiscFit fit) {
        if (pixels.channels() != 3) {
            return List.of();
        }
        FitHints hints = FitHints.of(
                fit.placement().poleAngleDeg(), 0.02, fit.placement().mirrored());
        Placement green = again(Plane.of(pixels, pixels.plane(1)), disc, hints, fit.placement())
                .place();
        List<ChannelShift> shifts = new ArrayList<>();
        for (int c = 0; c < 3; c += 2) {
            Found other = again(Plane.of(pixels, pixels.plane(c)), disc, hints, fit.placement());
            PlacementCovariance errors = FitErrors.of(disc, other, hints);
            shifts.add(new ChannelShift(
                    c == 0 ? "red" : "blue",
                    other.place().centreXPx() - green.centreXPx(),
                    other.place().centreYPx() - green.centreYPx(),
                    errors.sigmaCentrePx()));
        }
        return shifts;
    }

    private static Found again(Plane plane, ApparentDisc disc, FitHints hints, Placement start) {
        Orientation orientation = new Orientation(disc, plane, hints);
        return orientation.refine(orientation.rough(start));
    }
}
