/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.Optional;
import oblate.disc.DiscFit;

/**
 * A disc fit in the catalog.
 *
 * @param id number in the catalog
 * @param pictureId picture it belongs to
 * @param fit the fit
 * @param ephemeris ephemeris the apparent disc was computed with
 * @param software program and version that made it
 * @param madeUtc when
 * @param supersededBy the fit in use that came after it; empty for the current one
 * @param withdrawnReason why it was taken out of use; empty for one that was not
 */
public record StoredFit(
        long id,
        long pictureId,
        DiscFit fit,
        String ephemeris,
        String software,
        Instant madeUtc,
        Optional<Long> supersededBy,
        Optional<String> withdrawnReason) {

    /** Whether it is the fit its picture is measured with: the newest one not withdrawn. */
    public boolean isCurrent() {
        return supersededBy.isEmpty() && withdrawnReason.isEmpty();
    }
}
