/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Comparator;
import java.util.List;

/**
 * A stretch of a night in which it is dark and a planet stands high enough, with the planet's way through it.
 *
 * @param span the stretch
 * @param track views at even steps, both ends included
 */
public record DarkWindow(TimeSpan span, List<GroundView> track) {

    /** Copies the list. */
    public DarkWindow {
        track = List.copyOf(track);
    }

    /** The view of the track in which the planet stands highest. */
    public GroundView best() {
        return track.stream()
                .max(Comparator.comparingDouble(GroundView::altitudeDeg))
                .orElseThrow();
    }
}
