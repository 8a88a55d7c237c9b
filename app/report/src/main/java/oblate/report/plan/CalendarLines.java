/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.plan;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;

/** Content lines of iCalendar, RFC 5545 section 3.1: folded at 75 octets, ended by CR LF. Not for many threads. */
final class CalendarLines {
    private static final int MOST_OCTETS = 75;
    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

    private final StringBuilder lines = new StringBuilder();

    /** A line whose value needs no escaping. */
    CalendarLines plain(String name, String value) {
        fold(name + ":" + value);
        return this;
    }

    /** A line of text: backslash, comma, semicolon and line ends are escaped, other control characters left out. */
    CalendarLines text(String name, String value) {
        return plain(name, escaped(value));
    }

    /** A time in UTC, to the nearest second. */
    CalendarLines time(String name, Instant time) {
        return plain(name, UTC.format(time.plusMillis(500).truncatedTo(ChronoUnit.SECONDS)));
    }

    /** All lines. */
    @Override
    public String toString() {
        return lines.toString();
    }

    private static String escaped(String value) {
        StringBuilder out = new StringBuilder();
        value.replace("\r\n", "\n").codePoints().forEach(c -> {
            if (c == '\n') {
                out.append("\\n");
            } else if (c == '\\' || c == ',' || c == ';') {
                out.append('\\').appendCodePoint(c);
            } else if (c == '\t' || !Character.isISOControl(c)) {
                out.appendCodePoint(c);
            }
        });
        return out.toString();
    }

    /** Never within a character; a line that goes on begins with a space, which counts. */
    private void fold(String line) {
        int octets = 0;
        for (int i = 0; i < line.length(); ) {
            int c = line.codePointAt(i);
            String character = Character.toString(c);
            int size = character.getBytes(StandardCharsets.UTF_8).length;
            if (octets + size > MOST_OCTETS) {
                lines.append("\r\n ");
                octets = 1;
            }
            lines.append(character);
            octets += size;
            i += character.length();
        }
        lines.append("\r\n");
    }
}
