/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static oblate.drift.Sets.JUPITER;
import static oblate.drift.Sets.system;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import oblate.sky.Sky;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SystemConversionTest {
    private static final SystemConversion CONVERSION = new SystemConversion(Sky.bundled());

    /**
     * Central meridians of one instant are one point's longitudes in the three systems. Figures of the trade table, computed with an independent library after the IAU's
     * model: 2023 Nov 3 0h 102.03, 247.80, 285.37; 2024 Dec 7 20:58 272.68, 239.79, 24.00; 2026 Jan 10 0h 193.23, 2.65, 252.75.
     */
    @Tag("truth")
    @ParameterizedTest
    @CsvSource({
        "2023-11-03T00:00:00Z, 102.03, 247.80, 285.37",
        "2024-12-07T20:58:00Z, 272.68, 239.79, 24.00",
        "2026-01-10T00:00:00Z, 193.23, 2.65, 252.75"
    })
    void onePointInThreeSystems(String time, double lon1, double lon2, double lon3) {
        LongitudePoint point = new LongitudePoint(
                java.time.Instant.parse(time), lon1, 0.5, java.util.OptionalDouble.empty(), java.util.OptionalDouble.empty());
        LongitudeSeries series = Sets.jupiter("1", List.of(point));
        assertThat(lonIn(series, "2")).isCloseTo(lon2, within(0.011));
        assertThat(lonIn(series, "3")).isCloseTo(lon3, within(0.011));
        assertThat(lonIn(CONVERSION.inSystem(series, system(JUPITER, "3")), "1")).isCloseTo(lon1, within(1e-9));
    }

    @Test
    void convertedDriftAgreesWithTheFitOfTheConvertedSeries() {
        List<LongitudePoint> points = new ArrayList<>();
        for (double day = 0; day <= 60; day += 4) {
            points.add(Sets.point(day, 200 - 7.2 * day + 0.3 * Math.sin(day), 0.5, 5, 0.4));
        }
        DriftFitter fitter = new DriftFitter();
        LongitudeSeries series = Sets.jupiter("2", points);
        Drift converted = CONVERSION.inSystem(fitter.fit(series), system(JUPITER, "1"));
        Drift refitted = fitter.fit(CONVERSION.inSystem(series, system(JUPITER, "1")));
        assertThat(converted.rateDegPerDay() - fitter.fit(series).rateDegPerDay()).isCloseTo(7.63, within(1e-9));
        // 7.63 deg per day times the change of the light time, 1e-4 at most.
        assertThat(refitted.rateDegPerDay()).isCloseTo(converted.rateDegPerDay(), within(7.63e-4));
        assertThat(refitted.lonDeg()).isCloseTo(converted.lonDeg(), within(0.02));
        assertThat(refitted.periodS()).isCloseTo(converted.periodS(), within(0.05));
        assertThat(refitted.speedMS().orElseThrow()).isCloseTo(converted.speedMS().orElseThrow(), within(0.012));
        for (int i = 0; i < points.size(); i++) {
            double measured = converted.series().points().get(i).lonDeg();
            double shown = converted.states().get(i).unwrappedLonDeg();
            assertThat(Math.IEEEremainder(shown - measured, 360)).isCloseTo(0, within(0.03));
        }
    }

    @Test
    void sameSystemIsLeftAlone() {
        LongitudeSeries series = Sets.jupiter("2", Sets.line(10, 1, 0.5, 0, 5, 10));
        assertThat(CONVERSION.inSystem(series, system(JUPITER, "2"))).isSameAs(series);
    }

    private static double lonIn(LongitudeSeries series, String id) {
        return CONVERSION.inSystem(series, system(JUPITER, id)).points().get(0).lonDeg();
    }
}
