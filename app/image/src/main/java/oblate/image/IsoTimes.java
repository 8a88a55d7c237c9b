/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds ISO 8601 times in texts: basic {@code 20310324T210530Z} and extended {@code 2031-03-24T21:05:30Z} form, seconds or minutes with a
 * fraction or without, {@code Z}, an offset, or neither. Never throws, whatever the text.
 */
final class IsoTimes {
    private static final String FRACTION = "[.,](\\d{1,30})";
    private static final Pattern BASIC = Pattern.compile(
            "(?<!\\d)(\\d{4})(\\d{2})(\\d{2})T(\\d{2})(\\d{2})(?:" + FRACTION + "|(\\d{2})(?:" + FRACTION
                    + ")?)?(Z|[+-]\\d{4}|[+-]\\d{2})?(?!\\d)",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern EXTENDED = Pattern.compile(
            "(?<!\\d)(\\d{4})-(\\d{2})-(\\d{2})(?:T| {1,2})(\\d{2}):(\\d{2})(?:" + FRACTION + "|:(\\d{2})(?:" + FRACTION
                    + ")?)?( ?Z| ?(?:UTC|UT|GMT)\\b|[+-]\\d{2}:\\d{2}|[+-]\\d{2})?(?![\\d:])",
            Pattern.CASE_INSENSITIVE);

    /** How freely a text may write a time. */
    enum Manner {
        /** A file's name: {@code T} between date and time, and an offset of hours alone may be a running number. */
        NAME,
        /** A person's words: a blank for the {@code T} and "UT" or "UTC" for the {@code Z} are understood too. */
        WORDS
    }

    private IsoTimes() {}

    /** All times in a text, in the order in which they stand there. */
    static List<IsoTime> find(String text, Manner manner) {
        List<IsoTime> found = new ArrayList<>();
        for (Pattern pattern : List.of(BASIC, EXTENDED)) {
            Matcher matcher = pattern.matcher(text);
            while (matcher.find()) {
                boolean blank = matcher.group().contains(" ");
                if (manner == Manner.NAME && blank) {
                    continue;
                }
                found.add(read(matcher, manner));
            }
        }
        found.sort((a, b) -> Integer.compare(a.at(), b.at()));
        return found;
    }

    /** The time a text consists of, and nothing else. */
    static Optional<IsoTime> whole(String text) {
        String stripped = text.strip();
        return find(stripped, Manner.WORDS).stream()
                .filter(t -> t.at() == 0 && t.end() == stripped.length())
                .findFirst();
    }

    private static IsoTime read(Matcher m, Manner manner) {
        Optional<String> remark = Optional.empty();
        Optional<ZoneOffset> offset = Optional.empty();
        String fault = null;
        String zone = m.group(9) == null ? "" : m.group(9).strip();
        try {
            boolean hoursAlone = zone.length() == 3 && (zone.charAt(0) == '+' || zone.charAt(0) == '-');
            if (hoursAlone && manner == Manner.NAME) {
                remark = Optional.of("\"" + zone
                        + "\" after the time in the file's name may be a running number and is not taken for an"
                        + " offset; write an offset with its minutes");
            } else if (!zone.isEmpty()) {
                offset = Optional.of(zone.matches("[+-].*") ? ZoneOffset.of(zone) : ZoneOffset.UTC);
            }
        } catch (DateTimeException e) {
            fault = "the offset " + zone + " does not exist";
        }
        int hour = number(m, 4);
        int minute = number(m, 5);
        int second = m.group(7) == null ? 0 : number(m, 7);
        boolean leap = second == 60 && minute == 59;
        LocalDateTime clock = LocalDateTime.MIN;
        try {
            LocalDate day = LocalDate.of(number(m, 1), number(m, 2), number(m, 3));
            if (fault == null) {
                fault = clockFault(hour, minute, second);
            }
            if (fault == null) {
                clock = day.atTime(hour, minute, leap ? 59 : second)
                        .plusNanos(fractionNanos(m))
                        .plusSeconds(leap ? 1 : 0);
            }
        } catch (DateTimeException e) {
            fault = "there is no such day";
        }
        return new IsoTime(
                m.group(), m.start(), clock, offset, precisionS(m), leap, Optional.ofNullable(fault), remark);
    }

    /** Why a time of day does not exist; null when it does. */
    static String clockFault(int hour, int minute, int second) {
        if (hour == 24) {
            return "24:00 is 00:00 of the next day";
        }
        if (hour > 23 || minute > 59 || second > 60 || (second == 60 && minute != 59)) {
            return "there is no such time of day";
        }
        return null;
    }

    private static int number(Matcher m, int group) {
        return Integer.parseInt(m.group(group));
    }

    private static long fractionNanos(Matcher m) {
        String digits = m.group(6) != null ? m.group(6) : m.group(8);
        if (digits == null) {
            return 0;
        }
        double unitS = m.group(6) != null ? 60 : 1;
        return Math.min((long) (unitS * 1e9) - 1, Math.round(Double.parseDouble("0." + digits) * unitS * 1e9));
    }

    private static double precisionS(Matcher m) {
        if (m.group(6) != null) {
            return 30 * Math.pow(10, -Math.min(9, m.group(6).length()));
        }
        if (m.group(7) == null) {
            return 30;
        }
        return 0.5
                * Math.pow(10, -(m.group(8) == null ? 0 : Math.min(9, m.group(8).length())));
    }
}
