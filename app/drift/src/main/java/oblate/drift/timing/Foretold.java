/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Optional;
import oblate.sky.event.Passage;

/**
 * An event as it was foretold.
 *
 * @param passage the event
 * @param site the place it was foretold for; empty for the Earth's centre
 * @param unknownKm how far the moon may be seen aside of its foretold place because the observer's is not known (km, as a standard error along its way); 0 with a
 *     site, and for shadows and eclipses
 */
record Foretold(Passage passage, Optional<ShotSite> site, double unknownKm) {}
