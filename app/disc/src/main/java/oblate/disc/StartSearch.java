/* SPDX-License-Identifier: Apache-2.0 */
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

    private static final double CRESCENT_STEP_DEG = 30;
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
            return around(hints.near().get(), mirrored);
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

    /** One look with the angle as given, or with the long axis of the light where rings lie along it. */
    TemplateMatcher.Match quick() {
        boolean mirrored = hints.mirrored().orElse(false);
        if (hints.near().isPresent()) {
            return around(hints.near().get(), mirrored);
        }
        double angle =
                hints.poleAngle().map(FitHints.Angle::valueDeg).orElseGet(() -> view.ringOuter > 0 ? longAxisDeg() : 0);
        return matcher.find(picture, angle, mirrored, SMALLEST_PX, LARGEST_PX);
    }

    /** Looks only about the place given: 60 % of a radius beyond the shape. */
    private TemplateMatcher.Match around(Placement near, boolean mirrored) {
        double r = near.equatorialRadiusPx();
        int half = (int) Math.ceil(r * (Math.max(1, view.ringOuter) + 0.6));
        int x0 = (int) Math.round(near.centreXPx()) - half;
        int y0 = (int) Math.round(near.centreYPx()) - half;
        Plane part = picture.cut(x0, y0, 2 * half + 1, 2 * half + 1);
        double angle = hints.poleAngle().map(FitHints.Angle::valueDeg).orElse(near.poleAngleDeg());
        TemplateMatcher.Match match = matcher.find(part, angle, mirrored, r * 0.75, r * 1.35);
        return match == null ? null : match.moved(x0, y0);
    }

    private TemplateMatcher.Match anyAngle(boolean mirrored) {
        if (view.ringOuter > 0) {
            return ringAngle(mirrored);
        }
        TemplateMatcher.Match best = null;
        for (double angle = 0; angle < 360; angle += CRESCENT_STEP_DEG) {
            double from = best == null ? SMALLEST_PX : best.place().equatorialRadiusPx() * 0.6;
            double to = best == null ? LARGEST_PX : best.place().equatorialRadiusPx() * 1.7;
            best = better(best, matcher.find(picture, angle, mirrored, from, to));
        }
        if (best == null) {
            return null;
        }
        double at = best.place().poleAngleDeg();
        return turned(best, at - 20, at + 20, 10);
    }

    /** Rings lie along the long axis of the light; round it the angle is scanned finely, because thin rings are missed by coarse steps. */
    private TemplateMatcher.Match ringAngle(boolean mirrored) {
        double axis = longAxisDeg();
        TemplateMatcher.Match best = null;
        for (double off = -12; off <= 12; off += 4) {
            best = better(best, matcher.find(picture, axis + off, mirrored, SMALLEST_PX, LARGEST_PX));
        }
        if (best == null) {
            return null;
        }
        double at = best.place().poleAngleDeg();
        best = turned(best, at - 3, at + 3, 1.5);
        double upsideDown = best.place().poleAngleDeg() + 180;
        return turned(best, upsideDown, upsideDown, 1);
    }

    /** Pole angle (deg) across the principal axis of the light above the background. */
    private double longAxisDeg() {
        double floor = picture.median() + 0.05;
        double[] m = new double[6];
        for (int y = 0; y < picture.height(); y++) {
            for (int x = 0; x < picture.width(); x++) {
                double v = Math.min(1, picture.at(x, y) - floor);
                if (v > 0) {
                    m[0] += v;
                    m[1] += v * x;
                    m[2] += v * y;
                    m[3] += v * x * x;
                    m[4] += v * x * y;
                    m[5] += v * y * y;
                }
            }
        }
        if (m[0] == 0) {
            return 0;
        }
        double xx = m[3] / m[0] - m[1] * m[1] / m[0] / m[0];
        double xy = m[4] / m[0] - m[1] * m[2] / m[0] / m[0];
        double yy = m[5] / m[0] - m[2] * m[2] / m[0] / m[0];
        return -Math.toDegrees(Math.atan2(2 * xy, xx - yy)) / 2;
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
