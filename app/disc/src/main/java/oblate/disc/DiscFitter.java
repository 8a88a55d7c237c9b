package oblate.disc;

import java.util.List;
import oblate.base.Progress;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;

/** Finds the apparent disc in a picture. Stateless and safe for many threads. */
public final class DiscFitter {

    /**
     * Finds, tightens, refines.
     *
     * @param pixels the picture
     * @param disc what the sky says is in it at its mid-time
     * @param hints what is known already
     * @param progress told of the steps; cancelling gives a refusal
     */
    public FitOutcome fit(PixelGrid pixels, ApparentDisc disc, FitHints hints, Progress progress) {
        Plane picture = Plane.of(pixels, pixels.measuringPlane());
        boolean mirrored = hints.mirrored().orElse(false);
        double angle = hints.poleAngle().map(FitHints.Angle::valueDeg).orElse(0.0);
        TemplateMatcher.Match match = new TemplateMatcher(disc).find(picture, angle, mirrored, 3, 1e9);
        if (match == null) {
            return new FitOutcome.Refused("no disc");
        }
        long t0 = System.nanoTime();
        boolean belts = disc.planet().globe().figure().flattening() > 0.03;
        FitHints.Angle prior = hints.poleAngle().orElse(null);
        ForwardStage stage = new ForwardStage(disc, picture, belts);
        double r = match.place().equatorialRadiusPx();
        int coarse = (int) Math.max(1, Math.round(r / 45));
        ForwardStage.Found rough = stage.fit(match.place(), stage.startShape(2), prior, coarse, 6, 12);
        int fine = (int) Math.max(1, Math.min(rough.corePx() / 1.6, r / 90));
        ForwardStage.Found found =
                coarse == fine ? rough : stage.fit(rough.place(), rough.shared(), prior, fine, 0, 20);
        if (Boolean.getBoolean("trial")) {
            System.out.printf("   start %.1f %.1f %.1f ncc %.3f expl %.2f | rough %.2f %.2f %.2f core %.2f | bin %d conv %b %s loss %.4f bs %.4f ms %d%n",
                match.place().centreXPx(), match.place().centreYPx(), r, match.correlation(), match.explained(),
                rough.place().centreXPx(), rough.place().centreYPx(), rough.place().equatorialRadiusPx(), rough.corePx(), fine,
                found.solution().converged(), java.util.Arrays.toString(java.util.Arrays.stream(found.shared()).mapToObj(v -> String.format("%.3f", v)).toArray()),
                found.solution().loss(), found.solution().bandSigma(), (System.nanoTime() - t0) / 1000000);
        }
        return new FitOutcome.Fitted(new DiscFit(found.place(), new PlacementCovariance(found.covariance()), Trust.TRUSTED, List.of(), "forward model 1",
            pixels.channels() == 3 ? "green" : "grey", Double.NaN, 0, List.of()));
    }
}
