/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.disc.MarkMeasurer.Measured;
import oblate.sky.ApparentDisc;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class MarkMeasurerTest {
    private static final ApparentDisc DISC = TestDiscs.disc(TestDiscs.jupiter(), 40, 3, 48, 3);
    private static final Placement PLACE = new Placement(200, 190, 120, 12, false);
    private final MarkMeasurer measurer = new MarkMeasurer();

    /** 1 px of centre along the equator is 57.3/R degrees at the middle; 30 s of time are 0.30 deg on Jupiter. */
    @Test
    @Tag("truth")
    void middleOfTheDiscCostsWhatTheRuleOfThumbSays() {
        ApparentDisc disc = TestDiscs.disc(TestDiscs.jupiter(), 40, 0, 48, 0);
        DiscFrame frame = new DiscFrame(disc, new Placement(200, 190, 120, 0, false));
        Measured m = measurer.measure(
                        frame, PlacementCovariance.diagonal(1, 1, 0, 0), new PixelPoint(200, 190), 0.5, 30)
                .orElseThrow();
        assertThat(m.errors().centreLonDeg()).isCloseTo(57.2958 / 120, within(1e-4));
        assertThat(m.errors().pickLonDeg()).isCloseTo(57.2958 / 240, within(1e-4));
        assertThat(m.errors().timeLonDeg()).isCloseTo(0.3023, within(1e-3));
        assertThat(m.errors().scaleLonDeg()).isZero();
        double all = Math.sqrt(Math.pow(57.2958 / 120, 2) * 1.25 + 0.3023 * 0.3023);
        assertThat(m.errors().totalLonDeg()).isCloseTo(all, within(1e-3));
    }

    @Test
    void refusesNearTheLimbAndOffTheDisc() {
        DiscFrame frame = new DiscFrame(DISC, PLACE);
        PlacementCovariance none = PlacementCovariance.diagonal(0, 0, 0, 0);
        PixelPoint limb = frame.place(40 + 80, 0).orElseThrow();
        PixelPoint good = frame.place(40 + 65, 0).orElseThrow();
        assertThat(measurer.measure(frame, none, limb, 1, 0)).isEmpty();
        assertThat(measurer.measure(frame, none, good, 1, 0)).isPresent();
        assertThat(measurer.measure(frame, none, new PixelPoint(10, 10), 1, 0)).isEmpty();
    }

    @Property(tries = 100, seed = "20")
    void partsMatchDifferencesOfTheFrame(
            @ForAll @DoubleRange(min = -75, max = 75) double angle,
            @ForAll boolean mirrored,
            @ForAll @DoubleRange(min = -60, max = 60) double fromMeridian,
            @ForAll @DoubleRange(min = -55, max = 55) double lat) {
        Placement place = new Placement(200, 190, 120, angle, mirrored);
        DiscFrame frame = new DiscFrame(DISC, place);
        PixelPoint pixel = frame.place(40 + fromMeridian, lat).orElse(new PixelPoint(200, 190));
        double h = 1e-4;
        double[] steps = {h, h, h, h};
        double[] lon = new double[4];
        double[] latitude = new double[4];
        for (int i = 0; i < 4; i++) {
            SurfacePoint[] two = new SurfacePoint[2];
            for (int s = 0; s < 2; s++) {
                double d = s == 0 ? steps[i] : -steps[i];
                two[s] = new DiscFrame(
                                DISC,
                                new Placement(
                                        200 + (i == 0 ? d : 0),
                                        190 + (i == 1 ? d : 0),
                                        120 + (i == 2 ? d : 0),
                                        angle + (i == 3 ? d : 0),
                                        mirrored))
                        .locate(pixel.xPx(), pixel.yPx())
                        .orElseThrow();
            }
            lon[i] = Math.IEEEremainder(two[0].lonIauDeg() - two[1].lonIauDeg(), 360) / (2 * h);
            latitude[i] = (two[0].latGraphicDeg() - two[1].latGraphicDeg()) / (2 * h);
        }
        measurer.measure(frame, PlacementCovariance.diagonal(0.3, 0.2, 0.5, 0.4), pixel, 0.7, 0)
                .ifPresent(m -> {
                    ErrorBudget e = m.errors();
                    assertThat(e.centreLonDeg()).isCloseTo(Math.hypot(0.3 * lon[0], 0.2 * lon[1]), within(1e-4));
                    assertThat(e.centreLatDeg())
                            .isCloseTo(Math.hypot(0.3 * latitude[0], 0.2 * latitude[1]), within(1e-4));
                    assertThat(e.scaleLonDeg()).isCloseTo(Math.abs(0.5 * lon[2]), within(1e-4));
                    assertThat(e.scaleLatDeg()).isCloseTo(Math.abs(0.5 * latitude[2]), within(1e-4));
                    assertThat(e.angleLonDeg()).isCloseTo(Math.abs(0.4 * lon[3]), within(1e-4));
                    assertThat(e.angleLatDeg()).isCloseTo(Math.abs(0.4 * latitude[3]), within(1e-4));
                    assertThat(e.pickLonDeg()).isCloseTo(0.7 * Math.hypot(lon[0], lon[1]), within(1e-4));
                });
    }

    /** Draws placements and picks with a correlated covariance and compares the scatter of the places with the stated totals. */
    @Test
    void totalsAreTheScatterOfRepeatedMeasurements() {
        double[][] c = {
            {0.09, 0.02, 0.03, 0.01}, {0.02, 0.06, -0.02, 0.0}, {0.03, -0.02, 0.10, 0.02}, {0.01, 0.0, 0.02, 0.08}
        };
        RealMatrix root = new CholeskyDecomposition(new Array2DRowRealMatrix(c)).getL();
        PlacementCovariance covariance = new PlacementCovariance(c);
        DiscFrame frame = new DiscFrame(DISC, PLACE);
        Random random = new Random(7);
        for (double[] place : new double[][] {{0, 0}, {45, 20}, {-50, -40}, {10, 60}}) {
            PixelPoint pixel = frame.place(40 + place[0], place[1]).orElseThrow();
            Measured stated =
                    measurer.measure(frame, covariance, pixel, 0.4, 20).orElseThrow();
            double sumLon = 0;
            double sumLat = 0;
            int n = 4000;
            for (int i = 0; i < n; i++) {
                double[] d = root.operate(new double[] {
                    random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian()
                });
                Placement drawn = new Placement(200 + d[0], 190 + d[1], 120 + d[2], 12 + d[3], false);
                SurfacePoint seen = new DiscFrame(DISC, drawn)
                        .locate(pixel.xPx() + 0.4 * random.nextGaussian(), pixel.yPx() + 0.4 * random.nextGaussian())
                        .orElseThrow();
                double time = 20 * random.nextGaussian() * 870.536 / 86400;
                sumLon += Math.pow(
                        Math.IEEEremainder(
                                seen.lonIauDeg() + time - stated.point().lonIauDeg(), 360),
                        2);
                sumLat += Math.pow(seen.latGraphicDeg() - stated.point().latGraphicDeg(), 2);
            }
            assertThat(Math.sqrt(sumLon / n) / stated.errors().totalLonDeg()).isBetween(0.95, 1.06);
            assertThat(Math.sqrt(sumLat / n) / stated.errors().totalLatDeg()).isBetween(0.95, 1.06);
        }
    }
}
