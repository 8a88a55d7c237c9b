/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

/**
 * A UTC time of day that can stand inside a leap second, which {@link Instant} cannot.
 *
 * @param epochDay day counted from 1970-01-01
 * @param secondOfDay seconds since the day's start, 0…86401 (from 86400 on only inside a leap second)
 */
public record UtcTime(long epochDay, double secondOfDay) implements Comparable<UtcTime> {

    /** The same reading of the UTC clock. */
    public static UtcTime of(Instant instant) {
        long day = Math.floorDiv(instant.getEpochSecond(), 86400L);
        return new UtcTime(day, Math.floorMod(instant.getEpochSecond(), 86400L) + instant.getNano() * 1e-9);
    }

    /** The nearest instant; inside a leap second, the start of the next day. */
    public Instant toInstant() {
        long nanos = Math.round(Math.min(secondOfDay, 86400.0) * 1e9);
        return LocalDate.ofEpochDay(epochDay)
                .atStartOfDay(ZoneOffset.UTC)
                .toInstant()
                .plusNanos(nanos);
    }

    @Override
    public int compareTo(UtcTime other) {
        int days = Long.compare(epochDay, other.epochDay);
        return days != 0 ? days : Double.compare(secondOfDay, other.secondOfDay);
    }
}
