/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static oblate.drift.Sets.JUPITER;
import static oblate.drift.Sets.system;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import oblate.drift.Sets.Recipe;
import oblate.drift.Sets.Simulated;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Tag("truth")
class DriftTruthTest {
    private static final double SLOPE = 1.00211681802045;
    private static final double SIGMA_SLOPE = 0.429796848199937E-03;
    private static final double INTERCEPT = -0.262323073774029;
    private static final double SIGMA_INTERCEPT = 0.232818234301152;

    private final DriftFitter fitter = new DriftFitter();

    /** NIST StRD, data set Norris: the line beneath every fit agrees with the certified digits. */
    @Test
    void leastSquaresLineAgreesWithTheCertifiedOne() throws IOException {
        double[][] xy = norris();
        double[] ones = new double[36];
        Arrays.fill(ones, 1);
        Line line = Line.fit(xy[0], xy[1], ones).orElseThrow();
        double squares = 0;
        for (int i = 0; i < 36; i++) {
            squares += Math.pow(xy[1][i] - line.at(xy[0][i]), 2);
        }
        double variance = squares / 34;
        assertThat(line.slope()).isCloseTo(SLOPE, within(2e-14));
        assertThat(line.at(0)).isCloseTo(INTERCEPT, within(1e-12));
        assertThat(Math.sqrt(variance / line.weightXx())).isCloseTo(SIGMA_SLOPE, within(1e-15));
        double sigmaIntercept =
                Math.sqrt(variance * (1 / line.weight() + line.xMiddle() * line.xMiddle() / line.weightXx()));
        assertThat(sigmaIntercept).isCloseTo(SIGMA_INTERCEPT, within(1e-12));
    }

    /**
     * The same data as longitudes over 999 days, wrapped to one turn and with absurdly small errors: unwrapping and scatter must bring back the certified line. The
     * robust weights of the outer points move it by a small part of its error.
     */
    @Test
    void wrappedNorrisDataGiveTheCertifiedLine() throws IOException {
        double[][] xy = norris();
        List<LongitudePoint> points = new ArrayList<>();
        for (int i = 0; i < 36; i++) {
            points.add(Sets.point(xy[0][i], ((xy[1][i] % 360) + 360) % 360, 0.001));
        }
        Drift drift = fitter.fit(Sets.jupiter("2", points));
        assertThat(drift.rateDegPerDay()).isCloseTo(SLOPE, within(0.02 * SIGMA_SLOPE));
        assertThat(drift.sigmaRateDegPerDay()).isCloseTo(SIGMA_SLOPE, within(0.02 * SIGMA_SLOPE));
        assertThat(Math.IEEEremainder(drift.unwrappedLonDegAt(Sets.day(0)) - INTERCEPT, 360))
                .isCloseTo(0, within(0.02 * SIGMA_INTERCEPT));
        assertThat(drift.rejected()).isZero();
    }

    /**
     * Errors against the Cramér–Rao bound of the good marks, and how many truths lie within one and two stated errors. Bound: the inverse of the information in the
     * good marks, the least error of any unbiased estimate. Columns: marks, share of false ones, true over stated error.
     */
    @ParameterizedTest
    @CsvSource({"15, 0, 1", "30, 0.05, 1", "60, 0.05, 1", "30, 0.12, 1", "30, 0.05, 1.4"})
    void errorsReachTheBoundAndAreHonest(int marks, double falseShare, double factor) {
        SplittableRandom random = new SplittableRandom(20240607);
        int runs = 250;
        double square = 0;
        double bound = 0;
        int within1 = 0;
        int within2 = 0;
        for (int i = 0; i < runs; i++) {
            Simulated made =
                    Sets.simulated(random, new Recipe(marks, random.nextDouble(-8, 3), falseShare, factor, 90, 0, 0));
            Drift drift = fitter.fit(made.series());
            double error = drift.rateDegPerDay() - made.rate();
            square += error * error;
            bound += made.boundRate() * made.boundRate();
            double pull = Math.abs(error) / drift.sigmaRateDegPerDay();
            within1 += pull < 1 ? 1 : 0;
            within2 += pull < 2 ? 1 : 0;
        }
        // The standard error of the first figure over 250 runs is 4.5 %.
        assertThat(Math.sqrt(square / bound)).as("error over bound").isBetween(0.87, 1.13);
        assertThat((double) within1 / runs).as("within one error").isBetween(0.6, 0.78);
        assertThat((double) within2 / runs).as("within two errors").isBetween(0.91, 0.99);
    }

    /** No wrong turn at −7.5 deg per day over a gap of 25 days, where stepping from mark to mark always fails. */
    @ParameterizedTest
    @CsvSource({"6", "10", "30"})
    void noWrongTurnAcrossALongGap(int marks) {
        SplittableRandom random = new SplittableRandom(7);
        int wrong = 0;
        for (int i = 0; i < 120; i++) {
            Simulated made = Sets.simulated(random, new Recipe(marks, -7.5, 0, 1, 60, 15, 25));
            Drift drift = fitter.fit(made.series());
            wrong += Math.abs(drift.rateDegPerDay() + 7.5) > 5 * drift.sigmaRateDegPerDay() + 0.2 ? 1 : 0;
        }
        assertThat(wrong).isZero();
    }

    /** Few marks without false ones: the errors may be cautious, never boastful. */
    @ParameterizedTest
    @CsvSource({"2, 1", "3, 1", "4, 1", "5, 1", "8, 1", "5, 1.4", "8, 1.4"})
    void fewMarksDoNotBoast(int marks, double factor) {
        SplittableRandom random = new SplittableRandom(99);
        int runs = 600;
        int within1 = 0;
        for (int i = 0; i < runs; i++) {
            Simulated made = Sets.simulated(random, new Recipe(marks, random.nextDouble(-1, 1), 0, factor, 20, 0, 0));
            Drift drift = fitter.fit(made.series());
            within1 += Math.abs(drift.rateDegPerDay() - made.rate()) < drift.sigmaRateDegPerDay() ? 1 : 0;
        }
        // 68 % with a standard error of 1.9 %.
        assertThat((double) within1 / runs).isBetween(0.63, 0.92);
    }

    /** A predicted longitude error is honest a month after the arc: cautious, as a rate may yet turn out to change. */
    @Test
    void predictionsAreHonest() {
        SplittableRandom random = new SplittableRandom(4);
        int inside = 0;
        int runs = 200;
        for (int i = 0; i < runs; i++) {
            Simulated made = Sets.simulated(random, new Recipe(25, -0.6, 0.04, 1, 60, 0, 0));
            Drift drift = fitter.fit(made.series());
            double truth = made.lonDeg() + made.rate() * 90;
            Prediction found = drift.at(Sets.day(90));
            inside += Math.abs(Math.IEEEremainder(found.lonDeg() - truth, 360)) < found.sigmaLonDeg() ? 1 : 0;
        }
        assertThat((double) inside / runs).isBetween(0.6, 0.92);
    }

    /** At rest in System III is −0.266 deg per day of System II: 870.536 − 870.270 by definition. */
    @Test
    void restingInSystemThreeIsADriftInSystemTwo() {
        assertThat(Motion.driftInSystem(JUPITER.globe(), 0, system(JUPITER, "3"), system(JUPITER, "2")))
                .isCloseTo(-0.266, within(1e-9));
        assertThat(Motion.driftInSystem(JUPITER.globe(), 0, system(JUPITER, "2"), system(JUPITER, "1")))
                .isCloseTo(7.63, within(1e-9));
    }

    private static double[][] norris() throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                DriftTruthTest.class.getResourceAsStream("norris.csv"), StandardCharsets.UTF_8))) {
            double[][] rows = reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("x"))
                    .map(line -> Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toArray(double[][]::new);
            double[][] xy = new double[2][rows.length];
            for (int i = 0; i < rows.length; i++) {
                xy[0][i] = rows[i][0];
                xy[1][i] = rows[i][1];
            }
            return xy;
        }
    }
}
