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
 * @param supersededBy the fit that replaced it; empty for the current one
 */
public record StoredFit(
        long id,
        long pictureId,
        DiscFit fit,
        String ephemeris,
        String software,
        Instant madeUtc,
        Optional<Long> supersededBy) {}
