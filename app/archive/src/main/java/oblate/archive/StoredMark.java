/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/**
 * A mark in the catalog.
 *
 * @param id number in the catalog
 * @param mark what was measured
 * @param longitudes longitude (deg) by system id at the picture's mid-time; empty for a mark off the globe
 * @param featureName name of its feature, empty while unnamed
 * @param midUtc mid-time of its picture
 * @param madeUtc when it was made
 * @param supersededBy the mark that replaced it; empty for a current one
 * @param withdrawnReason why it was withdrawn; empty for a current one
 */
public record StoredMark(
        long id,
        NewMark mark,
        Map<String, Double> longitudes,
        Optional<String> featureName,
        Instant midUtc,
        Instant madeUtc,
        Optional<Long> supersededBy,
        Optional<String> withdrawnReason) {

    /** Whether it counts. */
    public boolean isCurrent() {
        return supersededBy.isEmpty() && withdrawnReason.isEmpty();
    }
}
