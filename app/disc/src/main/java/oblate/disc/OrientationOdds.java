/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import java.util.Optional;
import oblate.disc.ForwardStage.Found;
import oblate.sky.ApparentDisc;

/** Weighs fits of one disc as given, turned upside down and mirrored against each other. */
final class OrientationOdds {
    /** Differences of ln(residual) that change the odds e-fold, as the practice pictures show them. */
    private static final double NORTH_SCALE = 0.06;

    private static final double PARITY_SCALE = 0.1;
    /** From this phase on the mirror image is wrong all over the disc (deg). */
    private static final double WHOLE_PHASE_DEG = 30;
    /** Below this phase the sliver is hardly there (deg). */
    private static final double THIN_SLIVER_DEG = 5;

    private final ApparentDisc disc;
    private final FitHints hints;
    private final GlobeView view;

    OrientationOdds(ApparentDisc disc, FitHints hints, GlobeView view) {
        this.disc = disc;
        this.hints = hints;
        this.view = view;
    }

    /**
     * Weighs the tries. Which end is north shows in the whole residual (how the belts are bowed, which half of the rings is in front); mirrored or not
     * in the limb band alone, where the unlit sliver lies: inside, a few bright spots on one side outweigh it.
     */
    Orientation.Choice chosen(Found[][] tries) {
        double[] north = {1, 0};
        if (tries.length > 1) {
            double odds = Math.log(leastLoss(tries[1]) / leastLoss(tries[0])) / NORTH_SCALE;
            north[0] = likely(odds);
            north[1] = 1 - north[0];
        }
        double[] parity = {0, 0};
        int at = 0;
        int mirror = 0;
        double most = -1;
        for (int turn = 0; turn < tries.length; turn++) {
            double same = 1;
            if (tries[turn].length > 1) {
                same = parityKnowable() ? likely(Math.log(litSide(tries[turn])) / parityScale()) : 0.5;
            }
            double[] each = {north[turn] * same, north[turn] * (1 - same)};
            for (int m = 0; m < tries[turn].length; m++) {
                parity[m] += each[m];
                if (each[m] > most) {
                    most = each[m];
                    at = turn;
                    mirror = m;
                }
            }
        }
        return new Orientation.Choice(
                tries[at][mirror],
                tries.length > 1 ? Optional.of(north[at]) : Optional.empty(),
                tries[at].length > 1 ? Optional.of(parity[mirror]) : Optional.empty(),
                tries[at].length > 1 ? Optional.of(tries[at][1 - mirror].place()) : Optional.empty());
    }

    /** Where nobody knows the pole angle, the Sun may stand on either side: turned by as much, the mirror image looks the same. */
    private boolean parityKnowable() {
        return Orientation.angleSeen(disc) || hints.poleAngle().isPresent();
    }

    /** How much worse the mirror image leaves the place where the two differ: a crescent all over, a gibbous disc at the limb. */
    private double litSide(Found[] tries) {
        boolean crescent = disc.phaseAngleDeg() > WHOLE_PHASE_DEG;
        double plain =
                crescent ? tries[0].solution().loss() : tries[0].solution().bandLoss();
        double mirrored =
                crescent ? tries[1].solution().loss() : tries[1].solution().bandLoss();
        return Math.max(1e-9, mirrored) / Math.max(1e-9, plain);
    }

    /** Near opposition the sliver is as thin as the faults of the model; the shadow of a globe on its rings shows even then. */
    private double parityScale() {
        return PARITY_SCALE * (view.ringOuter > 0 ? 1 : Math.max(1, THIN_SLIVER_DEG / disc.phaseAngleDeg()));
    }

    private static double likely(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }

    private static double leastLoss(Found[] tries) {
        return Math.max(
                1e-9,
                Arrays.stream(tries).mapToDouble(f -> f.solution().loss()).min().orElse(1));
    }
}
