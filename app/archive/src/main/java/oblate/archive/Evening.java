/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;

/** The date of the evening a time belongs to: nights run from local noon to local noon. */
final class Evening {
    private static final double SECONDS_PER_DEG = 86400 / 360.0;

    private Evening() {}

    /**
     * @param site its zone says what local is, or else its longitude; without a site it is UTC
     */
    static LocalDate of(Instant time, Optional<Site> site) {
        if (site.isPresent() && site.get().zone().isPresent()) {
            return time.atZone(site.get().zone().get())
                    .toLocalDateTime()
                    .minusHours(12)
                    .toLocalDate();
        }
        double eastDeg =
                site.map(Site::lonDeg).map(lon -> lon > 180 ? lon - 360 : lon).orElse(0.0);
        long seconds = Math.round(eastDeg * SECONDS_PER_DEG);
        return time.plusSeconds(seconds)
                .atOffset(ZoneOffset.UTC)
                .toLocalDateTime()
                .minusHours(12)
                .toLocalDate();
    }
}
