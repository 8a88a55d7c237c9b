/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import oblate.disc.DiscFrame;
import oblate.disc.Placement;
import oblate.disc.SurfacePoint;
import oblate.image.PixelGrid;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.ApparentDisc;
import oblate.sky.Sky;
import org.junit.jupiter.api.Test;

/** Profiles of a drawn globe with one dark belt, mirrored and turned, with a missing pixel. */
class BrightnessProfileTest {
    private final ApparentDisc disc = Sky.bundled().disc(new Jupiter(), Instant.parse("2024-12-07T20:58:00Z"));
    private final DiscFrame frame = new DiscFrame(disc, new Placement(130, 120, 100, 40, true));

    private PixelGrid drawn() {
        int side = 260;
        float[] plane = new float[side * side];
        for (int i = 0; i < plane.length; i++) {
            Optional<SurfacePoint> place = frame.locate(i % side, i / side);
            boolean belt = place.filter(p -> p.latGraphicDeg() > 7 && p.latGraphicDeg() < 17).isPresent();
            plane[i] = place.isEmpty() ? 0 : belt ? 0.4f : 0.8f;
        }
        plane[120 * side + 130] = Float.NaN;
        return new PixelGrid(side, side, List.of(plane), 0, 1);
    }

    private static double at(BrightnessProfile profile, double angleDeg) {
        return profile.points().stream()
                .filter(p -> p.angleDeg() == angleDeg)
                .findFirst()
                .orElseThrow()
                .brightness();
    }

    @Test
    void theBeltStandsAtItsLatitude() {
        BrightnessProfile profile = BrightnessProfile.alongMeridian(drawn(), frame);
        assertEquals(0.4, at(profile, 12), 0.01);
        assertEquals(0.8, at(profile, 0), 0.01);
        assertEquals(0.8, at(profile, -12), 0.01);
        assertEquals(0.8, at(profile, 24), 0.01);
    }

    @Test
    void theEquatorIsEvenAndEndsBeforeTheLimb() {
        BrightnessProfile profile = BrightnessProfile.alongEquator(drawn(), frame);
        assertTrue(profile.points().stream().allMatch(p -> Math.abs(p.brightness() - 0.8) < 0.01));
        double last = profile.points().get(profile.points().size() - 1).angleDeg();
        assertTrue(last > 65 && last < 78, "last " + last);
    }
}
