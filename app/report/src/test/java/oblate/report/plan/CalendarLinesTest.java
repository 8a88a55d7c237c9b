/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.plan;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class CalendarLinesTest {

    /** Whatever is written comes back from an independent reader, and no line is longer than RFC 5545 allows. */
    @Property(tries = 300)
    void textComesBack(@ForAll String raw) {
        String text = raw.codePoints()
                .filter(c -> Character.isDefined(c) && !Character.isISOControl(c) && (c < 0xD800 || c > 0xDFFF))
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        String written = wrap("a" + text + ";,\\\n" + text + "z");
        for (String line : written.split("\r\n", -1)) {
            assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
        }
        assertThat(Biweekly.parse(written)
                        .first()
                        .getEvents()
                        .get(0)
                        .getSummary()
                        .getValue()
                        .replace("\r\n", "\n"))
                .isEqualTo("a" + text + ";,\\\n" + text + "z");
    }

    private static String wrap(String summary) {
        return new CalendarLines()
                .plain("BEGIN", "VCALENDAR")
                .plain("VERSION", "2.0")
                .plain("BEGIN", "VEVENT")
                .text("SUMMARY", summary)
                .plain("END", "VEVENT")
                .plain("END", "VCALENDAR")
                .toString();
    }

    /** The example of RFC 5545, section 3.3.11. */
    @Test
    void textIsEscapedAsTheStandardShows() {
        assertThat(new CalendarLines()
                        .text("DESCRIPTION", "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.")
                        .toString())
                .isEqualTo("DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.\r\n");
        assertThat(new CalendarLines().text("X", "a;b,c\\d\u0007").toString()).isEqualTo("X:a\\;b\\,c\\\\d\r\n");
    }

    @Test
    void timesAreUtc() {
        assertThat(new CalendarLines()
                        .time("DTSTART", Instant.parse("2024-12-31T23:59:59.6Z"))
                        .toString())
                .isEqualTo("DTSTART:20250101T000000Z\r\n");
    }
}
