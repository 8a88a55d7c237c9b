/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import oblate.disc.ForwardStage.Found;
import oblate.sky.ApparentDisc;

/** One way through the last two steps of a fit, for one idea of what the disc looks like. */
final class Attempt {
    private final ApparentDisc disc;
    private final Plane picture;
    private final FitHints hints;
    private final TemplateMatcher.Match match;
    private final String channel;
    private final Orientation orientation;

    /**
     * What came out.
     *
     * @param outcome the fit or the refusal
     * @param found where the model came to rest
     * @param oddShape whether the light in the picture has another shape than the disc should have
     */
    record Result(FitOutcome outcome, Found found, boolean oddShape) {}

    Attempt(ApparentDisc disc, Plane picture, FitHints hints, TemplateMatcher.Match match, String channel) {
        this.disc = disc;
        this.picture = picture;
        this.hints = hints;
        this.match = match;
        this.channel = channel;
        orientation = new Orientation(disc, picture, hints);
    }

    Orientation.Choice orientation() {
        return orientation.choose(match.place());
    }

    Found rough(Placement start) {
        return orientation.rough(start);
    }

    Result result(Orientation.Choice choice) {
        Found found = orientation.refine(choice.rough());
        FitJudge judge = new FitJudge(disc, picture, hints, channel);
        return new Result(judge.judge(match, choice, found), found, judge.oddShape(found));
    }
}
