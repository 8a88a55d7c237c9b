/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.ArrayList;
import java.util.List;

/** One way the picture may be turned, with its likelihood over the times. */
final class PictureTurn {
    /** Offsets that count as the stated time itself (s). */
    private static final double NEAR_S = 90;

    final boolean turned;
    final boolean mirrored;
    double best = Double.NEGATIVE_INFINITY;
    double bestS;
    double near = Double.NEGATIVE_INFINITY;
    double evidence = Double.NEGATIVE_INFINITY;
    final List<double[]> good = new ArrayList<>();

    PictureTurn(boolean turned, boolean mirrored) {
        this.turned = turned;
        this.mirrored = mirrored;
    }

    void add(double offsetS, double likelihood, double logPrior) {
        good.add(new double[] {offsetS, likelihood});
        if (likelihood > best) {
            best = likelihood;
            bestS = offsetS;
        }
        if (Math.abs(offsetS) <= NEAR_S) {
            near = Math.max(near, likelihood);
        }
        double more = likelihood + logPrior;
        double top = Math.max(more, evidence);
        evidence = top + Math.log(Math.exp(more - top) + Math.exp(evidence - top));
    }
}
