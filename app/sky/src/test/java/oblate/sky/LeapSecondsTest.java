/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oblate.base.ProblemException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LeapSecondsTest {
    @TempDir
    Path folder;

    /** IERS Bulletin C and the definition TT = TAI + 32.184 s. */
    @Test
    @Tag("truth")
    void offsetsOfKnownDates() {
        assertThat(tt("1972-01-01T00:00:00Z")).isCloseTo(42.184, within(1e-9));
        assertThat(tt("1999-01-01T00:00:00Z")).isCloseTo(64.184, within(1e-9));
        assertThat(tt("2016-12-31T23:59:60.9Z")).isCloseTo(68.184, within(1e-9));
        assertThat(tt("2017-01-01T00:00:00Z")).isCloseTo(69.184, within(1e-9));
        assertThat(tt("2055-01-01T00:00:00Z")).isCloseTo(69.184, within(1e-9));
        // 1965-01-01: TAI − UTC = 3.54013 + (38761 − 38761) × 0.001296 s (U.S. Naval Observatory, tai-utc.dat)
        assertThat(tt("1965-01-01T00:00:00Z")).isCloseTo(32.184 + 3.54013, within(1e-9));
    }

    private static double tt(String time) {
        return LeapSeconds.bundled().ttMinusUtcS(UtcTime.parse(time));
    }

    @Test
    @Tag("truth")
    void twentySevenDaysHaveALeapSecond() {
        int longDays = 0;
        for (long day = 0; day < 25000; day++) {
            longDays += LeapSeconds.bundled().secondsInDay(day) - 86400;
        }
        // from 10 s in 1972 to 37 s in 2017
        assertThat(longDays).isEqualTo(27);
        assertThat(LeapSeconds.bundled().secondsInDay(LocalDate.of(2016, 12, 31).toEpochDay()))
                .isEqualTo(86401);
        assertThat(LeapSeconds.bundled().secondsInDay(LocalDate.of(1971, 12, 31).toEpochDay()))
                .isEqualTo(86400);
    }

    @Test
    void newerListAddsALeapSecond() throws IOException {
        Path file = Files.writeString(
                folder.resolve("leap-seconds.list"),
                "# words\n#@\t4102444800\n2272060800\t10\t# 1 Jan 1972\n2287785600 11\n3692217600 12 # shortened for the test\n");
        LeapSeconds newer = LeapSeconds.read(file);
        assertThat(newer.ttMinusUtcS(UtcTime.parse("1972-08-01T00:00:00Z"))).isEqualTo(43.184);
        assertThat(newer.ttMinusUtcS(UtcTime.parse("2020-01-01T00:00:00Z"))).isEqualTo(44.184);
        assertThat(newer.ttMinusUtcS(UtcTime.parse("1965-01-01T00:00:00Z"))).isCloseTo(35.72413, within(1e-9));
        assertThat(newer.expires()).isEqualTo(LocalDate.of(2030, 1, 1));
        assertThat(LeapSeconds.bundled().expires()).isEqualTo(LocalDate.of(2026, 6, 28));
    }

    @Test
    void brokenListIsRefused() {
        for (String text : new String[] {
            "",
            "#@ 4102444800\n",
            "2272060800 10\n",
            "#@ x\n2272060800 10\n",
            "#@ 4102444800\n2272060800\n",
            "#@ 4102444800\n2272060800 10\n2287785600 13\n",
            "#@ 4102444800\n2287785600 11\n2272060800 10\n",
            "#@ 99999999999999999999\n"
        }) {
            assertThatThrownBy(() -> LeapSeconds.parseList(text, "list"))
                    .as(text)
                    .isInstanceOfSatisfying(
                            ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.BAD_LEAP_SECONDS))
                    .hasMessageStartingWith("list:");
        }
        assertThatThrownBy(() -> LeapSeconds.read(folder.resolve("missing"))).isInstanceOf(ProblemException.class);
    }

    @Property
    void clockAndDaysOfTdbAreInverse(@ForAll @DoubleRange(min = -14600, max = 21900) double tdbDays) {
        LeapSeconds table = LeapSeconds.bundled();
        UtcTime utc = Moment.utcAt(tdbDays, table);
        double off = (Moment.of(utc, table).tdbDays() - tdbDays) * 86400;
        // one second at most beside a leap second, which days of TDB cannot name; else the grain of a double
        assertThat(Math.abs(off) < 1e-5 || utc.secondOfDay() < 1.1 || utc.secondOfDay() > 86398)
                .isTrue();
    }
}
