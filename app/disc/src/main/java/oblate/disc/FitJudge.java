/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import oblate.disc.ForwardStage.Found;
import oblate.sky.ApparentDisc;

/** Says how sure a fit is, and whether it is to be trusted, doubted or refused. */
final class FitJudge {
    private static final double REFUSED_SCATTER = 0.3;
    private static final double DOUBTFUL_SCATTER = 0.15;
    private static final double LEAST_EDGE = 0.06;

    /** From this probability on an orientation counts as known. */
    private static final double SURE = 0.95;

    private static final double EDGE_REACH = 0.06;
    /** A blur wider than this share of the radius leaves no limb. */
    private static final double SOFTEST_EDGE = 0.25;

    private static final double LEAST_LIMB = 0.33;
    /** With less of the limb than this the pole angle leans on belts that may not be straight. */
    private static final double WHOLE_LIMB = 0.8;

    private static final double WORST_CENTRE = 0.08;
    private static final double WRONG_SHAPE = 0.008;
    /** How far beyond the fitted outline the shape is looked for (radii). */
    private static final double WIDE_REACH = 0.15;

    private static final double RAGGED = 0.008;
    private static final double RAGGED_PX = 1;
    /** On larger discs blur alone does not take the edge far from the outline. */
    private static final double CLEAR_RADIUS_PX = 50;

    private static final double RADIUS_CORES = 1.2;
    private static final double RADIUS_SHARE = 0.03;
    private static final double WRONG_SHAPE_PX = 0.7;

    private final ApparentDisc disc;
    private final Plane picture;
    private final FitHints hints;
    private final String channel;

    FitJudge(ApparentDisc disc, Plane picture, FitHints hints, String channel) {
        this.disc = disc;
        this.picture = picture;
        this.hints = hints;
        this.channel = channel;
    }

    FitOutcome judge(TemplateMatcher.Match match, Orientation.Choice choice, Found found) {
        LimbRays.Edge edge = new LimbRays(new GlobeView(disc), picture).trace(found.place(), EDGE_REACH);
        PlacementCovariance covariance = FitErrors.of(disc, found, hints);
        String refusal = refusal(match, found, edge, covariance);
        if (!refusal.isEmpty()) {
            return new FitOutcome.Refused(refusal + " Check planet, time and file, or place the disc by hand.");
        }
        List<String> reasons = new ArrayList<>();
        doubts(reasons, found, edge);
        orientationDoubts(reasons, choice, found);
        PlacedFit weighted = PlacedFit.of(disc, hints, found.place(), covariance);
        return new FitOutcome.Fitted(new DiscFit(
                weighted.place(),
                FitErrors.withMirrorImage(weighted.covariance(), choice),
                reasons.isEmpty() ? Trust.TRUSTED : Trust.DOUBTFUL,
                reasons,
                DiscFitter.METHOD,
                channel,
                edge.scatterPx(),
                edge.points(),
                witnesses(choice, found, covariance)));
    }

    /**
     * Whether a second look under another light is worth its time: an edge softer or more ragged than a good picture's, or of another shape. A light
     * that is not clearly better changes nothing.
     */
    boolean oddShape(Found found) {
        double r = found.place().equatorialRadiusPx();
        LimbRays.Edge edge = new LimbRays(new GlobeView(disc), picture).trace(found.place(), WIDE_REACH);
        List<String> shape = new ArrayList<>();
        shapeDoubts(shape, found);
        double apart = Math.abs(edge.place().equatorialRadiusPx() - r);
        return edge.contrast() < LEAST_EDGE
                || found.corePx() > SOFTEST_EDGE * r
                || seen(edge) < WHOLE_LIMB
                || found.solution().bandSigma() > DOUBTFUL_SCATTER
                || edge.scatterPx() > Math.max(RAGGED_PX, RAGGED * r)
                || r > CLEAR_RADIUS_PX && apart > RADIUS_SHARE * r
                || !shape.isEmpty();
    }

    /** Why there is no disc here worth a number; empty when there is. */
    private String refusal(
            TemplateMatcher.Match match, Found found, LimbRays.Edge edge, PlacementCovariance covariance) {
        String planet = disc.planet().label();
        double scatter = found.solution().bandSigma();
        double r = found.place().equatorialRadiusPx();
        double before = match.place().equatorialRadiusPx();
        double moved = Math.hypot(
                found.place().centreXPx() - match.place().centreXPx(),
                found.place().centreYPx() - match.place().centreYPx());
        double seen = seen(edge);
        if (!(scatter < REFUSED_SCATTER)) {
            return String.format(
                    Locale.ROOT,
                    "No limb of %s fits the picture: what is left at the edge is %.0f %% of the disc's brightness.",
                    planet,
                    100 * scatter);
        }
        if (edge.contrast() < LEAST_EDGE || found.corePx() > SOFTEST_EDGE * r) {
            return "What looks like the disc of " + planet + " has no edge, only a soft fall of brightness.";
        }
        if (seen < LEAST_LIMB) {
            return String.format(
                    Locale.ROOT, "An edge was found along only %.0f %% of the sunlit limb of %s.", 100 * seen, planet);
        }
        if (moved > 0.5 * r || r < 0.55 * before || r > 1.8 * before) {
            return "The fit of " + planet + " ran away from the place where its shape was found.";
        }
        if (covariance.sigmaCentrePx() > WORST_CENTRE * r) {
            return String.format(
                    Locale.ROOT,
                    "The place of %s is only known to %.0f %% of its radius.",
                    planet,
                    100 * covariance.sigmaCentrePx() / r);
        }
        return "";
    }

    private static double seen(LimbRays.Edge edge) {
        return edge.expected() == 0 ? 0 : (double) edge.points() / edge.expected();
    }

    private static boolean northOpen(Orientation.Choice choice) {
        return choice.north().isPresent() && choice.north().get() < SURE;
    }

    private static boolean parityOpen(Orientation.Choice choice) {
        return choice.parity().isPresent() && choice.parity().get() < SURE;
    }

    private void doubts(List<String> reasons, Found found, LimbRays.Edge edge) {
        double scatter = found.solution().bandSigma();
        if (scatter > DOUBTFUL_SCATTER) {
            reasons.add(String.format(
                    Locale.ROOT,
                    "The limb is fitted badly: %.0f %% of the brightness is left at the edge.",
                    100 * scatter));
        }
        double seen = seen(edge);
        if (seen < WHOLE_LIMB) {
            reasons.add(String.format(Locale.ROOT, "Only %.0f %% of the sunlit limb is in the picture.", 100 * seen));
        }
        if (seen > WHOLE_LIMB) {
            shapeDoubts(reasons, found);
        }
        boolean[] bound = found.solution().bound();
        if (bound[Slot.SUN] || bound[Slot.VIEW]) {
            reasons.add(
                    "The darkening towards the limb came out at the end of its range, so the centre along the Sun line is less sure.");
        }
        if (found.place().equatorialRadiusPx() < 12) {
            reasons.add("The disc is under 24 px across, too small for a trustworthy scale.");
        }
        GlobeView view = new GlobeView(disc);
        if (view.ringOuter > 0 && Math.abs(view.sinB) <= ForwardStage.LEAST_OPENING) {
            reasons.add("The rings are so nearly edge-on that they were left out of the model.");
        }
    }

    /**
     * Looks for the edge far beyond where the fit put it: a fit of the wrong shape may lie so wide of the true edge that a narrow
     * search sees nothing amiss. The rays' radius is a little small by nature, by about a core of the blur at most.
     */
    private void shapeDoubts(List<String> reasons, Found found) {
        GlobeView view = new GlobeView(disc);
        if (view.ringOuter > 0) {
            return;
        }
        double r = found.place().equatorialRadiusPx();
        LimbRays.Edge wide = new LimbRays(view, picture).trace(found.place(), WIDE_REACH);
        if (Math.abs(wide.ovalPx()) > Math.max(WRONG_SHAPE_PX, WRONG_SHAPE * r)) {
            reasons.add(String.format(
                    Locale.ROOT,
                    "The outline in the picture is %s than %s looks at that time.",
                    wide.ovalPx() > 0 ? "flatter" : "rounder",
                    disc.planet().label()));
        }
        if (Math.abs(wide.athwartPx()) > Math.max(WRONG_SHAPE_PX, WRONG_SHAPE * r)) {
            reasons.add("The outline in the picture is flattened along another axis than the pole's.");
        }
        double apart = wide.place().equatorialRadiusPx() - r;
        if (Math.abs(apart) > Math.max(RADIUS_CORES * found.corePx(), RADIUS_SHARE * r)) {
            reasons.add(String.format(
                    Locale.ROOT,
                    "The visible edge lies %.1f %% %s the fitted outline.",
                    100 * Math.abs(apart) / r,
                    apart < 0 ? "inside" : "outside"));
        }
    }

    private void orientationDoubts(List<String> reasons, Orientation.Choice choice, Found found) {
        boolean seen = Orientation.angleSeen(disc);
        if (!seen && hints.poleAngle().isEmpty()) {
            reasons.add("Nothing in the picture shows the pole angle of "
                    + disc.planet().label() + "; give it by hand, by kit or from another picture of the run.");
        }
        if (northOpen(choice)) {
            reasons.add(String.format(
                    Locale.ROOT,
                    "The axis is found, but which end is north is undecided: as given with a probability of %.0f %%.",
                    100 * choice.north().get()));
        }
        if (parityOpen(choice)) {
            reasons.add(String.format(
                    Locale.ROOT,
                    "Mirrored or not is undecided: %s with a probability of %.0f %%.",
                    found.place().mirrored() ? "mirrored" : "not mirrored",
                    100 * choice.parity().get()));
        }
        if (seen && hints.poleAngle().isPresent()) {
            FitHints.Angle hint = hints.poleAngle().get();
            double off = Math.abs(Math.IEEEremainder(found.place().poleAngleDeg() - hint.valueDeg(), 360));
            if (off > 3 * Math.hypot(hint.sigmaDeg(), 0.3)) {
                reasons.add(String.format(
                        Locale.ROOT,
                        "The pole angle found is %.1f° from the one given, more than that was said to be sure.",
                        off));
            }
        }
    }

    private List<Witness> witnesses(Orientation.Choice choice, Found found, PlacementCovariance covariance) {
        List<Witness> list = new ArrayList<>();
        hints.poleAngle().ifPresent(h -> list.add(new Witness("pole angle", "hint", h.valueDeg(), h.sigmaDeg())));
        if (Orientation.angleSeen(disc)) {
            String source = disc.planet().rings().isPresent()
                    ? "rings"
                    : disc.planet().globe().figure().flattening() > Orientation.OBLATE ? "belts" : "phase";
            list.add(new Witness("pole angle", source, found.place().poleAngleDeg(), covariance.sigmaPoleAngleDeg()));
        }
        Optional<Boolean> given = hints.mirrored();
        given.ifPresent(m -> list.add(new Witness("mirrored", "hint", m ? 1 : 0, 0)));
        choice.parity().ifPresent(p -> {
            double mirrored = found.place().mirrored() ? p : 1 - p;
            list.add(new Witness("mirrored", "phase", mirrored, Math.sqrt(p * (1 - p))));
        });
        choice.north().ifPresent(p -> list.add(new Witness("north end", "picture", p, Math.sqrt(p * (1 - p)))));
        double arcsec = disc.diameterEquatorialArcsec() / (2 * found.place().equatorialRadiusPx());
        list.add(new Witness(
                "scale",
                "limb",
                arcsec,
                arcsec * covariance.sigmaRadiusPx() / found.place().equatorialRadiusPx()));
        return list;
    }
}
