/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import oblate.drift.timing.Phenomenon;
import oblate.drift.timing.TimedPoint;
import oblate.drift.timing.Timing;
import oblate.planet.jupiter.Jupiter;
import org.junit.jupiter.api.Test;

class TimingScaleTest {
    private static final LocalDate NIGHT = LocalDate.parse("2031-03-24");

    private static Timing timing(LocalDate night, double oMinusPS, double sigmaS, String... doubts) {
        Instant at = Instant.parse(night + "T21:00:00Z");
        return new Timing(
                night,
                "",
                Optional.empty(),
                new Jupiter().moons().get(0),
                Phenomenon.TRANSIT,
                TimedPoint.MID,
                Timing.Method.PLACE,
                Optional.of(at),
                Optional.of(at),
                oMinusPS,
                new Timing.Errors(sigmaS, sigmaS, 0, 0, 0, 0, 0),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of("p"),
                0,
                List.of(doubts));
    }

    @Test
    void allThatIsSureLiesInsideWithItsError() {
        List<Timing> timings =
                List.of(timing(NIGHT, 12, 5), timing(NIGHT, -20, 8), timing(NIGHT.plusDays(100), 900, 9, "far off"));
        TimingScale s = TimingScale.of(timings, 600, 300);
        assertThat(s.y(17)).isGreaterThan(s.inside().getMinY());
        assertThat(s.y(-28)).isLessThan(s.inside().getMaxY());
        assertThat(s.y(900)).isLessThan(s.inside().getMinY());
        for (TimingScale.Timed t : s.places()) {
            assertThat(s.x(t)).isBetween(s.inside().getMinX(), s.inside().getMaxX());
        }
        assertThat(s.x(s.places().get(1)) - s.x(s.places().get(0))).isCloseTo(11, within(1e-9));
        assertThat(s.secondTicks()).contains(0.0).allMatch(v -> v == Math.rint(v));
        assertThat(s.y(10)).isLessThan(s.y(0));
    }

    @Test
    void oneNightAloneHasAScaleToo() {
        TimingScale s = TimingScale.of(List.of(timing(NIGHT, 0, 0.5)), 400, 200);
        assertThat(s.x(NIGHT)).isCloseTo(s.inside().getCenterX(), within(1.0));
        assertThat(s.dateTicks()).isNotEmpty();
        assertThat(s.secondTicks()).contains(0.0).hasSizeGreaterThan(2);
    }
}
