/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.List;

/**
 * A disc found in a picture. Immutable.
 *
 * @param placement where it lies
 * @param covariance how sure that is
 * @param trust trusted or doubtful
 * @param reasons why doubtful, one sentence each; empty when trusted
 * @param method how it was fitted, with its version, e.g. "limb rays 1", "forward model 1", "hand"
 * @param channel "green", "grey", … the fit was made in
 * @param rmsPx scatter of the edge points about the outline (px), NaN when there were none
 * @param edgePoints edge points used
 * @param witnesses words of the sources that were combined
 */
public record DiscFit(
        Placement placement,
        PlacementCovariance covariance,
        Trust trust,
        List<String> reasons,
        String method,
        String channel,
        double rmsPx,
        int edgePoints,
        List<Witness> witnesses) {

    /** Copies the lists. */
    public DiscFit {
        reasons = List.copyOf(reasons);
        witnesses = List.copyOf(witnesses);
    }
}
