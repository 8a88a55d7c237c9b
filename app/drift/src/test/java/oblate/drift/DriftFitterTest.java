/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static oblate.drift.Sets.JUPITER;
import static oblate.drift.Sets.point;
import static oblate.drift.Sets.system;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;

class DriftFitterTest {
    private final DriftFitter fitter = new DriftFitter();

    @Test
    void exactLineIsFoundExactly() {
        Drift drift = fitter.fit(
                Sets.jupiter("2", Sets.line(350, 1.25, 0.5, 0, 3, 9, 14, 22, 31, 40, 44, 51, 60, 66, 71, 80)));
        assertThat(drift.rateDegPerDay()).isCloseTo(1.25, within(1e-9));
        assertThat(drift.rateDegPer30Days()).isCloseTo(37.5, within(1e-7));
        assertThat(Math.IEEEremainder(drift.unwrappedLonDegAt(Sets.day(0)) - 350, 360))
                .isCloseTo(0, within(1e-6));
        assertThat(drift.lonDeg()).isBetween(0.0, 360.0);
        assertThat(drift.rmsDeg()).isLessThan(1e-6);
        assertThat(drift.scatterDeg()).isZero();
        assertThat(drift.rejected()).isZero();
        assertThat(drift.warnings()).isEmpty();
        assertThat(drift.model()).isEqualTo("rate");
        assertThat(drift.firstUtc()).isEqualTo(Sets.day(0));
        assertThat(drift.lastUtc()).isEqualTo(Sets.day(80));
    }

    @Test
    void falseMarkIsShownAndLeftOut() {
        List<LongitudePoint> points =
                new ArrayList<>(Sets.line(10, -0.4, 0.5, 0, 5, 9, 14, 20, 27, 33, 38, 46, 50, 57, 61, 70));
        points.set(6, point(33, 10 - 0.4 * 33 + 12, 0.5));
        Drift drift = fitter.fit(Sets.jupiter("2", points));
        assertThat(drift.rejected()).isEqualTo(1);
        assertThat(drift.states().get(6).used()).isFalse();
        assertThat(drift.states().get(6).residualDeg()).isCloseTo(12, within(0.01));
        assertThat(drift.rateDegPerDay()).isCloseTo(-0.4, within(1e-4));
        assertThat(drift.states()).hasSameSizeAs(points);
    }

    @Test
    void epochIsTheWeightedMiddle() {
        // Weights 1 : 4 : 1 by errors of 1, 0.5 and 1 deg: the middle lies at (0 + 4·30 + 40) / 6 days.
        Drift drift = fitter.fit(Sets.jupiter("2", List.of(point(0, 100, 1), point(30, 103, 0.5), point(40, 104, 1))));
        assertThat(Drift.daysBetween(Sets.day(0), drift.epochUtc())).isCloseTo(160 / 6.0, within(0.6 / 86400));
    }

    @Test
    void twoMarksHaveTheStatedErrorsAndAWarning() {
        Drift drift = fitter.fit(Sets.jupiter("2", List.of(point(0, 359, 0.3), point(10, 3, 0.4))));
        assertThat(drift.rateDegPerDay()).isCloseTo(0.4, within(1e-12));
        assertThat(drift.sigmaRateDegPerDay()).isCloseTo(0.05, within(1e-12));
        assertThat(drift.warnings()).anyMatch(w -> w.startsWith("two marks only"));
    }

    @Test
    void threeMarksHaveLargerErrorsThanTheirFormalOnes() {
        Drift drift = fitter.fit(Sets.jupiter("2", Sets.line(20, 0.1, 0.5, 0, 3.5, 7)));
        // Three marks over 7 days at 0.5 deg: 3.0 deg per 30 days formally (trade table); root 3 of it with one to
        // spare.
        assertThat(drift.sigmaRateDegPer30Days()).isCloseTo(3.03 * Math.sqrt(3), within(0.01));
        assertThat(drift.warnings()).anyMatch(w -> w.startsWith("3 marks only"));
        assertThat(drift.warnings()).anyMatch(w -> w.startsWith("with any one mark left out"));
    }

    @Test
    void statedErrorsAreNeverShrunk() {
        Drift generous =
                fitter.fit(Sets.jupiter("2", Sets.line(20, 0.1, 5, 0, 5, 9, 14, 22, 31, 40, 44, 51, 60, 66, 71)));
        double xx = 0;
        double mean = (0 + 5 + 9 + 14 + 22 + 31 + 40 + 44 + 51 + 60 + 66 + 71) / 12.0;
        for (double t : new double[] {0, 5, 9, 14, 22, 31, 40, 44, 51, 60, 66, 71}) {
            xx += (t - mean) * (t - mean);
        }
        assertThat(generous.sigmaRateDegPerDay()).isGreaterThanOrEqualTo(5 / Math.sqrt(xx));
    }

    @Test
    void secondRateThatFitsNearlyAsWellIsTold() {
        // Every 30 days exactly: 12 deg per day more or less is one turn more or less.
        Drift drift = fitter.fit(Sets.jupiter("2", Sets.line(50, 0.5, 0.5, 0, 30, 60, 90)));
        assertThat(drift.rateDegPerDay()).isCloseTo(0.5, within(1e-6));
        assertThat(drift.warnings()).anyMatch(w -> w.contains("-11.500") && w.contains("nearly as well"));
    }

    @Test
    void evenRatesAreSettledByTheCustomarySystemOfTheLatitude() {
        // At the equator a feature rests in System I, which is +7.63 deg per day of System II backwards: −7.63.
        List<LongitudePoint> points = new ArrayList<>();
        for (double day : new double[] {0, 40}) {
            points.add(point(day, 50 - 7.63 * day, 0.5, 2, 0.5));
        }
        Drift drift = fitter.fit(Sets.jupiter("2", points));
        assertThat(drift.rateDegPerDay()).isCloseTo(-7.63, within(1e-9));
    }

    @Test
    void marksOfOneTimeAreRefused() {
        LongitudeSeries series = Sets.jupiter("2", List.of(point(3, 10, 1), point(3, 11, 1), point(3, 12, 1)));
        assertThatThrownBy(() -> fitter.fit(series))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(DriftProblem.ONE_TIME));
    }

    @Test
    void oneMarkIsRefused() {
        LongitudeSeries series = Sets.jupiter("2", List.of(point(3, 10, 1)));
        assertThatThrownBy(() -> fitter.fit(series))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(DriftProblem.TOO_FEW));
    }

    @Test
    void speedCarriesTheErrorOfTheLatitude() {
        List<LongitudePoint> points = new ArrayList<>();
        for (double day = 0; day <= 60; day += 3) {
            points.add(point(day, 10 - 4 * day, 0.01, 45, 5));
        }
        Drift drift = fitter.fit(Sets.jupiter("3", points));
        double sigmaLat = drift.sigmaMeanLatDeg().orElseThrow();
        assertThat(sigmaLat).isCloseTo(5 / Math.sqrt(21), within(1e-9));
        double up = Motion.speedMS(JUPITER.globe(), -4, 45 + sigmaLat);
        double down = Motion.speedMS(JUPITER.globe(), -4, 45 - sigmaLat);
        assertThat(drift.sigmaSpeedMS().orElseThrow()).isCloseTo((down - up) / 2, within(0.01 * (down - up)));
        assertThat(drift.speedMS().orElseThrow()).isPositive();
    }

    @Test
    void noLatitudeMeansNoSpeed() {
        Drift drift = fitter.fit(Sets.jupiter("2", Sets.line(20, 0.1, 0.5, 0, 5, 9)));
        assertThat(drift.speedMS()).isEmpty();
        assertThat(drift.meanLatDeg()).isEmpty();
    }

    @Test
    void manyMarksAreFitted() {
        Random random = new Random(5);
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < 200_000; i++) {
            double day = random.nextDouble() * 150;
            points.add(point(day, 77 - 3.3 * day + random.nextGaussian() * 0.7, 0.7));
        }
        Drift drift = fitter.fit(Sets.jupiter("2", points));
        assertThat(drift.rateDegPerDay()).isCloseTo(-3.3, within(4 * drift.sigmaRateDegPerDay()));
        assertThat(drift.sigmaRateDegPerDay()).isLessThan(1e-4);
    }

    @Property(tries = 200, seed = "41")
    void whatComesOutIsAlwaysANumber(
            @ForAll @IntRange(min = 2, max = 25) int n,
            @ForAll long seed,
            @ForAll @DoubleRange(min = -9, max = 2.6) double logSpan) {
        Random random = new Random(seed);
        double span = Math.pow(10, logSpan);
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double sigma = Math.pow(10, random.nextDouble() * 12 - 8);
            points.add(new LongitudePoint(
                    Instant.ofEpochSecond(1_700_000_000L, (long) (random.nextDouble() * span * 86_400e9)),
                    (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(8)),
                    sigma,
                    random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(random.nextDouble() * 180 - 90),
                    random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(sigma)));
        }
        try {
            Drift d = fitter.fit(Sets.jupiter("2", points));
            assertThat(new double[] {
                        d.lonDeg(),
                        d.sigmaLonDeg(),
                        d.rateDegPerDay(),
                        d.sigmaRateDegPerDay(),
                        d.periodS(),
                        d.sigmaPeriodS(),
                        d.speedMS().orElse(0),
                        d.sigmaSpeedMS().orElse(0),
                        d.meanLatDeg().orElse(0),
                        d.sigmaMeanLatDeg().orElse(0),
                        d.rmsDeg(),
                        d.scatterDeg()
                    })
                    .doesNotContain(Double.NaN);
            assertThat(d.sigmaRateDegPerDay()).isPositive();
            assertThat(d.lonDeg()).isGreaterThanOrEqualTo(0).isLessThan(360);
            assertThat(d.states())
                    .hasSize(n)
                    .noneMatch(s -> Double.isNaN(s.residualDeg() + s.unwrappedLonDeg() + s.weight()));
        } catch (ProblemException e) {
            assertThat(e.kind()).isEqualTo(DriftProblem.ONE_TIME);
        }
    }

    @Property(tries = 30, seed = "42")
    void orderOfTheMarksDoesNotMatter(@ForAll long seed) {
        var random = new java.util.SplittableRandom(seed);
        LongitudeSeries series = Sets.simulated(random, new Sets.Recipe(20, -2.5, 0.05, 1, 80, 0, 0))
                .series();
        List<LongitudePoint> shuffled = new ArrayList<>(series.points());
        Collections.shuffle(shuffled, new Random(seed));
        Drift a = fitter.fit(series);
        Drift b = fitter.fit(new LongitudeSeries("spot", JUPITER, system(JUPITER, "2"), shuffled));
        assertThat(b.rateDegPerDay()).isCloseTo(a.rateDegPerDay(), within(1e-7));
        assertThat(b.sigmaRateDegPerDay()).isCloseTo(a.sigmaRateDegPerDay(), within(1e-6));
    }
}
