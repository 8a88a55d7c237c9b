/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import org.junit.jupiter.api.Test;

class TimeAxisTest {
    private static final UtcTime EVENING = UtcTime.parse("2024-12-07T15:10:00Z");

    private static TimeAxis axis(double hours, double widthPx) {
        return new TimeAxis(new TimeSpan(EVENING, EVENING.plusClockSeconds(3600 * hours)), 100, 100 + widthPx);
    }

    @Property
    void placeAndTimeAreInverse(
            @ForAll @DoubleRange(min = 0.5, max = 700) double hours,
            @ForAll @DoubleRange(min = 1, max = 4000) double widthPx,
            @ForAll @DoubleRange(min = 0, max = 1) double share) {
        TimeAxis axis = axis(hours, widthPx);
        double x = 100 + share * widthPx;
        assertThat(axis.x(axis.at(x))).isCloseTo(x, within(1e-6));
    }

    @Property
    void ticksKeepApartAndAreRound(
            @ForAll @DoubleRange(min = 2, max = 700) double hours,
            @ForAll @DoubleRange(min = 200, max = 2000) double widthPx) {
        TimeAxis axis = axis(hours, widthPx);
        List<TimeAxis.Tick> ticks = axis.ticks(48);
        assertThat(ticks).isNotEmpty();
        for (int i = 0; i < ticks.size(); i++) {
            assertThat(axis.span().contains(ticks.get(i).time())).isTrue();
            assertThat(ticks.get(i).time().secondOfDay() % 60).isZero();
            if (i > 0) {
                assertThat(ticks.get(i).xPx() - ticks.get(i - 1).xPx()).isGreaterThan(48 - 1e-9);
            }
        }
    }

    @Test
    void hoursOfANightAreLabelledAcrossMidnight() {
        assertThat(axis(16, 900).ticks(48).stream().map(TimeAxis.Tick::label))
                .startsWith("16:00", "17:00")
                .contains("23:00", "00:00", "01:00")
                .endsWith("07:00");
        assertThat(axis(24 * 7, 900).ticks(48).get(0).label()).isEqualTo("8 Dec");
    }

    @Test
    void whatIsBeyondTheEndsIsKeptToThem() {
        assertThat(axis(10, 500).at(-1000)).isEqualTo(EVENING);
        assertThatThrownBy(() -> axis(0, 500)).isInstanceOf(IllegalArgumentException.class);
    }
}
