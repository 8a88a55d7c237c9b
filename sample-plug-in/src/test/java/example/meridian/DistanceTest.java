/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.Optional;
import java.util.Random;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;
import org.junit.jupiter.api.Test;

/** Distances on a placed disc, and whether their errors are honest. */
class DistanceTest {
    private final ApparentDisc disc = Sky.bundled().disc(new Jupiter(), Instant.parse("2024-12-07T20:58:00Z"));
    private final Placement placement = new Placement(300, 310, 200, 12, false);
    private final DiscFrame frame = new DiscFrame(disc, placement);
    private final PixelPoint a = frame.place(disc.subEarth().iauLonDeg() - 20, -22).orElseThrow();
    private final PixelPoint b = frame.place(disc.subEarth().iauLonDeg() + 15, 10).orElseThrow();

    @Test
    void distanceIsThatOfThePlaces() {
        Distance d = Distance.between(frame, PlacementCovariance.diagonal(0.1, 0.1, 0.2, 0.1), a, b, 0.5)
                .orElseThrow();
        SurfaceLine line = SurfaceLine.between(disc.planet().globe().figure(), -22, 10, 35);
        assertEquals(line.km(), d.km(), 0.5);
        assertEquals(line.deg(), d.deg(), 1e-4);
    }

    @Test
    void besideTheDiscThereIsNone() {
        PlacementCovariance c = PlacementCovariance.diagonal(0.1, 0.1, 0.2, 0.1);
        assertTrue(Distance.between(frame, c, a, new PixelPoint(5, 5), 0.5).isEmpty());
    }

    @Test
    void errorIsTheScatterOfRepeatedMeasurements() {
        Random random = new Random(4);
        int n = 4000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            Placement fitted = new Placement(
                    300 + 0.4 * random.nextGaussian(),
                    310 + 0.3 * random.nextGaussian(),
                    200 + 0.5 * random.nextGaussian(),
                    12 + 0.3 * random.nextGaussian(),
                    false);
            PixelPoint first = new PixelPoint(
                    a.xPx() + 0.7 * random.nextGaussian(), a.yPx() + 0.7 * random.nextGaussian());
            PixelPoint second = new PixelPoint(
                    b.xPx() + 0.7 * random.nextGaussian(), b.yPx() + 0.7 * random.nextGaussian());
            Optional<Distance> d = Distance.between(
                    new DiscFrame(disc, fitted), PlacementCovariance.diagonal(1, 1, 1, 1), first, second, 1);
            double km = d.orElseThrow().km();
            sum += km;
            squares += km * km;
        }
        double scatter = Math.sqrt((squares - sum * sum / n) / (n - 1));
        Distance d = Distance.between(frame, PlacementCovariance.diagonal(0.4, 0.3, 0.5, 0.3), a, b, 0.7)
                .orElseThrow();
        assertEquals(scatter, d.sigmaKm(), 0.05 * scatter);
    }
}
