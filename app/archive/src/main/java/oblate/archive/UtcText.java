/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Instants as the catalog keeps them: UTC to the nanosecond in 30 characters, so that the order of the texts is the order in time. */
final class UtcText {
    private static final DateTimeFormatter FORMAT = DateTimeFormatter.ofPattern(
                    "uuuu-MM-dd'T'HH:mm:ss.nnnnnnnnn'Z'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    private static final Instant FIRST = Instant.parse("0001-01-01T00:00:00Z");
    private static final Instant LAST = Instant.parse("9999-12-31T23:59:59Z");

    private UtcText() {}

    /** The text of an instant; those outside the years 1 to 9999 become the nearest that fits, which no ephemeris reaches. */
    static String of(Instant instant) {
        if (instant.isBefore(FIRST)) {
            return FORMAT.format(FIRST);
        }
        return FORMAT.format(instant.isAfter(LAST) ? LAST : instant);
    }

    static Instant parse(String text) {
        return Instant.parse(text);
    }
}
