/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oblate.archive.PictureFacts;
import oblate.archive.PictureFacts.Taken;

/** What a person types for a time: an ISO 8601 instant, a time of day in UT, or a shift such as {@code +1 h} or {@code -63 s}. */
sealed interface TimeEntry {
    /** A whole time. */
    record At(Instant time) implements TimeEntry {}

    /** A time of day; the date stays, or is the one nearest to the time before. */
    record Clock(LocalTime time) implements TimeEntry {}

    /** So much later, or earlier when negative. */
    record Shift(Duration by) implements TimeEntry {}

    /** What an undated picture's time is taken to be sure to (s). */
    double USUAL_SIGMA_S = 1;

    /** Understands a text; empty when it is none of these. */
    static Optional<TimeEntry> of(String typed) {
        String text = typed.strip().replace('\u2212', '-').replaceFirst("(?i)\\s*(UTC|UT)$", "");
        Matcher shift =
                Pattern.compile("([+-])\\s*(\\d+(?:\\.\\d+)?)\\s*(d|h|min|m|s)").matcher(text);
        if (shift.matches()) {
            double unitS =
                    switch (shift.group(3)) {
                        case "d" -> 86_400;
                        case "h" -> 3600;
                        case "min", "m" -> 60;
                        default -> 1;
                    };
            long ms = Math.round(Double.parseDouble(shift.group(2)) * unitS * 1000);
            return Optional.of(new Shift(Duration.ofMillis(shift.group(1).equals("-") ? -ms : ms)));
        }
        Matcher tenths = Pattern.compile("(\\d{1,2}):(\\d{2})\\.(\\d)").matcher(text);
        try {
            if (tenths.matches()) {
                return Optional.of(new Clock(LocalTime.of(
                        Integer.parseInt(tenths.group(1)),
                        Integer.parseInt(tenths.group(2)),
                        6 * Integer.parseInt(tenths.group(3)))));
            }
            if (text.matches("\\d{1,2}:\\d{2}(:\\d{2}(\\.\\d{1,3})?)?")) {
                return Optional.of(new Clock(LocalTime.parse(
                        text.length() - text.indexOf(':') < 0 || text.indexOf(':') == 1 ? "0" + text : text)));
            }
            return Optional.of(
                    new At(OffsetDateTime.parse(text.replace(' ', 'T')).toInstant()));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** Whether it can be used for a picture without a time. */
    default boolean isWhole() {
        return this instanceof At;
    }

    /**
     * The time it makes of another; length and uncertainty stay.
     *
     * @param before the time before; without one only a whole time can be used
     */
    default Optional<Taken> applied(Optional<Taken> before) {
        Optional<Instant> at = before.map(Taken::midUtc);
        Optional<Instant> after;
        if (this instanceof At whole) {
            after = Optional.of(whole.time());
        } else if (this instanceof Shift shift) {
            after = at.map(t -> t.plus(shift.by()));
        } else {
            after = at.map(t -> nearest(t, ((Clock) this).time()));
        }
        return after.map(t -> new Taken(
                t,
                before.map(Taken::exposureS).orElse(java.util.OptionalDouble.empty()),
                before.map(Taken::sigmaS).orElse(USUAL_SIGMA_S)));
    }

    private static Instant nearest(Instant before, LocalTime clock) {
        Instant same =
                before.atOffset(ZoneOffset.UTC).toLocalDate().atTime(clock).toInstant(ZoneOffset.UTC);
        Duration off = Duration.between(before, same);
        if (off.toHours() >= 12) {
            return same.minus(Duration.ofDays(1));
        }
        return off.toHours() <= -12 ? same.plus(Duration.ofDays(1)) : same;
    }

    /** The facts with the time changed. */
    default PictureFacts applied(PictureFacts facts) {
        return facts.withTime(applied(facts.time()).or(facts::time));
    }
}
