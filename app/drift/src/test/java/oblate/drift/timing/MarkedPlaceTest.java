/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;

class MarkedPlaceTest {
    private static final Instant WHEN = Instant.parse("2024-12-07T20:58:00Z");

    /** The place of a pixel is that from which the frame would draw the pixel. */
    @Property
    void aPixelIsThePlaceItIsDrawnFrom(
            @ForAll @DoubleRange(min = -20, max = 20) double x,
            @ForAll @DoubleRange(min = -20, max = 20) double y,
            @ForAll @DoubleRange(min = -180, max = 180) double angle,
            @ForAll @DoubleRange(min = 10, max = 500) double radius,
            @ForAll boolean mirrored) {
        Placement p = new Placement(311.3, 207.9, radius, angle, mirrored);
        PixelPoint at = new DiscFrame(Bench.SKY.disc(Bench.JUPITER, WHEN), p).placeOffset(x, y);
        MarkedPlace place = MarkedPlace.of(p, PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.1), at, 0.5);
        assertThat(place.x()).isCloseTo(x, within(1e-9));
        assertThat(place.y()).isCloseTo(y, within(1e-9));
        assertThat(place.pick()).isCloseTo(0.5 / radius, within(1e-12));
    }

    /** The error along a direction, with a covariance that is not diagonal, is that of places computed from placements moved a little. */
    @Property(tries = 200)
    void errorsAreThoseOfMovedPlacements(
            @ForAll @DoubleRange(min = -9, max = 9) double x,
            @ForAll @DoubleRange(min = -9, max = 9) double y,
            @ForAll @DoubleRange(min = -180, max = 180) double angle,
            @ForAll @DoubleRange(min = -0.8, max = 0.8) double correlation,
            @ForAll boolean mirrored) {
        Placement p = new Placement(100, 120, 80, angle, mirrored);
        double[] sigma = {0.2, 0.3, 0.4, 0.5};
        double[][] c = new double[4][4];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                boolean paired = i != j && i / 2 == j / 2;
                c[i][j] = sigma[i] * sigma[j] * (i == j ? 1 : paired ? correlation : 0);
            }
        }
        PixelPoint at = new DiscFrame(Bench.SKY.disc(Bench.JUPITER, WHEN), p).placeOffset(x, y);
        PlacementCovariance covariance = new PlacementCovariance(c);
        MarkedPlace place = MarkedPlace.of(p, covariance, at, 0);
        double[][] slope = new double[2][4];
        double step = 1e-5;
        for (int k = 0; k < 4; k++) {
            MarkedPlace more = MarkedPlace.of(moved(p, k, step), covariance, at, 0);
            MarkedPlace less = MarkedPlace.of(moved(p, k, -step), covariance, at, 0);
            slope[0][k] = (more.x() - less.x()) / (2 * step);
            slope[1][k] = (more.y() - less.y()) / (2 * step);
        }
        double unitX = Math.cos(0.7);
        double unitY = Math.sin(0.7);
        double variance = 0;
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                variance += (unitX * slope[0][i] + unitY * slope[1][i])
                        * c[i][j]
                        * (unitX * slope[0][j] + unitY * slope[1][j]);
            }
        }
        assertThat(place.sigmaAlong(unitX, unitY)).isCloseTo(Math.sqrt(variance), within(1e-6));
    }

    private static Placement moved(Placement p, int which, double by) {
        return new Placement(
                p.centreXPx() + (which == 0 ? by : 0),
                p.centreYPx() + (which == 1 ? by : 0),
                p.equatorialRadiusPx() + (which == 2 ? by : 0),
                p.poleAngleDeg() + (which == 3 ? by : 0),
                p.mirrored());
    }
}
