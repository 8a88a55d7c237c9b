/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the pictures of one run, taken with the same gear without turning the camera, say together about north and mirror image. Each one's word is its
 * probability; as they show the same planet they do not err independently, so no run counts for more than three pictures. Stateless.
 */
public final class RunOrientation {
    private static final double SURE = 0.95;
    private static final double MOST_WORDS = 3;
    private static final double LARGEST_ODDS = 4;
    private static final double ANGLE_SIGMA_DEG = 2;
    /** Axes further apart than this (deg) do not belong to one run. */
    private static final double ONE_AXIS_DEG = 30;

    private RunOrientation() {}

    /**
     * Hints for those pictures of a run that left something open and that the others can decide.
     *
     * @param fits the run's fits, in any order; empty where a picture has none
     * @return as many entries, empty where there is nothing to fit again
     */
    public static List<Optional<FitHints>> hints(List<Optional<DiscFit>> fits) {
        Optional<DiscFit> first = fits.stream().flatMap(Optional::stream).findFirst();
        List<Optional<FitHints>> none = new ArrayList<>();
        fits.forEach(f -> none.add(Optional.empty()));
        if (first.isEmpty() || fits.stream().flatMap(Optional::stream).count() < 2) {
            return none;
        }
        double axis = first.get().placement().poleAngleDeg();
        double north = 0;
        double mirrored = 0;
        int n = 0;
        for (Optional<DiscFit> fit : fits) {
            if (fit.isEmpty()) {
                continue;
            }
            double turn = Math.IEEEremainder(fit.get().placement().poleAngleDeg() - axis, 360);
            if (Math.abs(Math.IEEEremainder(turn, 180)) > ONE_AXIS_DEG) {
                return none;
            }
            north += (Math.abs(turn) < 90 ? 1 : -1) * odds(fit.get(), "north end", 1);
            mirrored += odds(fit.get(), "mirrored", fit.get().placement().mirrored() ? 1 : 0);
            n++;
        }
        double share = Math.min(n, MOST_WORDS) / n;
        double pNorth = 1 / (1 + Math.exp(-Math.abs(north) * share));
        double pMirrored = 1 / (1 + Math.exp(-Math.abs(mirrored) * share));
        if (pNorth < SURE || pMirrored < SURE) {
            return none;
        }
        return again(fits, axis + (north < 0 ? 180 : 0), mirrored > 0);
    }

    private static List<Optional<FitHints>> again(List<Optional<DiscFit>> fits, double axis, boolean mirrored) {
        List<Optional<FitHints>> hints = new ArrayList<>();
        for (Optional<DiscFit> fit : fits) {
            hints.add(fit.flatMap(f -> {
                double turn = Math.IEEEremainder(f.placement().poleAngleDeg() - axis, 360);
                boolean upsideDown = Math.abs(turn) > 90;
                boolean right = !upsideDown && f.placement().mirrored() == mirrored;
                if (right && sure(f, "north end") && sure(f, "mirrored")) {
                    return Optional.empty();
                }
                double angle = Math.IEEEremainder(f.placement().poleAngleDeg() + (upsideDown ? 180 : 0), 360);
                return Optional.of(FitHints.of(angle, ANGLE_SIGMA_DEG, mirrored));
            }));
        }
        return hints;
    }

    /** The last word on a quantity, as log odds; where it was given, as good as sure. */
    private static double odds(DiscFit fit, String quantity, double given) {
        double p = word(fit, quantity).orElse(given);
        double odds = Math.log(Math.max(1e-6, p) / Math.max(1e-6, 1 - p));
        return Math.max(-LARGEST_ODDS, Math.min(LARGEST_ODDS, odds));
    }

    private static boolean sure(DiscFit fit, String quantity) {
        return word(fit, quantity).map(p -> Math.max(p, 1 - p) >= SURE).orElse(true);
    }

    private static Optional<Double> word(DiscFit fit, String quantity) {
        return fit.witnesses().stream()
                .filter(w -> w.quantity().equals(quantity))
                .reduce((a, b) -> b)
                .map(Witness::value);
    }
}
