/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.workbench.timeline.TimeAxis;
import org.junit.jupiter.api.Test;

class SkyScalesTest {
    private static final UtcTime DUSK = UtcTime.parse("2024-12-07T15:00:00Z");

    @Property
    void theHighestAltitudeIsWithinThePlotAndTheAxisIsRound(@ForAll @DoubleRange(min = -90, max = 90) double deg) {
        double top = SkyScales.topDeg(deg);
        assertThat(top).isBetween(30.0, 90.0).isGreaterThanOrEqualTo(deg);
        assertThat(top % 10).isZero();
    }

    @Property
    void dispersionWithinTheWindowStaysInThePlot(@ForAll @DoubleRange(min = 0.05, max = 11) double arcsec) {
        assertThat(SkyScales.topArcsec(arcsec)).isBetween(arcsec, Math.max(0.5, 2.2 * arcsec));
    }

    @Property
    void theDispersionAxisHasThreeToFiveSteps(@ForAll @DoubleRange(min = 0.05, max = 11) double arcsec) {
        double top = SkyScales.topArcsec(arcsec);
        SkyScales scales = new SkyScales(axis(), 40, 200, 60, top);
        assertThat(top / scales.stepArcsec()).isBetween(2.99, 5.01);
    }

    @Test
    void zeroIsAtTheFootAndTheTopAtTheTop() {
        SkyScales scales = new SkyScales(axis(), 40, 200, 60, 3);
        assertThat(scales.altitudeY(0)).isEqualTo(200);
        assertThat(scales.altitudeY(60)).isEqualTo(40);
        assertThat(scales.altitudeY(30)).isCloseTo(120, within(1e-9));
        assertThat(scales.dispersionY(1.5)).isCloseTo(120, within(1e-9));
        assertThat(scales.plot().getMaxY()).isEqualTo(200);
    }

    private static TimeAxis axis() {
        return new TimeAxis(new TimeSpan(DUSK, DUSK.plusClockSeconds(50_000)), 150, 900);
    }
}
