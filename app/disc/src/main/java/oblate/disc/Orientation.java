/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oblate.disc.ForwardStage.Found;
import oblate.sky.ApparentDisc;

/**
 * Runs the forward model from the starts there are: from the template and from the rays when they differ, and over the orientations that the hints
 * leave open. Keeps the one that leaves the smallest residual, and remembers how clearly it won.
 */
final class Orientation {
    /** From this flattening on the limb holds the pole angle. */
    static final double OBLATE = 0.03;
    /** From this phase on the terminator holds it (deg). */
    static final double CRESCENT_DEG = 40;

    private static final int COARSE_RADIUS_PX = 45;
    /** Without hints a coarse fit can end some degrees off the axis; it needs so many steps to come home. */
    private static final int REFINING_STEPS = 45;

    private static final int SCAN_RADIUS_PX = 32;
    /** From this phase on it shows on which side the Sun stands (deg). */
    private static final double SIDE_DEG = 4;

    /** Two ends are one when they are closer than this (radii). */
    private static final double ENDS_DIFFER = 0.005;

    private static final int FINALISTS = 4;
    private static final int CLEAR_RADIUS_PX = 80;
    private static final double FINE_CORE_PX = 1.6;
    private static final double FINE_RADIUS_PX = 90;
    /** Larger discs are binned however sharp they are: the limb is long enough. */
    private static final double LARGEST_FINE_RADIUS_PX = 190;

    private static final double LARGEST_RINGED_RADIUS_PX = 95;

    private static final double STARTS_DIFFER = 0.02;
    private static final double ANGLE_STEP_DEG = 15;
    private static final double HELD_DEG = 1e-4;
    private static final double START_CORE_PX = 2;
    private static final double WIDE_CORE_PX = 4;
    private static final double WIDE_RADIUS_PX = 60;

    private final ApparentDisc disc;
    private final Plane picture;
    private final FitHints hints;
    private final ForwardStage stage;
    private final boolean angleHeld;
    private final GlobeView view;

    /**
     * What was chosen.
     *
     * @param rough the winner, at a coarse binning
     * @param north probability that the end called north is north; empty when the hint decided
     * @param parity probability that mirrored or not is as it was chosen; empty when the hint decided
     * @param mirrorImage where the disc lies if the picture is the mirror image of what was chosen
     */
    record Choice(Found rough, Optional<Double> north, Optional<Double> parity, Optional<Placement> mirrorImage) {}

    Orientation(ApparentDisc disc, Plane picture, FitHints hints) {
        this.disc = disc;
        this.picture = picture;
        this.hints = hints;
        view = new GlobeView(disc);
        boolean oblate = disc.planet().globe().figure().flattening() > OBLATE;
        angleHeld = !angleSeen(disc);
        stage = new ForwardStage(disc, picture, oblate);
    }

    /** Whether a picture of this disc shows its pole angle at all. */
    static boolean angleSeen(ApparentDisc disc) {
        return disc.planet().globe().figure().flattening() > OBLATE
                || disc.planet().rings().isPresent()
                || disc.phaseAngleDeg() > CRESCENT_DEG;
    }

    private FitHints.Angle prior(double startDeg) {
        if (angleHeld) {
            return new FitHints.Angle(startDeg, HELD_DEG);
        }
        return hints.poleAngle()
                .map(h -> new FitHints.Angle(startDeg + Math.IEEEremainder(h.valueDeg() - startDeg, 360), h.sigmaDeg()))
                .orElse(null);
    }

    private static int bin(Placement place, double radiusPx) {
        return (int) Math.max(1, Math.round(place.equatorialRadiusPx() / radiusPx));
    }

    /** A coarse fit from one start. */
    Found rough(Placement start) {
        return wideToo(start) ? better(narrow(start), wide(start)) : narrow(start);
    }

    /** A wide blur on a small disc, or without belts inside, leads astray. */
    private boolean wideToo(Placement start) {
        return !angleHeld && start.equatorialRadiusPx() >= WIDE_RADIUS_PX;
    }

    private Found narrow(Placement start) {
        return stage.fit(
                start,
                stage.startShape(START_CORE_PX, 2),
                prior(start.poleAngleDeg()),
                bin(start, COARSE_RADIUS_PX),
                6,
                12);
    }

    private Found wide(Placement start) {
        return stage.fit(
                start,
                stage.startShape(WIDE_CORE_PX, 3),
                prior(start.poleAngleDeg()),
                bin(start, COARSE_RADIUS_PX),
                6,
                16);
    }

    /** The full fit. */
    Found refine(Found rough) {
        int coarse = bin(rough.place(), COARSE_RADIUS_PX);
        double widest = Math.min(rough.corePx() / FINE_CORE_PX, rough.place().equatorialRadiusPx() / FINE_RADIUS_PX);
        double largest = view.ringOuter > 0 ? LARGEST_RINGED_RADIUS_PX : LARGEST_FINE_RADIUS_PX;
        int least = (int) Math.ceil(rough.place().equatorialRadiusPx() / largest);
        int fine = (int) Math.max(least, Math.max(1, widest));
        return coarse == fine && rough.solution().converged()
                ? rough
                : stage.fit(
                        rough.place(), rough.shared(), prior(rough.place().poleAngleDeg()), fine, 0, REFINING_STEPS);
    }

    /** Tries what is open. */
    Choice choose(Placement match) {
        Placement start = match;
        boolean lopsided = disc.phaseAngleDeg() > SIDE_DEG;
        if (hints.poleAngle().isEmpty() && view.ringOuter == 0 && (!angleHeld || lopsided)) {
            start = axis(match);
        }
        Found best = both(start);
        boolean northOpen = hints.poleAngle().isEmpty() && !angleHeld;
        boolean parityOpen = hints.mirrored().isEmpty();
        if (!northOpen && !parityOpen) {
            return new Choice(best, Optional.empty(), Optional.empty(), Optional.empty());
        }
        double clear = view.ringOuter > 0 ? COARSE_RADIUS_PX : CLEAR_RADIUS_PX;
        Found[][] tries = new Found[northOpen ? 2 : 1][parityOpen ? 2 : 1];
        for (int turn = 0; turn < tries.length; turn++) {
            for (int mirror = 0; mirror < tries[turn].length; mirror++) {
                Placement p = best.place();
                Placement other = new Placement(
                        p.centreXPx(),
                        p.centreYPx(),
                        p.equatorialRadiusPx(),
                        p.poleAngleDeg() + 180 * turn,
                        p.mirrored() ^ mirror == 1);
                tries[turn][mirror] =
                        stage.fit(other, best.shared(), prior(other.poleAngleDeg()), bin(other, clear), 3, 8);
            }
        }
        return new OrientationOdds(disc, hints, view).chosen(tries);
    }

    /**
     * Fits from the template and, when they say something else, from the rays. A narrow start may end in a valley of too narrow a blur and too small a
     * disc, a wide one finds the other valley: each is begun from one of the two places, and all four ways are gone only when the ends disagree.
     */
    private Found both(Placement match) {
        if (view.ringOuter > 0) {
            return rough(match);
        }
        Placement rays = new LimbRays(view, picture).trace(match, 0.15).place();
        double apart = Math.hypot(rays.centreXPx() - match.centreXPx(), rays.centreYPx() - match.centreYPx())
                + Math.abs(rays.equatorialRadiusPx() - match.equatorialRadiusPx());
        if (apart < STARTS_DIFFER * match.equatorialRadiusPx()) {
            return rough(match);
        }
        if (wideToo(match)) {
            Found one = narrow(rays);
            Found other = wide(match);
            if (agree(one, other)) {
                return better(one, other);
            }
            return better(better(one, other), better(wide(rays), narrow(match)));
        }
        return better(narrow(match), narrow(rays));
    }

    private static boolean agree(Found a, Found b) {
        Placement p = a.place();
        Placement q = b.place();
        double apart = Math.hypot(p.centreXPx() - q.centreXPx(), p.centreYPx() - q.centreYPx())
                + Math.abs(p.equatorialRadiusPx() - q.equatorialRadiusPx());
        return apart < ENDS_DIFFER * p.equatorialRadiusPx()
                && Math.abs(Math.IEEEremainder(p.poleAngleDeg() - q.poleAngleDeg(), 360)) < 1;
    }

    private static Found better(Found a, Found b) {
        return b.solution().loss() < a.solution().loss() ? b : a;
    }

    /** Scans the pole angle over half a turn, or a whole one where the Sun's side shows, or near the template's on crescents, with coarse fits and returns the best start. */
    private Placement axis(Placement match) {
        boolean crescent = disc.phaseAngleDeg() > CRESCENT_DEG;
        double from = crescent ? match.poleAngleDeg() - 20 : 0;
        double to = crescent ? match.poleAngleDeg() + 20 : disc.phaseAngleDeg() > SIDE_DEG ? 359 : 179;
        List<Found> scan = new ArrayList<>();
        double step = crescent ? 10 : angleHeld ? 2 * ANGLE_STEP_DEG : ANGLE_STEP_DEG;
        for (double angle = from; angle <= to; angle += step) {
            Placement start = new Placement(
                    match.centreXPx(), match.centreYPx(), match.equatorialRadiusPx(), angle, match.mirrored());
            scan.add(stage.fit(
                    start,
                    stage.startShape(START_CORE_PX, 2),
                    angleHeld ? prior(angle) : null,
                    bin(start, SCAN_RADIUS_PX),
                    5,
                    4));
        }
        scan.sort(Comparator.comparingDouble(f -> f.solution().loss()));
        List<Found> finals = new ArrayList<>();
        for (Found f : scan) {
            boolean near = finals.stream()
                    .anyMatch(g -> Math.abs(Math.IEEEremainder(
                                    f.place().poleAngleDeg() - g.place().poleAngleDeg(), 360))
                            < ANGLE_STEP_DEG);
            if (!near && finals.size() < FINALISTS) {
                finals.add(rough(f.place()));
            }
        }
        return finals.stream()
                .min(Comparator.comparingDouble(f -> f.solution().loss()))
                .map(Found::place)
                .orElse(match);
    }
}
