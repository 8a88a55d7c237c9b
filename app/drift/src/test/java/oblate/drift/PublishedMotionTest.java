/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import static oblate.drift.Sets.JUPITER;
import static oblate.drift.Sets.SATURN;
import static oblate.drift.Sets.system;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures in print, brought about by fitting marks that move as printed. */
@Tag("truth")
class PublishedMotionTest {

    private static Drift moving(oblate.sky.PlanetModel planet, String system, double degPerDay, double lat) {
        List<LongitudePoint> points = new ArrayList<>();
        for (int day = 0; day <= 90; day += 5) {
            double lon = 200 + degPerDay * day;
            points.add(Sets.point(day, ((lon % 360) + 360) % 360, 0.3, lat, 0.3));
        }
        return new DriftFitter().fit(new LongitudeSeries("spot", planet, system(planet, system), points));
    }

    /** Rows of a printed table of drifts and periods of System I (a national society's planetary section, apparition report 1960): deg per 30 days, then h m s. */
    @ParameterizedTest
    @CsvSource({"2.6, 34", "-9.0, 18", "-9.4, 17", "-2.8, 26"})
    void printedPeriodRows(double per30Days, double seconds) {
        Drift drift = moving(JUPITER, "1", per30Days / 30, 2);
        assertThat(drift.periodS()).isCloseTo(9 * 3600 + 50 * 60 + seconds, within(0.6));
    }

    /**
     * The Great Red Spot: about 0.26 deg per day of System III in the 1980s and 0.36 in the 2010s (Simon et al. 2018, AJ 155, 151). Periods and speeds worked out by hand: 86400 · 360 /
     * (870.536 − D) s, and −D · π/180 · 66 666 km / 86400 s at 22.5° planetographic south.
     */
    @ParameterizedTest
    @CsvSource({"0.26, 35740.38, -3.501", "0.36, 35744.49, -4.848"})
    void greatRedSpot(double degPerDay, double periodS, double speedMS) {
        Drift drift = moving(JUPITER, "3", degPerDay, -22.5);
        assertThat(drift.rateDegPerDay()).isCloseTo(degPerDay, within(1e-6));
        assertThat(drift.periodS()).isCloseTo(periodS, within(0.01));
        assertThat(drift.speedMS().orElseThrow()).isCloseTo(speedMS, within(0.003));
        // In System II it nearly rests: D less 0.266.
        double inTwo = Motion.driftInSystem(
                JUPITER.globe(), drift.rateDegPerDay(), system(JUPITER, "3"), system(JUPITER, "2"));
        assertThat(30 * inTwo).isCloseTo(30 * (degPerDay - 0.266), within(1e-4));
    }

    /**
     * The head of Saturn's storm of 2010: +2.793 deg per day of System III at 40.8° N, printed as −27.9 m/s (a study of 2012). The ellipsoid gives −26.8; with the cosine of the
     * planetocentric latitude (35.08°) and the equatorial radius, as printed tables do, −27.9 comes out within 0.2.
     */
    @Test
    void saturnsStorm() {
        Drift drift = moving(SATURN, "3", 2.793, 40.8);
        assertThat(drift.speedMS().orElseThrow()).isCloseTo(-26.8, within(0.05));
        double asPrinted = -2.793 * Math.toRadians(1) * 60_268_000 * Math.cos(Math.toRadians(35.082)) / 86_400;
        assertThat(asPrinted).isCloseTo(-27.9, within(0.2));
    }

    /** Drift of System III against System II by definition: 870.536 − 870.270 deg per day, 7.98 deg per 30 days. */
    @Test
    void systemsTwoAndThree() {
        Drift drift = moving(JUPITER, "3", 0, -40);
        assertThat(Motion.driftInSystem(
                        JUPITER.globe(), drift.rateDegPerDay(), system(JUPITER, "3"), system(JUPITER, "2")))
                .isCloseTo(-0.266, within(1e-6));
        assertThat(drift.periodS()).isCloseTo(9 * 3600 + 55 * 60 + 29.711, within(0.001));
    }

    /** Tollefson et al. 2017: the fastest jets, read from their table; and 24° N, for which others give 125 to 146 m/s. */
    @Test
    void windProfileHasTheJets() {
        WindProfile wind = WindProfile.of(JUPITER).orElseThrow();
        assertThat(wind.windMSAt(24).orElseThrow()).isBetween(125.0, 146.4);
        assertThat(wind.windMSAt(-20.25).orElseThrow()).isCloseTo(-55.5, within(1e-9));
        assertThat(wind.windMSAt(80)).isEmpty();
        assertThat(wind.rows())
                .hasSize(199)
                .isSortedAccordingTo((a, b) -> Double.compare(a.latGraphicDeg(), b.latGraphicDeg()));
        assertThat(WindProfile.of(SATURN)).isEmpty();
    }
}
