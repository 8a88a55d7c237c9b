/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.util.List;
import oblate.sky.TimeSpan;

/**
 * What a search brought. Immutable.
 *
 * @param wish what was asked for
 * @param events in order of their beginnings
 * @param seen stretches in which the planet is up and the sky dark; none without a site
 */
record Found(Wish wish, List<Happening> events, List<TimeSpan> seen) {
    Found {
        events = List.copyOf(events);
        seen = List.copyOf(seen);
    }
}
