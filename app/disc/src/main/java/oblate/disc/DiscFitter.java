package oblate.disc;

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
        throw new UnsupportedOperationException(pixels + "" + disc + hints + progress);
    }
}
