/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oblate.base.ProblemException;

/**
 * A UTC time of day that can stand inside a leap second, which {@link Instant} cannot.
 *
 * @param epochDay day counted from 1970-01-01
 * @param secondOfDay seconds since the day's start, 0…86401 (from 86400 on only inside a leap second)
 */
public record UtcTime(long epochDay, double secondOfDay) implements Comparable<UtcTime> {
    private static final Pattern ISO = Pattern.compile(
            "(\\d{4})-(\\d{2})-(\\d{2})T(\\d{2}):(\\d{2})(?::(\\d{2})(?:[.,](\\d{1,9}))?)?(Z|[+-]\\d{2}(?::?\\d{2})?)?");
    private static final long NANOS_PER_S = 1_000_000_000L;

    /**
     * Checks the range.
     *
     * @throws IllegalArgumentException when the second of the day is not in 0…86401
     */
    public UtcTime {
        if (!(secondOfDay >= 0 && secondOfDay < 86401)) {
            throw new IllegalArgumentException("second of day " + secondOfDay);
        }
    }

    /** The same reading of the UTC clock. */
    public static UtcTime of(Instant instant) {
        long day = Math.floorDiv(instant.getEpochSecond(), 86400L);
        return new UtcTime(
                day, fromNanos(Math.floorMod(instant.getEpochSecond(), 86400L) * NANOS_PER_S + instant.getNano()));
    }

    /**
     * Reads ISO 8601 with {@code Z}, to the minute, second or a fraction of it down to the nanosecond: {@code 2016-12-31T23:59:60.5Z}.
     *
     * @throws ProblemException a {@link SkyProblem} for a text of another form, a time without zone or not in UTC, a time that never was
     */
    public static UtcTime parse(String text) {
        return parse(text, LeapSeconds.bundled());
    }

    /** As {@link #parse(String)}, with another table of leap seconds. */
    public static UtcTime parse(String text, LeapSeconds leapSeconds) {
        Matcher parts = ISO.matcher(text);
        if (!parts.matches()) {
            throw new ProblemException(SkyProblem.NOT_A_TIME, shortened(text));
        }
        if (parts.group(8) == null) {
            throw new ProblemException(SkyProblem.NO_ZONE, text);
        }
        if (!parts.group(8).equals("Z")) {
            throw new ProblemException(SkyProblem.NOT_UTC, text);
        }
        LocalDate date = date(text, parts);
        int hour = Integer.parseInt(parts.group(4));
        int minute = Integer.parseInt(parts.group(5));
        int second = parts.group(6) == null ? 0 : Integer.parseInt(parts.group(6));
        if (hour > 23) {
            throw new ProblemException(SkyProblem.NO_SUCH_TIME, text, "a day ends at 23:59:59");
        }
        if (minute > 59) {
            throw new ProblemException(SkyProblem.NO_SUCH_TIME, text, "an hour has 60 minutes");
        }
        if (second > 60) {
            throw new ProblemException(
                    SkyProblem.NO_SUCH_TIME, text, "a minute has 60 seconds, or 61 with a leap second");
        }
        long wholeS = hour * 3600L + minute * 60L + second;
        if (second == 60 && (wholeS != 86400 || leapSeconds.secondsInDay(date.toEpochDay()) != 86401)) {
            throw new ProblemException(SkyProblem.NO_LEAP_SECOND, text, wholeS == 86400 ? date : "that minute");
        }
        return new UtcTime(date.toEpochDay(), fromNanos(wholeS * NANOS_PER_S + fractionNanos(parts.group(7))));
    }

    private static LocalDate date(String text, Matcher parts) {
        try {
            return LocalDate.of(
                    Integer.parseInt(parts.group(1)),
                    Integer.parseInt(parts.group(2)),
                    Integer.parseInt(parts.group(3)));
        } catch (DateTimeException e) {
            String date = parts.group(1) + "-" + parts.group(2) + "-" + parts.group(3);
            throw new ProblemException(e, SkyProblem.NO_SUCH_TIME, text, "the calendar has no " + date);
        }
    }

    private static long fractionNanos(String digits) {
        return digits == null ? 0 : Long.parseLong((digits + "000000000").substring(0, 9));
    }

    private static double fromNanos(long nanosOfDay) {
        return nanosOfDay / 1e9;
    }

    private static String shortened(String text) {
        return text.length() <= 60 ? text : text.substring(0, 60) + "…";
    }

    /** ISO 8601 with {@code Z}, as many decimals of the second as are needed, at most nine. */
    public String iso() {
        String text = iso(9);
        int end = text.length() - 1;
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        if (text.charAt(end - 1) == '.') {
            end--;
        }
        return text.substring(0, end) + "Z";
    }

    /**
     * ISO 8601 with {@code Z}, rounded to a number of decimals of the second.
     *
     * @param decimals 0…9
     */
    public String iso(int decimals) {
        long unit = 1;
        for (int i = decimals; i < 9; i++) {
            unit *= 10;
        }
        long nanos = Math.round(Math.round(secondOfDay * 1e9) / (double) unit) * unit;
        long day = epochDay;
        long dayNanos = Math.max(LeapSeconds.bundled().secondsInDay(epochDay), (long) secondOfDay + 1) * NANOS_PER_S;
        if (nanos >= dayNanos) {
            nanos -= dayNanos;
            day++;
        }
        long seconds = nanos / NANOS_PER_S;
        long minutes = Math.min(seconds / 60, 24 * 60 - 1);
        String clock = String.format(
                Locale.ROOT,
                "%sT%02d:%02d:%02d",
                LocalDate.ofEpochDay(day),
                minutes / 60,
                minutes % 60,
                seconds - minutes * 60);
        return decimals == 0
                ? clock + "Z"
                : clock + "."
                        + String.format(Locale.ROOT, "%09d", nanos % NANOS_PER_S)
                                .substring(0, decimals) + "Z";
    }

    /** As {@link #iso()}. */
    @Override
    public String toString() {
        return iso();
    }

    /** Seconds by the clock since another time; a leap second between counts nothing, and one is itself the start of the next day. */
    public double clockSecondsSince(UtcTime other) {
        return (epochDay - other.epochDay) * 86400.0
                + Math.min(secondOfDay, 86400)
                - Math.min(other.secondOfDay, 86400);
    }

    /** A time later by a number of seconds by the clock, leap seconds not counted; negative for earlier. */
    public UtcTime plusClockSeconds(double seconds) {
        double ofDay = Math.min(secondOfDay, 86400) + seconds;
        double days = Math.floor(ofDay / 86400);
        double rest = ofDay - days * 86400;
        return rest < 86400
                ? new UtcTime(epochDay + (long) days, Math.max(0, rest))
                : new UtcTime(epochDay + (long) days + 1, 0);
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
