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
    static PlanetModel body(int deBody) {
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

    private static GroundView at(double altitudeDeg, double heightM) {
        return new GroundView(new UtcTime(20000, 0), 0, 0, 0, 5, altitudeDeg, 180, 0, -30, 120, Air.standard(heightM));
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
        GroundView view = at(altitudeDeg, 0);
        assertThat((view.refractedAltitudeDeg() - altitudeDeg) * 3600).isCloseTo(refraction, within(1.2));
        assertThat(view.dispersionArcsec(450, 650)).isCloseTo(narrow, within(0.02 * narrow + 0.01));
        assertThat(view.dispersionArcsec(400, 700)).isCloseTo(wide, within(0.02 * wide + 0.01));
    }

    /** An observatory's table for a site 2 km up: 1.31 arcsec between 400 and 700 nm at airmass 1.5. */
    @Test
    @Tag("truth")
    void dispersionOnAMountain() {
        double altitudeDeg = Math.toDegrees(Math.asin(1 / 1.5));
        GroundView view = at(altitudeDeg, 2000);
        assertThat(view.dispersionArcsec(400, 700)).isCloseTo(1.31, within(0.06));
    }

    /**
     * Refraction by integration through the layers of the ICAO standard atmosphere (Auer and Standish 2000, Astron. J. 119, 2472: the zenith distance is
     * the variable), with the index of dry air of Ciddor 1996, Appl. Opt. 35, 1566 (15 °C, 101325 Pa).
     */
    @ParameterizedTest
    @Tag("truth")
    @CsvSource({"75, 0", "45, 0", "30, 0", "15, 0", "10, 0", "45, 2400", "20, 2400"})
    void refractionIsThatOfTheLayersOfTheStandardAtmosphere(double altitudeDeg, double heightM) {
        Air air = Air.standard(heightM);
        double green = layers(altitudeDeg, heightM, 0.550);
        double seen = altitudeDeg + green / 3600;
        double blue = layers(altitudeDeg, heightM, 0.450);
        double red = layers(altitudeDeg, heightM, 0.650);
        assertThat(air.refractionArcsec(altitudeDeg, 550).orElseThrow())
                .as("seen at %.3f", seen)
                .isCloseTo(green, within(0.1 + 4e-4 * green + (altitudeDeg < 15 ? 0.6 : 0)));
        GroundView view = at(altitudeDeg, heightM);
        assertThat(view.dispersionArcsec(450, 650)).isCloseTo(blue - red, within(0.01 * (blue - red)));
    }

    /** Refraction (arcsec) for a true altitude: the altitude seen is found by going back and forth. */
    private static double layers(double trueAltitudeDeg, double heightM, double micrometres) {
        double lift = 0;
        for (int i = 0; i < 6; i++) {
            lift = bent(Math.toRadians(90 - trueAltitudeDeg) - lift, heightM, micrometres);
        }
        return lift * 206264.806;
    }

    private static double bent(double zenithRad, double heightM, double micrometres) {
        double constant = index(heightM, micrometres) * (EARTH_M + heightM) * Math.sin(zenithRad);
        double bent = 0;
        double z = zenithRad;
        double step = 20;
        for (double h = heightM; h < 80_000; h += step) {
            double n = index(h, micrometres);
            double next = index(h + step, micrometres);
            double zNext = Math.asin(constant / (next * (EARTH_M + h + step)));
            bent += Math.tan((z + zNext) / 2) * Math.log(n / next);
            z = zNext;
        }
        return bent;
    }

    private static final double EARTH_M = 6_371_000;

    private static double index(double heightM, double micrometres) {
        double s = 1 / (micrometres * micrometres);
        double standard = 0.05792105 / (238.0185 - s) + 0.00167917 / (57.362 - s);
        double kelvin = heightM < 11_000 ? 288.15 - 0.0065 * heightM : 216.65;
        double pressure = heightM < 11_000
                ? Math.pow(kelvin / 288.15, 5.25588)
                : 0.223361 * Math.exp(-(heightM - 11_000) / 6341.62);
        return 1 + standard * pressure * 288.15 / kelvin;
    }

    /**
     * Air mass of the ICAO atmosphere by altitude seen, Kasten and Young 1989, Appl. Opt. 28, 4735, whose formula (from memory) is
     * 1/(sin h + 0.50572 (h + 6.07995)^-1.6364) and was fitted to such an integration.
     */
    @ParameterizedTest
    @Tag("truth")
    @ValueSource(doubles = {90, 60, 30, 20, 15, 10, 5})
    void airMassFollowsAPublishedFit(double altitudeDeg) {
        GroundView view = at(altitudeDeg, 0);
        double h = view.refractedAltitudeDeg();
        double theirs = 1 / (Math.sin(Math.toRadians(h)) + 0.50572 * Math.pow(h + 6.07995, -1.6364));
        assertThat(view.airMass()).isCloseTo(theirs, within(0.006 * theirs));
        assertThat(at(-1, 0).airMass()).isNaN();
    }

    /** Limits of the twilights as almanacs define them. */
    @ParameterizedTest
    @Tag("truth")
    @CsvSource({
        "10, DAY",
        "-0.8, DAY",
        "-0.9, CIVIL",
        "-6.1, NAUTICAL",
        "-12.1, ASTRONOMICAL",
        "-18.1, NIGHT",
        "-90, NIGHT"
    })
    void twilightByTheSunsAltitude(double sunAltitudeDeg, Twilight light) {
        assertThat(Twilight.of(sunAltitudeDeg)).isEqualTo(light);
    }

    @Test
    void warnsOfTheSunBesideAPlanetByDayOnly() {
        GroundSky ground = GroundSky.over(SKY, new GroundSite(10, 0, 0));
        // Venus a week before and after its superior conjunction of 2024-06-04
        assertThat(ground.view(body(2), UtcTime.parse("2024-06-10T12:00:00Z")).isSunDangerous())
                .isTrue();
        assertThat(ground.view(body(2), UtcTime.parse("2024-06-10T00:00:00Z")).isSunDangerous())
                .isFalse();
        assertThat(ground.view(body(5), UtcTime.parse("2024-12-07T12:00:00Z")).isSunDangerous())
                .isFalse();
    }

    @Test
    void lowDownNoRefractionIsClaimed() {
        GroundView view = at(4.9, 0);
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
