/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The grammar of numbers; its rule is the project's own: one figure of sigma, two when it begins with 1. */
class FiguresTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "213.4123 | 0.31 | ° | 213.4° ± 0.3",
                "-1.6248 | 0.042 | °/30 d | −1.62 ± 0.04 °/30 d",
                "24.3771 | 0.104 | ° | 24.38° ± 0.10",
                "24.0 | 0.14 | ° | 24.00° ± 0.14",
                "24.0 | 0.096 | ° | 24.00° ± 0.10",
                "24.04 | 0.19 | ° | 24.04° ± 0.19",
                "212.414 | 0.22 | px | 212.4 ± 0.2 px",
                "1234 | 21 | m | 1230 ± 20 m",
                "1234 | 134 | m | 1230 ± 130 m",
                "0.004 | 0.95 | ° | 0.0° ± 1.0",
                "-0.004 | 0.3 | ° | 0.0° ± 0.3",
            })
    void aValueIsRoundedAsItsErrorAsks(double value, double sigma, String unit, String expected) {
        assertThat(Figures.withSigma(value, sigma, unit)).isEqualTo(expected);
    }

    @Test
    void withoutAnErrorOneDecimalIsShownAndNoPlusMinus() {
        assertThat(Figures.withSigma(12.345, Double.NaN, "°")).isEqualTo("12.3°");
        assertThat(Figures.withSigma(12.345, 0, "px")).isEqualTo("12.3 px");
    }

    @Test
    void aLongitudeIsNeverShownAs360() {
        assertThat(Figures.longitude(359.97, 0.3)).isEqualTo("0.0° ± 0.3");
        assertThat(Figures.longitude(359.94, 0.3)).isEqualTo("359.9° ± 0.3");
        assertThat(Figures.longitude(-0.2, 0.3)).isEqualTo("359.8° ± 0.3");
        assertThat(Figures.longitude(359.96)).isEqualTo("0.0°");
    }

    @Test
    void latitudesSayTheirKindAndUseTheTrueMinus() {
        assertThat(Figures.latitudeGraphic(-22.31, 0.2)).isEqualTo("\u221222.3° ± 0.2 graphic");
    }

    @Test
    void periodsAreSaidInHoursMinutesAndSeconds() {
        assertThat(Figures.period(9 * 3600 + 55 * 60 + 41.31, 0.2)).isEqualTo("9h55m41.3s ± 0.2");
        assertThat(Figures.period(9 * 3600 + 50 * 60 + 5.02, 0.03)).isEqualTo("9h50m05.02s ± 0.03");
        assertThat(Figures.period(9 * 3600 + 59 * 60 + 59.97, 0.2)).isEqualTo("10h00m00.0s ± 0.2");
    }

    @Test
    void timesAreUtToATenthOfAMinute() {
        assertThat(Figures.clockUt(Instant.parse("2031-03-24T21:05:30Z"))).isEqualTo("21:05.5 UT");
        assertThat(Figures.clockUt(Instant.parse("2031-03-24T21:05:58Z"))).isEqualTo("21:06.0 UT");
        assertThat(Figures.clockUt(Instant.parse("2031-03-24T23:59:59Z"))).isEqualTo("00:00.0 UT");
    }

    @Test
    void filesGetAscii() {
        assertThat(Figures.ascii("\u22121.62° ± 0.04"))
                .isEqualTo("-1.62 deg +/- 0.04")
                .matches("\\p{ASCII}*");
    }

    @Test
    void nightsAreSaidByTheirTwoDates() {
        assertThat(NightName.of(LocalDate.of(2031, 3, 24))).isEqualTo("24/25 March 2031");
        assertThat(NightName.of(LocalDate.of(2031, 3, 31))).isEqualTo("31 March / 1 April 2031");
        assertThat(NightName.of(LocalDate.of(2030, 12, 31))).isEqualTo("31 December 2030 / 1 January 2031");
    }

    @Property(tries = 500)
    void theShownErrorHasOneFigureOrTwoBeginningWith1AndIsNear(
            @ForAll @DoubleRange(min = 0.01, max = 900) double sigma) {
        int decimals = Figures.decimalsFor(sigma);
        BigDecimal shown = new BigDecimal(Figures.fixed(sigma, decimals));
        String digits = shown.stripTrailingZeros().unscaledValue().toString();
        String figures = new BigDecimal(Figures.fixed(sigma, decimals))
                .unscaledValue()
                .toString()
                .replaceAll("0+$", "");
        assertThat(figures.length()).isLessThanOrEqualTo(digits.startsWith("1") ? 2 : 1);
        assertThat(shown.doubleValue()).isBetween(sigma * 0.66, sigma * 1.34);
    }

    @Property(tries = 300)
    void aLongitudeAnywhereIsShownBetween0AndBelow360(@ForAll @DoubleRange(min = -720, max = 720) double lon) {
        double shown = Double.parseDouble(Figures.longitude(lon).replace("°", ""));
        assertThat(shown).isGreaterThanOrEqualTo(0).isLessThan(360);
        assertThat(Math.abs(Math.IEEEremainder(shown - lon, 360))).isLessThanOrEqualTo(0.0500001);
    }
}
