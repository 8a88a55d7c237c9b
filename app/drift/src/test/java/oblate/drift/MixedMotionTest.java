/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Test;

class MixedMotionTest {
    private static final Instant FIRST = Sets.day(0);
    private static final Instant LAST = Sets.day(40);

    /** A line through a longitude on day 20, with errors of longitude there and of rate. */
    private static Curve line(double lon, double rate, double sigmaLon, double sigmaRate) {
        return Curve.of(
                new Line(0, lon, rate, 1 / (sigmaLon * sigmaLon), 1 / (sigmaRate * sigmaRate)), Sets.day(20), 1);
    }

    private static final MixedMotion TWO = new MixedMotion(
            List.of(
                    new Alternative(line(10, 0.1, 0.2, 0.01), 0, 0.75, 0.75),
                    new Alternative(line(11, 0.2, 0.3, 0.02), 2, 0.25, 0.25)),
            FIRST,
            LAST);

    @Test
    void varianceIsThatWithinTheKindsPlusThatBetweenThem() {
        Prediction middle = TWO.at(Sets.day(20));
        assertThat(middle.lonDeg()).isCloseTo(10.25, within(1e-9));
        // 0.75 (0.2² + 0.25²) + 0.25 (0.3² + 0.75²) by hand.
        assertThat(middle.sigmaLonDeg()).isCloseTo(Math.sqrt(0.75 * 0.1025 + 0.25 * 0.6525), within(1e-9));
        assertThat(middle.daysBeyondArc()).isZero();
        Prediction later = TWO.at(Sets.day(60));
        // After 40 days: 14 ± hypot(0.2, 0.4) and 19 ± hypot(0.3, 0.8), 5 apart; and what no fit can know.
        double variance = 0.75 * 0.2 + 0.25 * 0.73 + 0.75 * 0.25 * 25;
        assertThat(later.lonDeg()).isCloseTo(15.25, within(1e-9));
        assertThat(later.sigmaLonDeg()).isCloseTo(Math.sqrt(variance + 0.05 * 0.05 + 0.06 * 0.06), within(1e-3));
    }

    @Test
    void kindsThatCrossBeyondTheMarksAreNoNews() {
        // They meet 20 days after the last mark, where the spread alone would fall to nothing.
        MixedMotion crossing = new MixedMotion(
                List.of(
                        new Alternative(line(10, 0.1, 0.1, 0.001), 0, 0.5, 0.5),
                        new Alternative(line(14, 0, 0.1, 0.001), 1, 0.5, 0.5)),
                FIRST,
                LAST);
        double atLast = crossing.at(LAST).sigmaLonDeg();
        assertThat(atLast).isCloseTo(Math.hypot(Math.hypot(0.1, 0.02), 1), within(1e-6));
        assertThat(crossing.at(Sets.day(60)).sigmaLonDeg()).isGreaterThan(atLast);
        // Among the marks it may fall and rise as it likes: nothing is added there.
        assertThat(TWO.at(Sets.day(10)).sigmaLonDeg())
                .isLessThan(TWO.at(Sets.day(20)).sigmaLonDeg());
    }

    @Test
    void aRunnerUpCountsForHalfATurnAtMost() {
        MixedMotion wild = new MixedMotion(
                List.of(
                        new Alternative(line(10, 0.1, 0.1, 0.001), 0, 0.99, 0.99),
                        new Alternative(line(10, 90, 1e6, 1e6), 9, 0.01, 0.01)),
                FIRST,
                LAST);
        Prediction far = wild.at(Sets.day(4000));
        assertThat(far.lonDeg() - (10 + 398)).isCloseTo(1.8, within(1e-6));
        assertThat(far.sigmaLonDeg()).isBetween(20.0, 40.0);
    }

    @Property(tries = 150, seed = "61")
    void predictionsAreFiniteSteadyInTimeAndSurestAtTheMarks(
            @ForAll @IntRange(min = 2, max = 40) int n,
            @ForAll long seed,
            @ForAll @DoubleRange(min = -3, max = 2.5) double logSpan) {
        SplittableRandom random = new SplittableRandom(seed);
        double span = Math.pow(10, logSpan);
        double rate = random.nextDouble(-9, 9);
        double bend = random.nextDouble(-3, 3) / (span * span);
        double swing = random.nextDouble(0, 4);
        double turn = 2 * Math.PI / (span * random.nextDouble(0.2, 2));
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double day = random.nextDouble(0, span);
            double sigma = Math.pow(10, random.nextDouble(-2, 1));
            double lon = 40 + rate * day + bend * day * day + swing * Math.sin(turn * day) + sigma * Sets.gauss(random);
            lon += random.nextInt(12) == 0 ? random.nextDouble(-90, 90) : 0;
            points.add(Sets.point(day, ((lon % 360) + 360) % 360, sigma));
        }
        Drift drift;
        try {
            drift = new DriftFitter().fit(Sets.jupiter("2", points));
        } catch (ProblemException e) {
            assertThat(e.kind()).isEqualTo(DriftProblem.ONE_TIME);
            return;
        }
        for (int way : new int[] {-1, 1}) {
            Instant end = way > 0 ? drift.lastUtc() : drift.firstUtc();
            double before = drift.at(end).sigmaLonDeg();
            for (double beyond = 0.01; beyond < 1e5; beyond *= 1.17) {
                long seconds = way * Math.round(beyond * 86_400);
                Prediction found = drift.at(end.plusSeconds(seconds));
                assertThat(Double.isFinite(found.lonDeg()) && Double.isFinite(found.sigmaLonDeg()))
                        .isTrue();
                assertThat(found.sigmaLonDeg())
                        .as("%s days beyond", way * beyond)
                        .isGreaterThan(before);
                before = found.sigmaLonDeg();
            }
        }
        // No jump within two microseconds: at the ends of the marks, where a step of the search ends, anywhere.
        List<Instant> places = new ArrayList<>(
                List.of(drift.firstUtc(), drift.lastUtc(), drift.lastUtc().plusSeconds(86_400)));
        for (int k = 0; k < 20; k++) {
            places.add(drift.firstUtc().plusSeconds((long) (random.nextDouble(-1, 3) * span * 86_400)));
        }
        for (Instant place : places) {
            Prediction a = drift.at(place.minusNanos(1000));
            Prediction b = drift.at(place.plusNanos(1000));
            assertThat(b.sigmaLonDeg()).isCloseTo(a.sigmaLonDeg(), within(1e-3));
            assertThat(b.lonDeg()).isCloseTo(a.lonDeg(), within(1e-3));
        }
    }

    @Test
    void theLastInstantsOfTimeAreNoTrouble() {
        Drift drift = new DriftFitter()
                .fit(SimulatedFeature.of(new SplittableRandom(3), CurveKind.OSCILLATION, 60, 1e9, 1)
                        .series());
        for (Instant time : new Instant[] {Instant.MIN, Instant.MAX}) {
            assertThat(drift.at(time).sigmaLonDeg()).isPositive().isFinite();
        }
    }
}
