/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import oblate.sky.Spheroid;
import org.junit.jupiter.api.Test;

/** The formula against definitions: arcs whose length is known otherwise. */
class SurfaceLineTest {
    private static final Spheroid JUPITER = new Spheroid(71492, 66854, "test");

    @Test
    void alongTheEquatorItIsRadiusTimesAngle() {
        SurfaceLine line = SurfaceLine.between(JUPITER, 0, 0, 25);
        assertEquals(71492 * Math.toRadians(25), line.km(), 0.01);
        assertEquals(25, line.deg(), 1e-9);
    }

    @Test
    void alongAMeridianItIsTheArcOfTheEllipse() {
        // Length of the meridian from its radius of curvature a(1 - e2) / (1 - e2 sin2 lat)^1.5, summed in small steps.
        double e2 = 1 - Math.pow(66854.0 / 71492, 2);
        double sum = 0;
        int steps = 200_000;
        for (int i = 0; i < steps; i++) {
            double lat = Math.toRadians(-20 + 65.0 * (i + 0.5) / steps);
            sum += 71492 * (1 - e2) / Math.pow(1 - e2 * Math.sin(lat) * Math.sin(lat), 1.5) * Math.toRadians(65.0 / steps);
        }
        assertEquals(sum, SurfaceLine.between(JUPITER, -20, 45, 0).km(), sum * 2e-5);
    }

    @Test
    void onASphereItIsTheGreatCircle() {
        Spheroid sphere = new Spheroid(6000, 6000, "test");
        SurfaceLine line = SurfaceLine.between(sphere, 90, 0, 77);
        assertEquals(90, line.deg(), 1e-9);
        assertEquals(6000 * Math.PI / 2, line.km(), 1e-6);
    }

    @Test
    void noWayAlongPlacesBetweenIsShorter() {
        double direct = SurfaceLine.between(JUPITER, -30, 25, 60).km();
        List<double[]> places = SurfaceLine.along(JUPITER, -30, 25, 60, 40);
        double sum = 0;
        for (int i = 1; i < places.size(); i++) {
            double[] a = places.get(i - 1);
            double[] b = places.get(i);
            sum += SurfaceLine.between(JUPITER, a[0], b[0], b[1] - a[1]).km();
        }
        assertTrue(sum >= direct * (1 - 1e-6), sum + " against " + direct);
        assertEquals(direct, sum, direct * 2e-3);
    }

    @Test
    void aPlaceIsNoWayFromItself() {
        assertEquals(0, SurfaceLine.between(JUPITER, 10, 10, 0).km());
    }
}
