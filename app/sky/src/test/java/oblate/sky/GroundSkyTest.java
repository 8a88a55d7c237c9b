/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class GroundSkyTest {
    private static final Sky SKY = Sky.bundled();

    /** A body of the ephemeris with an invented globe: enough to ask where it stands. */
    private static PlanetModel body(int deBody) {
        RotationElements elements = new RotationElements(0, 0, 80, 0, List.of(), List.of(), List.of(), "invented");
        Globe globe = new Globe(
                deBody,
                new Spheroid(6000, 6000, "invented"),
                elements,
                List.of(new RotationSystem("iau", "IAU", 0, 1, "invented")),
                "iau",
                LongitudeSense.WEST);
        return new PlanetModel() {
            @Override
            public String id() {
                return "body";
            }

            @Override
            public String label() {
                return "Body";
            }

            @Override
            public Globe globe() {
                return globe;
            }
        };
    }

    /**
     * Meeus, Astronomical Algorithms, 2nd ed., example 13.b, from memory: Venus over 38°55′17″ N, 77°03′56″ W on 1987-04-10 19:21:00 UT, altitude
     * 15.1249 deg, azimuth 68.0337 deg from the south. The handbook leaves out parallax (0.002 deg).
     */
    @Test
    @Tag("truth")
    void handbookExampleOfAltitudeAndAzimuth() {
        GroundSite site = new GroundSite(38 + 55 / 60.0 + 17 / 3600.0, -(77 + 3 / 60.0 + 56 / 3600.0), 0);
        GroundView view = GroundSky.over(SKY, site).view(body(2), UtcTime.parse("1987-04-10T19:21:00Z"));
        assertThat(view.altitudeDeg()).isCloseTo(15.1249, within(0.006));
        assertThat(view.azimuthDeg()).isCloseTo(248.0337, within(0.006));
    }

    /** The triangle of pole, zenith and planet, solved with sidereal time from the apparent place alone. */
    @Test
    void parallacticAngleFollowsFromTheTriangle() {
        GroundSite site = new GroundSite(-23.4, 31.7, 1200);
        GroundSky ground = GroundSky.over(SKY, site);
        Random random = new Random(5);
        PlanetModel mars = body(4);
        for (int i = 0; i < 40; i++) {
            UtcTime time = new UtcTime(3000 + random.nextInt(25000), random.nextInt(86400));
            GroundView view = ground.view(mars, time);
            ApparentDisc disc = SKY.disc(mars, time);
            double alt = Math.toRadians(view.altitudeDeg());
            double az = Math.toRadians(view.azimuthDeg());
            double lat = Math.toRadians(site.latDeg());
            double dec = Math.toRadians(disc.decApparentDeg());
            assertThat(Math.sin(lat) * Math.sin(alt) + Math.cos(lat) * Math.cos(alt) * Math.cos(az))
                    .isCloseTo(Math.sin(dec), within(2e-4));
            // law of sines: sin q = −sin az cos lat / cos dec
            assertThat(Math.sin(Math.toRadians(view.parallacticAngleDeg())))
                    .isCloseTo(-Math.sin(az) * Math.cos(lat) / Math.cos(dec), within(2e-4));
        }
    }

    /** At the equinox the Sun culminates at 90 deg minus the latitude: 2024-03-20 03:06 UTC, at noon over the place where it then stands. */
    @Test
    @Tag("truth")
    void sunStandsOverheadAtTheEquatorAtTheEquinox() {
        GroundSky ground = GroundSky.over(SKY, new GroundSite(0, 135.3, 0));
        double highest = -90;
        for (int minute = 0; minute < 60; minute++) {
            highest = Math.max(
                    highest,
                    ground.sunAltitudeDeg(UtcTime.parse(String.format(Locale.ROOT, "2024-03-20T02:%02d:00Z", minute))));
            highest = Math.max(
                    highest,
                    ground.sunAltitudeDeg(UtcTime.parse(String.format(Locale.ROOT, "2024-03-20T03:%02d:00Z", minute))));
        }
        assertThat(highest).isGreaterThan(89.8);
    }

    /** Refraction and dispersion in 15 °C, 1013 hPa as computed for a trade handbook with a model of the SOFA type. */
    @ParameterizedTest
    @Tag("truth")
    @CsvSource({
        "60, 33, 0.50, 0.83",
        "50, 48, 0.73, 1.20",
        "45, 57, 0.87, 1.43",
        "40, 68, 1.03, 1.70",
        "35, 81, 1.24, 2.04",
        "30, 99, 1.50, 2.47",
        "25, 122, 1.85, 3.06",
        "20, 156, 2.37, 3.90",
        "15, 210, 3.20, 5.30"
    })
    void refractionAndDispersion(double altitudeDeg, double refraction, double narrow, double wide) {
        GroundView view = new GroundView(altitudeDeg, 180, 0, -30, Air.standard(0));
        assertThat((view.refractedAltitudeDeg() - altitudeDeg) * 3600).isCloseTo(refraction, within(1.2));
        assertThat(view.dispersionArcsec(450, 650)).isCloseTo(narrow, within(0.02 * narrow + 0.01));
        assertThat(view.dispersionArcsec(400, 700)).isCloseTo(wide, within(0.02 * wide + 0.01));
    }

    /** An observatory's table for a site 2 km up: 1.31 arcsec between 400 and 700 nm at airmass 1.5. */
    @Test
    @Tag("truth")
    void dispersionOnAMountain() {
        double altitudeDeg = Math.toDegrees(Math.asin(1 / 1.5));
        GroundView view = new GroundView(altitudeDeg, 180, 0, -30, Air.standard(2000));
        assertThat(view.dispersionArcsec(400, 700)).isCloseTo(1.31, within(0.06));
    }

    @Test
    void lowDownNoRefractionIsClaimed() {
        GroundView view = new GroundView(4.9, 180, 0, -30, Air.standard(0));
        assertThat(view.refractedAltitudeDeg()).isEqualTo(4.9);
        assertThat(view.dispersionArcsec(450, 650)).isNaN();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "48.2", "48.2,16.3,170,1", "north,16,0", "91,0,0", "48,361,0", "48,16,99999", "NaN,1,1"})
    void badSiteIsRefused(String text) {
        assertThatThrownBy(() -> GroundSite.parse(text))
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.BAD_SITE))
                .hasMessageContaining("\"" + text + "\"");
    }

    @Test
    void siteIsRead() {
        assertThat(GroundSite.parse("-33.9, 18.5, 15")).isEqualTo(new GroundSite(-33.9, 18.5, 15));
        assertThat(GroundSite.parse("48.2,16.3")).isEqualTo(new GroundSite(48.2, 16.3, 0));
    }
}
