package oblate.disc;

import oblate.sky.ApparentDisc;

/** Finds a first place of the disc by its template, trying pole angles where none is known and the shape depends on it. */
final class StartSearch {
    /** Below this normalised correlation nothing was found. */
    static final double LEAST_CORRELATION = 0.55;
    /** Below this share of the picture's variance the find is something small. */
    static final double LEAST_EXPLAINED = 0.05;

    /** From this phase on the lit shape is so far from the whole disc that its direction matters (deg). */
    private static final double CRESCENT_DEG = 40;

    private static final double SMALLEST_PX = 3;
    private static final double LARGEST_PX = 1e6;

    private final Plane picture;
    private final FitHints hints;
    private final TemplateMatcher matcher;
    private final GlobeView view;
    private final boolean angleMatters;

    StartSearch(ApparentDisc disc, Plane picture, FitHints hints) {
        this.picture = picture;
        this.hints = hints;
        matcher = new TemplateMatcher(disc);
        view = new GlobeView(disc);
        angleMatters = view.ringOuter > 0 || disc.phaseAngleDeg() > CRESCENT_DEG;
    }

    /** The best match, or null. */
    TemplateMatcher.Match find() {
        boolean mirrored = hints.mirrored().orElse(false);
        if (hints.near().isPresent()) {
            Placement near = hints.near().get();
            double r = near.equatorialRadiusPx();
            TemplateMatcher.Match match = matcher.find(
                    picture, hints.poleAngle().map(FitHints.Angle::valueDeg).orElse(near.poleAngleDeg()), mirrored, r * 0.75, r * 1.35);
            return match;
        }
        if (hints.poleAngle().isPresent()) {
            double angle = hints.poleAngle().get().valueDeg();
            TemplateMatcher.Match match = matcher.find(picture, angle, mirrored, SMALLEST_PX, LARGEST_PX);
            double reach = Math.min(30, 2 * hints.poleAngle().get().sigmaDeg());
            return match != null && view.ringOuter > 0 ? turned(match, angle - reach, angle + reach, 1.5) : match;
        }
        if (!angleMatters) {
            return matcher.find(picture, 0, mirrored, SMALLEST_PX, LARGEST_PX);
        }
        return anyAngle(mirrored);
    }

    private TemplateMatcher.Match anyAngle(boolean mirrored) {
        double step = view.ringOuter > 0 ? 15 : 30;
        TemplateMatcher.Match best = null;
        for (double angle = 0; angle < (view.ringOuter > 0 ? 180 : 360); angle += step) {
            double from = best == null ? SMALLEST_PX : best.place().equatorialRadiusPx() * 0.6;
            double to = best == null ? LARGEST_PX : best.place().equatorialRadiusPx() * 1.7;
            best = better(best, matcher.find(picture, angle, mirrored, from, to));
        }
        if (best == null) {
            return null;
        }
        double at = best.place().poleAngleDeg();
        best = turned(best, at - step, at + step, view.ringOuter > 0 ? 2 : 10);
        return view.ringOuter > 0 ? turned(best, best.place().poleAngleDeg() + 180, best.place().poleAngleDeg() + 180, 1) : best;
    }

    /** Scans the angle with the radius nearly held. */
    private TemplateMatcher.Match turned(TemplateMatcher.Match start, double from, double to, double stepDeg) {
        TemplateMatcher.Match best = start;
        for (double angle = from; angle <= to + 1e-9; angle += stepDeg) {
            double r = best.place().equatorialRadiusPx();
            best = better(best, matcher.find(picture, angle, start.place().mirrored(), r * 0.94, r * 1.07));
        }
        return best;
    }

    private static TemplateMatcher.Match better(TemplateMatcher.Match a, TemplateMatcher.Match b) {
        return a == null || b != null && b.score() > a.score() ? b : a;
    }
}
