/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class CurveTest {
    private final DriftFitter fitter = new DriftFitter();

    private static LongitudeSeries moving(DoubleUnaryOperator lonAtDay, int marks, double span, double noise) {
        SplittableRandom random = new SplittableRandom(12);
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < marks; i++) {
            double day = span * i / (marks - 1);
            double lon = lonAtDay.applyAsDouble(day) + noise * Sets.gauss(random);
            points.add(Sets.point(day, ((lon % 360) + 360) % 360, 0.5, -22 + 0.01 * day, 0.4));
        }
        return Sets.jupiter("2", points);
    }

    @Test
    void accelerationIsFound() {
        Drift drift = fitter.fit(moving(d -> 350 + 0.4 * d + 0.004 * d * d, 40, 120, 0.3));
        assertThat(drift.motion()).isInstanceOf(DriftModel.Acceleration.class);
        DriftModel.Acceleration found = (DriftModel.Acceleration) drift.motion();
        assertThat(found.accelerationDegPerDay2()).isCloseTo(0.008, within(3 * found.sigmaAccelerationDegPerDay2()));
        assertThat(drift.rateDegPerDay()).isCloseTo(0.4 + 0.008 * 60, within(3 * drift.sigmaRateDegPerDay()));
        // The epoch is the middle of the arc, where the rate of an even acceleration is its mean.
        assertThat(found.rateDegPerDay()).isCloseTo(drift.rateDegPerDay(), within(1e-6));
        assertThat(drift.alternatives()).hasSizeGreaterThan(1);
        assertThat(drift.alternatives().get(0).criterion()).isZero();
        assertThat(drift.alternatives()).extracting(Alternative::criterion).isSorted();
        assertThat(drift.alternatives().stream()
                        .mapToDouble(Alternative::weight)
                        .sum())
                .isCloseTo(1, within(1e-12));
    }

    @Test
    void changeOfRateIsFoundWithItsDate() {
        Drift drift = fitter.fit(moving(d -> 20 - 0.2 * d + (d > 61 ? -0.4 * (d - 61) : 0), 60, 150, 0.4));
        DriftModel.RateChange found = (DriftModel.RateChange) drift.motion();
        assertThat(Drift.daysBetween(Sets.day(61), found.changeUtc()))
                .isCloseTo(0, within(3 * found.sigmaChangeDays()));
        assertThat(found.beforeDegPerDay()).isCloseTo(-0.2, within(3 * found.sigmaBeforeDegPerDay()));
        assertThat(found.afterDegPerDay()).isCloseTo(-0.6, within(3 * found.sigmaAfterDegPerDay()));
        assertThat(drift.rateDegPerDay())
                .isCloseTo((61 * -0.2 + 89 * -0.6) / 150, within(3 * drift.sigmaRateDegPerDay()));
    }

    @Test
    void oscillationIsFoundWithAGivenPeriodToo() {
        LongitudeSeries series = moving(d -> 77 + 0.04 * d + 1.5 * Math.sin(2 * Math.PI * (d - 5) / 88), 70, 180, 0.5);
        DriftModel.Oscillation found =
                (DriftModel.Oscillation) fitter.fit(series).motion();
        assertThat(found.periodDays()).isCloseTo(88, within(3 * found.sigmaPeriodDays()));
        assertThat(found.amplitudeDeg()).isCloseTo(1.5, within(3 * found.sigmaAmplitudeDeg()));
        double cycles = Drift.daysBetween(Sets.day(5), found.zeroUtc()) / 88;
        assertThat((cycles - Math.rint(cycles)) * 88).isCloseTo(0, within(4 * found.sigmaZeroDays()));
        DriftModel.Oscillation given = (DriftModel.Oscillation)
                new DriftFitter().withPeriodDays(90).fit(series).motion();
        assertThat(given.periodDays()).isCloseTo(90, within(1e-9));
        assertThat(given.sigmaPeriodDays()).isZero();
        assertThatThrownBy(() -> fitter.withPeriodDays(-1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void fewMarksAreNeverGivenACurve() {
        Drift drift = fitter.fit(moving(d -> 10 + 0.004 * d * d, 11, 100, 0.1));
        assertThat(drift.model()).isEqualTo("rate");
        assertThat(drift.alternatives()).hasSize(1);
    }

    @Test
    void errorsOfACurveAreThoseOfManyTrials() {
        SplittableRandom random = new SplittableRandom(77);
        double square = 0;
        double stated = 0;
        int n = 0;
        for (int run = 0; run < 150; run++) {
            List<LongitudePoint> points = new ArrayList<>();
            for (int i = 0; i < 50; i++) {
                double day = 2.5 * i;
                double lon = 100 + 0.3 * day + 0.003 * day * day + 0.6 * Sets.gauss(random);
                points.add(Sets.point(day, lon % 360, 0.6));
            }
            Drift drift = fitter.fit(Sets.jupiter("2", points));
            if (drift.motion() instanceof DriftModel.Acceleration a) {
                square += Math.pow(a.accelerationDegPerDay2() - 0.006, 2);
                stated += a.sigmaAccelerationDegPerDay2() * a.sigmaAccelerationDegPerDay2();
                n++;
            }
        }
        assertThat(n).isGreaterThan(140);
        // The standard error of the ratio is 6 %.
        assertThat(Math.sqrt(square / stated)).isBetween(0.82, 1.18);
    }

    @Test
    void predictionsGrowWithTheDistance() {
        Drift drift = fitter.fit(moving(d -> 10 - 0.3 * d, 30, 90, 0.5));
        Prediction near = drift.at(Sets.day(95));
        Prediction far = drift.at(Sets.day(150));
        assertThat(near.daysBeyondArc()).isCloseTo(5, within(1e-6));
        assertThat(far.sigmaLonDeg()).isGreaterThan(2 * near.sigmaLonDeg());
        assertThat(drift.at(Sets.day(45)).daysBeyondArc()).isZero();
        assertThat(drift.at(Sets.day(-10)).daysBeyondArc()).isCloseTo(10, within(1e-6));
        assertThat(far.reducedLonDeg()).isBetween(0.0, 360.0);
        assertThat(Math.IEEEremainder(far.lonDeg() - (10 - 45), 360)).isCloseTo(0, within(3 * far.sigmaLonDeg()));
    }

    @Test
    void latitudeAgainstTime() {
        Drift drift = fitter.fit(moving(d -> 10 - 0.3 * d, 30, 90, 0.5));
        LatitudeTrend trend = LatitudeTrend.of(drift).orElseThrow();
        assertThat(trend.degPerDay()).isCloseTo(0.01, within(1e-9));
        assertThat(trend.latGraphicDeg()).isCloseTo(-22 + 0.45, within(0.02));
        // 0.4 deg each, 30 marks evenly over 90 days.
        double xx = 0;
        for (int i = 0; i < 30; i++) {
            xx += Math.pow(90.0 * i / 29 - 45, 2);
        }
        assertThat(trend.sigmaDegPerDay()).isCloseTo(0.4 / Math.sqrt(xx), within(1e-9));
        List<LongitudePoint> bare = Sets.line(10, 0.1, 0.5, 0, 5, 9, 14, 20);
        assertThat(LatitudeTrend.of(fitter.fit(Sets.jupiter("2", bare)))).isEmpty();
        assertThat(bare.get(0).latGraphicDeg()).isEqualTo(OptionalDouble.empty());
    }
}
