/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class GroundNightTest {
    private static final Sky SKY = Sky.bundled();
    private static final PlanetModel VENUS = GroundSkyTest.body(2);

    private static GroundNight night(double latDeg, double lonEastDeg, String date) {
        return GroundNight.of(GroundSky.over(SKY, new GroundSite(latDeg, lonEastDeg, 0)), LocalDate.parse(date));
    }

    /**
     * Meeus, Astronomical Algorithms, 2nd ed., example 15.a, from memory: Venus at 42.3333° N, 71.0833° W on 1988 March 20 UT rises at 0.51766 d, transits at
     * 0.81980 d and sets at 0.12130 d. The handbook leaves out aberration's last digits and takes TT − UT as 56 s.
     */
    @Test
    @Tag("truth")
    void handbookExampleOfRisingTransitAndSetting() {
        // mean noon at the site is 16:44 UTC: the setting of March 20 belongs to the night of the 19th, the transit to
        // that of the 20th
        GroundCourse before = night(42.3333, -71.0833, "1988-03-19").planet(VENUS);
        GroundCourse after = night(42.3333, -71.0833, "1988-03-20").planet(VENUS);
        assertThat(hours(before, GroundEvent.Kind.SET, "1988-03-20")).isCloseTo(24 * 0.12130, within(0.004));
        assertThat(hours(before, GroundEvent.Kind.RISE, "1988-03-20")).isCloseTo(24 * 0.51766, within(0.004));
        assertThat(hours(after, GroundEvent.Kind.UPPER_TRANSIT, "1988-03-20")).isCloseTo(24 * 0.81980, within(0.004));
        GroundEvent rise = before.first(GroundEvent.Kind.RISE).orElseThrow();
        assertThat(rise.altitudeDeg()).isCloseTo(-34 / 60.0, within(1e-4));
        // 0.16 deg at 10.6 deg an hour is about a minute
        assertThat(rise.sigmaS()).isBetween(50.0, 60.0);
    }

    private static double hours(GroundCourse course, GroundEvent.Kind kind, String date) {
        UtcTime time = course.first(kind).orElseThrow().time();
        return time.clockSecondsSince(new UtcTime(LocalDate.parse(date).toEpochDay(), 0)) / 3600;
    }

    /**
     * From memory, common almanac knowledge: at 69.65° N, 18.96° E the Sun does not set from about May 20 to July 22 and does not rise from about November 27 to
     * January 15; at 48.2° N midsummer has no astronomical darkness.
     */
    @Test
    @Tag("truth")
    void midnightSunPolarNightAndBrightMidsummer() {
        assertThat(night(69.65, 18.96, "2024-06-21").sun().alwaysUp()).isTrue();
        assertThat(night(69.65, 18.96, "2024-05-15").sun().alwaysUp()).isFalse();
        assertThat(night(69.65, 18.96, "2024-12-21").sun().neverUp()).isTrue();
        assertThat(night(69.65, 18.96, "2024-01-20").sun().neverUp()).isFalse();
        // the night of a date is from noon to noon: the Sun is up at its start
        assertThat(night(69.65, 18.96, "2024-03-20").sun().upAtStart()).isTrue();
        GroundCourse midsummer = night(48.9, 16.3, "2024-06-20").sun();
        assertThat(midsummer.first(GroundEvent.Kind.NAUTICAL_DUSK)).isPresent();
        assertThat(midsummer.first(GroundEvent.Kind.ASTRONOMICAL_DUSK)).isEmpty();
    }

    @Test
    void dusksAndDawnsStandInTheirOrder() {
        List<GroundEvent.Kind> order = night(40, 0, "2024-10-10").sun().events().stream()
                .map(GroundEvent::kind)
                .filter(k -> k != GroundEvent.Kind.UPPER_TRANSIT)
                .toList();
        assertThat(order)
                .containsExactly(
                        GroundEvent.Kind.SET,
                        GroundEvent.Kind.CIVIL_DUSK,
                        GroundEvent.Kind.NAUTICAL_DUSK,
                        GroundEvent.Kind.ASTRONOMICAL_DUSK,
                        GroundEvent.Kind.LOWER_TRANSIT,
                        GroundEvent.Kind.ASTRONOMICAL_DAWN,
                        GroundEvent.Kind.NAUTICAL_DAWN,
                        GroundEvent.Kind.CIVIL_DAWN,
                        GroundEvent.Kind.RISE);
    }

    /** Nothing is overlooked: the same count of risings and settings as a walk in steps of a minute, from the equator to the pole. */
    @Test
    void asManyRisingsAndSettingsAsAWalkMinuteByMinute() {
        Random random = new Random(17);
        double[] latitudes = {0, 35, -60, 66.9, -67.5, 85, 89.7, -90};
        for (double latDeg : latitudes) {
            GroundNight night = GroundNight.of(
                    GroundSky.over(SKY, new GroundSite(latDeg, -180 + 360 * random.nextDouble(), 100)),
                    LocalDate.ofEpochDay(5000 + random.nextInt(20000)));
            int walked = 0;
            boolean up = false;
            for (int minute = 0; minute <= 1440; minute++) {
                UtcTime time = night.span().from().plusClockSeconds(60.0 * minute);
                boolean now =
                        night.ground().altitudeDeg(night.ground().direction(VENUS, time)) >= GroundNight.HORIZON_DEG;
                walked += minute > 0 && now != up ? 1 : 0;
                up = now;
            }
            long found = night.planet(VENUS).events().stream()
                    .filter(e -> e.kind() == GroundEvent.Kind.RISE || e.kind() == GroundEvent.Kind.SET)
                    .count();
            assertThat(found).as("latitude %s", latDeg).isEqualTo(walked);
        }
    }

    /** A body that comes over the horizon for minutes only is not missed: the Sun on the first days after a polar night. */
    @Test
    void aSunThatPeepsOverTheHorizonIsSeen() {
        GroundSky ground = GroundSky.over(SKY, new GroundSite(69.65, 18.96, 0));
        List<GroundEvent> upsAndDowns = new ArrayList<>();
        for (int day = 8; day <= 20; day++) {
            GroundNight.of(ground, LocalDate.of(2024, 1, day)).sun().events().stream()
                    .filter(e -> e.kind() == GroundEvent.Kind.RISE || e.kind() == GroundEvent.Kind.SET)
                    .forEach(upsAndDowns::add);
        }
        double shortestS = 86400;
        for (int i = 1; i < upsAndDowns.size(); i++) {
            assertThat(upsAndDowns.get(i).kind())
                    .isNotEqualTo(upsAndDowns.get(i - 1).kind());
            if (upsAndDowns.get(i).kind() == GroundEvent.Kind.SET) {
                shortestS = Math.min(
                        shortestS,
                        upsAndDowns
                                .get(i)
                                .time()
                                .clockSecondsSince(upsAndDowns.get(i - 1).time()));
            }
        }
        assertThat(shortestS).isBetween(60.0, 75 * 60.0);
    }

    @Test
    void everyPointOfAWindowIsDarkAndHigh() {
        GroundNight night = night(48.2, 16.3, "2024-12-07");
        List<DarkWindow> windows = night.windows(GroundSkyTest.body(5), -12, 25, 10);
        assertThat(windows).hasSize(1);
        DarkWindow window = windows.get(0);
        for (GroundView view : window.track()) {
            assertThat(view.altitudeDeg()).isGreaterThan(25 - 1e-3);
            assertThat(view.sunAltitudeDeg()).isLessThan(-12 + 1e-3);
        }
        UtcTime before = window.span().from().plusClockSeconds(-60);
        GroundView outside = night.ground().view(GroundSkyTest.body(5), before);
        assertThat(outside.altitudeDeg() < 25 || outside.sunAltitudeDeg() > -12).isTrue();
        assertThat(window.best().altitudeDeg()).isGreaterThan(60);
        assertThat(night.windows(GroundSkyTest.body(5), -12, 70, 10)).isEmpty();
    }

    /** In June 2024 Venus, 23° north of the equator, never rises at 80° S and never sets at 80° N. */
    @Test
    void whatNeverRisesAndNeverSets() {
        GroundNight south = night(-80, 20, "2024-06-15");
        assertThat(south.planet(VENUS).neverUp()).isTrue();
        assertThat(south.planet(VENUS).events()).extracting(GroundEvent::kind).hasSize(2);
        assertThat(night(80, 20, "2024-06-15").planet(VENUS).alwaysUp()).isTrue();
        assertThat(night(80, 20, "2024-06-15").windows(VENUS, -6, 10, 10)).isEmpty();
    }
}
