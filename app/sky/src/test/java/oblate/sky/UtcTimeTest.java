/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.StringLength;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UtcTimeTest {

    @Test
    void wholeMinutesSecondsAndFractionsAreRead() {
        assertThat(UtcTime.parse("2024-12-07T20:58Z")).isEqualTo(UtcTime.of(Instant.parse("2024-12-07T20:58:00Z")));
        assertThat(UtcTime.parse("2024-12-07T20:58:03Z").secondOfDay()).isEqualTo(75483.0);
        assertThat(UtcTime.parse("1969-07-20T20:17:40.25Z"))
                .isEqualTo(UtcTime.of(Instant.parse("1969-07-20T20:17:40.25Z")));
        assertThat(UtcTime.parse("2024-02-29T00:00:00,5Z").secondOfDay()).isEqualTo(0.5);
    }

    @Test
    void leapSecondIsInsideItsDay() {
        UtcTime leap = UtcTime.parse("2016-12-31T23:59:60.5Z");
        assertThat(leap.secondOfDay()).isEqualTo(86400.5);
        assertThat(leap.iso()).isEqualTo("2016-12-31T23:59:60.5Z");
        assertThat(leap.toInstant()).isEqualTo(Instant.parse("2017-01-01T00:00:00Z"));
        assertThat(leap).isLessThan(UtcTime.parse("2017-01-01T00:00:00Z"));
        assertThat(leap).isGreaterThan(UtcTime.parse("2016-12-31T23:59:59.9Z"));
    }

    @ParameterizedTest
    @CsvSource({
        "2024-12-07T20:00:00, NO_ZONE",
        "2024-12-07T20:00, NO_ZONE",
        "2024-12-07T20:00:00+01:00, NOT_UTC",
        "2024-12-07T20:00:00+00:00, NOT_UTC",
        "2024-12-07T20:00:00-05, NOT_UTC",
        "2016-12-31T23:59:61Z, NO_SUCH_TIME",
        "2024-12-07T20:60:00Z, NO_SUCH_TIME",
        "2024-12-07T24:00:00Z, NO_SUCH_TIME",
        "2023-02-29T00:00:00Z, NO_SUCH_TIME",
        "2023-13-01T00:00:00Z, NO_SUCH_TIME",
        "2015-12-31T23:59:60Z, NO_LEAP_SECOND",
        "2016-12-31T12:00:60Z, NO_LEAP_SECOND",
        "2030-06-30T23:59:60Z, NO_LEAP_SECOND",
        "2024-12-07 20:00:00Z, NOT_A_TIME",
        "2024-12-07T20:00:00z, NOT_A_TIME",
        "2024-12-07, NOT_A_TIME",
        "24-12-07T20:00:00Z, NOT_A_TIME",
        "2024-12-07T20:00:00.Z, NOT_A_TIME",
        "2024-12-07T20:00:00.0000000001Z, NOT_A_TIME",
        "now, NOT_A_TIME",
        "'', NOT_A_TIME"
    })
    void badTimeIsRefusedInOneSentence(String text, SkyProblem kind) {
        assertThatThrownBy(() -> UtcTime.parse(text))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(kind))
                .hasMessageStartingWith("\"" + text)
                .hasMessageNotContaining("{");
    }

    @Test
    void missingZoneIsOfferedWithIt() {
        assertThatThrownBy(() -> UtcTime.parse("2024-12-07T20:00:00"))
                .hasMessageContaining("write 2024-12-07T20:00:00Z");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2024-12-07T20:58:00Z",
                "2016-12-31T23:59:60Z",
                "1960-01-01T00:00:00.000000001Z",
                "2059-12-31T23:59:59.999999999Z"
            })
    void writtenAsRead(String text) {
        assertThat(UtcTime.parse(text).iso()).isEqualTo(text);
    }

    @Test
    void roundingCarriesOverTheLeapSecond() {
        assertThat(UtcTime.parse("2016-12-31T23:59:59.7Z").iso(0)).isEqualTo("2016-12-31T23:59:60Z");
        assertThat(UtcTime.parse("2016-12-31T23:59:60.7Z").iso(0)).isEqualTo("2017-01-01T00:00:00Z");
        assertThat(UtcTime.parse("2023-12-31T23:59:59.96Z").iso(1)).isEqualTo("2024-01-01T00:00:00.0Z");
    }

    @Property
    void parseAndFormatAreInverse(
            @ForAll @IntRange(min = -5000, max = 35000) int day,
            @ForAll @LongRange(max = 86399_999999999L) long nanos) {
        UtcTime time = new UtcTime(day, nanos / 1e9);
        assertThat(UtcTime.parse(time.iso())).isEqualTo(time);
        assertThat(UtcTime.parse(time.iso(9))).isEqualTo(time);
        assertThat(UtcTime.of(time.toInstant())).isEqualTo(time);
    }

    @Property
    void noTextMakesItStumble(@ForAll @StringLength(max = 40) String text) {
        try {
            assertThat(UtcTime.parse(text).secondOfDay()).isBetween(0.0, 86401.0);
        } catch (ProblemException e) {
            assertThat(e.kind()).isInstanceOf(SkyProblem.class);
        }
    }

    @Test
    void secondOutsideTheDayIsAProgrammersFault() {
        assertThatThrownBy(() -> new UtcTime(0, -0.1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new UtcTime(0, 86401)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new UtcTime(0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
