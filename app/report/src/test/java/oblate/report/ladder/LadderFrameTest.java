/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.disc.MapFrame;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.planet.jupiter.Jupiter;
import oblate.planet.uranus.Uranus;
import oblate.sky.RotationSystem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class LadderFrameTest {
    private static final Instant EPOCH = Instant.parse("2031-03-01T00:00:00Z");
    private final Jupiter jupiter = new Jupiter();
    private final RotationSystem two = jupiter.globe().system("2").orElseThrow();

    private LadderFrame frame(double ratePerDay, double zero) {
        return new LadderFrame(jupiter, two, ratePerDay, zero, EPOCH, 60, -12, 0, "as asked for");
    }

    /**
     * By hand: a feature at 20.0 deg on 1 March 2031 0h UT moving -7.5 deg a day in System II is at 20 - 7.5 * 10 = -55 = 305.0 on 11 March 0h, at
     * 20 - 7.5 * 50.25 = -356.875 = 3.125 on 20 April 6h, and at 20 + 7.5 * 2 = 35.0 on 27 February 0h.
     */
    @Test
    @Tag("truth")
    void aFeatureThatMovesAtTheFramesRateStaysInItsColumn() {
        LadderFrame frame = frame(-7.5, 20);
        assertThat(frame.zeroLonDegAt(Instant.parse("2031-03-11T00:00:00Z"))).isEqualTo(305.0, offset(1e-9));
        assertThat(frame.zeroLonDegAt(Instant.parse("2031-04-20T06:00:00Z"))).isEqualTo(3.125, offset(1e-9));
        assertThat(frame.zeroLonDegAt(Instant.parse("2031-02-27T00:00:00Z"))).isEqualTo(35.0, offset(1e-9));
        assertThat(frame.offsetDeg(305.0, Instant.parse("2031-03-11T00:00:00Z")))
                .isEqualTo(0, offset(1e-9));
        assertThat(frame.offsetDeg(3.125, Instant.parse("2031-04-20T06:00:00Z")))
                .isEqualTo(0, offset(1e-9));
        // One that stands still at 20 deg runs through the frame: 75 deg behind after ten days.
        assertThat(frame.offsetDeg(20, Instant.parse("2031-03-11T00:00:00Z"))).isEqualTo(75, offset(1e-9));
        // And 1.5 deg of longitude more is 1.5 deg in the frame, also over the border of the circle.
        assertThat(frame.offsetDeg(4.625, Instant.parse("2031-04-20T06:00:00Z")))
                .isEqualTo(1.5, offset(1e-9));
        assertThat(frame.offsetDeg(359.125, Instant.parse("2031-04-20T06:00:00Z")))
                .isEqualTo(-4, offset(1e-9));
    }

    @Test
    void theFrameOfADriftKeepsItsMarksInTheMiddle() {
        List<LongitudePoint> points = new java.util.ArrayList<>();
        for (int i = 0; i < 20; i++) {
            points.add(new LongitudePoint(
                    EPOCH.plus(Duration.ofHours(37L * i)),
                    350 - 7.5 * 37 * i / 24,
                    0.4,
                    OptionalDouble.of(-6),
                    OptionalDouble.of(0.3)));
        }
        LongitudeSeries series = new LongitudeSeries("runner", jupiter, two, points);
        LadderFrame own = LadderFrame.movingWith(new DriftFitter().fit(series), 60, -12, 0);
        LadderFrame asked = LadderFrame.atRate(series, -7.5, 60, -12, 0);
        assertThat(own.rateDegPerDay()).isEqualTo(-7.5, offset(1e-3));
        for (LongitudePoint p : points) {
            assertThat(own.offsetDeg(p.lonDeg(), p.time())).isEqualTo(0, offset(0.02));
            assertThat(asked.offsetDeg(p.lonDeg(), p.time())).isEqualTo(0, offset(1e-6));
        }
        assertThat(own.words()).contains("−7.5").contains("drift of runner").contains("System II");
    }

    @Property(tries = 200)
    void theSheetOfAStripAndTheFrameAgreeWhereAPlaceIs(
            @ForAll @DoubleRange(min = -40, max = 40) double rate,
            @ForAll @DoubleRange(min = 0, max = 360) double zero,
            @ForAll @DoubleRange(min = -200, max = 200) double day,
            @ForAll @DoubleRange(min = -29, max = 29) double offset) {
        LadderFrame frame = frame(rate, zero);
        Instant time = EPOCH.plusMillis(Math.round(day * 86_400_000));
        MapFrame sheet = LadderStrip.sheet(frame, time);
        double lon = frame.zeroLonDegAt(time) + offset;
        double column = sheet.pixelOf(lon, -6).xPx();
        // West-positive: greater longitudes to the left of the middle, at 6 columns a degree.
        assertThat(column).isCloseTo((sheet.widthPx() - 1) / 2.0 - 6 * offset, offset(1e-6));
        assertThat(frame.offsetDeg(lon, time)).isCloseTo(offset, offset(1e-9));
        assertThat(sheet.heightPx()).isEqualTo(72);
    }

    @Test
    void eastIsToTheRightWhateverWayLongitudeIsCounted() {
        assertThat(frame(0, 0).eastSign()).isEqualTo(-1);
        Uranus uranus = new Uranus();
        LadderFrame east =
                new LadderFrame(uranus, uranus.globe().iauSystem(), 0, 10, EPOCH, 60, -12, 0, "as asked for");
        assertThat(east.eastSign()).isEqualTo(1);
    }

    @Test
    void whatIsNoBandIsRefused() {
        assertThatThrownBy(() -> new LadderFrame(jupiter, two, 0, 0, EPOCH, 60, 5, 5.5, ""))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> frame(Double.NaN, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
