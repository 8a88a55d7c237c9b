/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.archive.PictureFacts.Taken;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TimeEntryTest {
    private static final Taken BEFORE = new Taken(Instant.parse("2031-03-24T23:50:00Z"), OptionalDouble.of(120), 0.5);

    @ParameterizedTest
    @CsvSource({
        "2031-03-24T21:05:30Z, 2031-03-24T21:05:30Z",
        "2031-03-24 21:05:30+01:00, 2031-03-24T20:05:30Z",
        "+1 h, 2031-03-25T00:50:00Z",
        "-2 min, 2031-03-24T23:48:00Z",
        "\u221263.5 s, 2031-03-24T23:48:56.500Z",
        "+1d, 2031-03-25T23:50:00Z",
        "23:45:10, 2031-03-24T23:45:10Z",
        "23:45.5 UT, 2031-03-24T23:45:30Z",
        "0:10, 2031-03-25T00:10:00Z",
        "9:05:01.25, 2031-03-25T09:05:01.250Z",
    })
    void wholeTimesTimesOfDayAndShiftsAreUnderstood(String typed, Instant expected) {
        Taken after =
                TimeEntry.of(typed).orElseThrow().applied(Optional.of(BEFORE)).orElseThrow();
        assertThat(after.midUtc()).isEqualTo(expected);
        assertThat(after.exposureS()).hasValue(120);
        assertThat(after.sigmaS()).isEqualTo(0.5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "noon", "25:00", "2031-03-24", "2031-03-24T21:05:30", "1 h", "+ h", "+1 week", "12:60"})
    void whatIsNoTimeIsNotGuessedAt(String typed) {
        assertThat(TimeEntry.of(typed)).isEmpty();
    }

    @Test
    void anUndatedPictureTakesOnlyAWholeTime() {
        assertThat(TimeEntry.of("+1 h").orElseThrow().applied(Optional.<Taken>empty()))
                .isEmpty();
        assertThat(TimeEntry.of("21:05").orElseThrow().applied(Optional.<Taken>empty()))
                .isEmpty();
        assertThat(TimeEntry.of("2031-03-24T21:05:30Z").orElseThrow().applied(Optional.<Taken>empty()))
                .contains(new Taken(Instant.parse("2031-03-24T21:05:30Z"), OptionalDouble.empty(), 1));
    }
}
