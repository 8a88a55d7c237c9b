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
    /** The sandwich over sectors was found to be about this factor too small, because the model's own faults run round the limb. */
    private static final double SANDWICH_FACTOR = 2;

    private static final double CENTRE_FLOOR_CORES = 0.03;
    private static final double SUN_FLOOR_CORES = 0.1;
    private static final double FULL_SUN_FLOOR_PHASE_DEG = 5;
    /** Centres of belted planets err by so much less than the parts below add up to; by more where the limb law differs from north to south. */
    private static final double HELD_CENTRE = 0.85;

    private static final double BELTED_RADIUS_FLOOR = 0.1;
    private static final double RINGED_RADIUS_FLOOR = 0.08;
    private static final double OTHER_RADIUS_FLOOR = 0.4;
    private static final double POLE_FLOOR_DEG = 0.1;
    private static final double RING_POLE_FLOOR_DEG = 0.03;
    private static final double FOLLOWED_DEG = 25;
    /** Turn of a terminator per relative scatter of the brightness along it (deg). */
    private static final double MARKINGS_TURN_DEG = 8;
    /** Standard error of an angle nobody knows: that of an even spread over the circle (deg). */
    private static final double UNKNOWN_DEG = 104;
    /** From this probability on an orientation counts as known. */
    private static final double SURE = 0.95;

    private static final double EDGE_REACH = 0.06;
    /** A blur wider than this share of the radius leaves no limb. */
    private static final double SOFTEST_EDGE = 0.25;

    private static final double DISAGREE = 4;
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
        PlacementCovariance covariance = covariance(disc, found, hints);
        String refusal = refusal(match, found, edge, covariance);
        if (!refusal.isEmpty()) {
            return new FitOutcome.Refused(refusal + " Check planet, time and file, or place the disc by hand.");
        }
        List<String> reasons = new ArrayList<>();
        doubts(reasons, found, edge);
        orientationDoubts(reasons, choice, found);
        Weighted weighted = weighted(found.place(), covariance);
        return new FitOutcome.Fitted(new DiscFit(
                weighted.place(),
                withMirrorImage(weighted.covariance(), choice),
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

    private record Weighted(Placement place, PlacementCovariance covariance) {}

    /** Combines the picture's word on the pole angle with the hint's by weight; what hangs together with the angle moves along. */
    private Weighted weighted(Placement place, PlacementCovariance covariance) {
        if (hints.poleAngle().isEmpty() || !Orientation.angleSeen(disc)) {
            return new Weighted(place, covariance);
        }
        FitHints.Angle hint = hints.poleAngle().get();
        double off = Math.IEEEremainder(hint.valueDeg() - place.poleAngleDeg(), 360);
        double variance = covariance.get(3, 3) + hint.sigmaDeg() * hint.sigmaDeg();
        if (off * off > DISAGREE * DISAGREE * variance) {
            return new Weighted(place, covariance);
        }
        double[] gain = new double[4];
        double[][] matrix = covariance.toArray();
        for (int i = 0; i < 4; i++) {
            gain[i] = covariance.get(i, 3) / variance;
        }
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                matrix[i][j] -= gain[i] * covariance.get(3, j);
            }
        }
        return new Weighted(
                new Placement(
                        place.centreXPx() + gain[0] * off,
                        place.centreYPx() + gain[1] * off,
                        Math.max(1, place.equatorialRadiusPx() + gain[2] * off),
                        place.poleAngleDeg() + gain[3] * off,
                        place.mirrored()),
                new PlacementCovariance(matrix));
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

    /** The mirror image puts the unlit sliver on the other side, and with it the centre: as likely as that is, it counts as an error. */
    private static PlacementCovariance withMirrorImage(PlacementCovariance covariance, Orientation.Choice choice) {
        if (choice.mirrorImage().isEmpty() || choice.parity().isEmpty()) {
            return covariance;
        }
        Placement other = choice.mirrorImage().get();
        Placement winner = choice.rough().place();
        double[] apart = {other.centreXPx() - winner.centreXPx(), other.centreYPx() - winner.centreYPx()};
        double[][] matrix = covariance.toArray();
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 2; j++) {
                matrix[i][j] += (1 - choice.parity().get()) * apart[i] * apart[j];
            }
        }
        return new PlacementCovariance(matrix);
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

    /**
     * The sandwich over sectors, widened by what two reasonable laws of limb darkening and two models of sharpening differ by: in cores of the blur,
     * across and along the Sun line, in radius, and 0.1° of pole angle, because belts are not exact parallels.
     */
    static PlacementCovariance covariance(ApparentDisc disc, Found found, FitHints hints) {
        double[][] c = found.covariance();
        double[][] out = new double[4][4];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                out[i][j] = SANDWICH_FACTOR * SANDWICH_FACTOR * c[i][j];
            }
        }
        double core = found.corePx();
        double across = CENTRE_FLOOR_CORES * core;
        double along = SUN_FLOOR_CORES * core * Math.min(1, disc.phaseAngleDeg() / FULL_SUN_FLOOR_PHASE_DEG);
        double[] sun = sunDirection(disc, found.place());
        for (int i = 0; i < 2; i++) {
            out[i][i] += across * across;
            for (int j = 0; j < 2; j++) {
                out[i][j] += along * along * sun[i] * sun[j];
            }
        }
        if (disc.planet().globe().figure().flattening() > Orientation.OBLATE) {
            narrowCentre(out);
        }
        double radius = radiusFloorCores(disc) * core;
        out[2][2] += radius * radius;
        double pole = disc.planet().rings().isPresent()
                ? RING_POLE_FLOOR_DEG
                : POLE_FLOOR_DEG + turnedByMarkings(disc, found);
        out[3][3] += pole * pole;
        if (!Orientation.angleSeen(disc)) {
            double sigma = hints.poleAngle().map(FitHints.Angle::sigmaDeg).orElse(UNKNOWN_DEG);
            followAngle(out, found.angleResponse(), sigma);
        }
        return new PlacementCovariance(out);
    }

    /** Belts and rings hold the centre better than the doubled sandwich and the floors say. */
    private static void narrowCentre(double[][] out) {
        for (int i = 0; i < 2; i++) {
            for (int j = 0; j < 4; j++) {
                out[i][j] *= HELD_CENTRE;
                out[j][i] *= HELD_CENTRE;
            }
        }
    }

    /** A terminator seems turned where dark and bright places lie along it. */
    private static double turnedByMarkings(ApparentDisc disc, Found found) {
        boolean belted = disc.planet().globe().figure().flattening() > Orientation.OBLATE;
        return belted ? 0 : MARKINGS_TURN_DEG * found.solution().markings();
    }

    /** Where the angle was held, centre and radius err together with it; beyond a small turn the shift no longer grows in proportion. */
    private static void followAngle(double[][] out, double[] response, double sigmaDeg) {
        double reach = Math.min(1, FOLLOWED_DEG / sigmaDeg);
        for (int i = 0; i < 3; i++) {
            out[i][3] = response[i] * sigmaDeg * sigmaDeg * reach;
            out[3][i] = out[i][3];
            for (int j = 0; j < 3; j++) {
                out[i][j] += response[i] * response[j] * sigmaDeg * sigmaDeg * reach * reach;
            }
        }
        out[3][3] = sigmaDeg * sigmaDeg;
    }

    private static double radiusFloorCores(ApparentDisc disc) {
        if (disc.planet().rings().isPresent()) {
            return RINGED_RADIUS_FLOOR;
        }
        return disc.planet().globe().figure().flattening() > Orientation.OBLATE
                        && disc.phaseAngleDeg() < Orientation.CRESCENT_DEG
                ? BELTED_RADIUS_FLOOR
                : OTHER_RADIUS_FLOOR;
    }

    /** Pixel direction in which the Sun stands. */
    private static double[] sunDirection(ApparentDisc disc, Placement place) {
        GlobeView view = new GlobeView(disc);
        double x = view.sunY;
        double y = view.sightY(view.sunX, view.sunZ);
        double length = Math.max(1e-9, Math.hypot(x, y));
        double a = Math.toRadians(place.poleAngleDeg());
        int hand = place.mirrored() ? -1 : 1;
        return new double[] {
            (hand * x * Math.cos(a) - y * Math.sin(a)) / length, (-hand * x * Math.sin(a) - y * Math.cos(a)) / length
        };
    }
}
