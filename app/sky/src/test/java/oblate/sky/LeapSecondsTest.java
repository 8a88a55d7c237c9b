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

    /** The figures of the public list as it stood in 2016 (IETF tz database, leap-seconds.list, updated through IERS Bulletin C51), with its own SHA-1. */
    static final String LIST_OF_2016 = "#\tFile expires on:  28 December 2016\n#$\t 3629404800\n#@\t3691872000\n"
            + """
            2272060800\t10\t# 1 Jan 1972
            2287785600\t11\t# 1 Jul 1972
            2303683200\t12\t# 1 Jan 1973
            2335219200\t13\t# 1 Jan 1974
            2366755200\t14\t# 1 Jan 1975
            2398291200\t15\t# 1 Jan 1976
            2429913600\t16\t# 1 Jan 1977
            2461449600\t17\t# 1 Jan 1978
            2492985600\t18\t# 1 Jan 1979
            2524521600\t19\t# 1 Jan 1980
            2571782400\t20\t# 1 Jul 1981
            2603318400\t21\t# 1 Jul 1982
            2634854400\t22\t# 1 Jul 1983
            2698012800\t23\t# 1 Jul 1985
            2776982400\t24\t# 1 Jan 1988
            2840140800\t25\t# 1 Jan 1990
            2871676800\t26\t# 1 Jan 1991
            2918937600\t27\t# 1 Jul 1992
            2950473600\t28\t# 1 Jul 1993
            2982009600\t29\t# 1 Jul 1994
            3029443200\t30\t# 1 Jan 1996
            3076704000\t31\t# 1 Jul 1997
            3124137600\t32\t# 1 Jan 1999
            3345062400\t33\t# 1 Jan 2006
            3439756800\t34\t# 1 Jan 2009
            3550089600\t35\t# 1 Jul 2012
            3644697600\t36\t# 1 Jul 2015
            """
            + "#h\tafc03691 8ff53838 42080ba1 cdd22f1 48192c10\n";

    /** The same without a hash, with the leap second of 2017 and an invented one of 2028, until 2029. */
    static final String NEWER_LIST = LIST_OF_2016.replaceAll("#h.*\n", "").replace("#@\t3691872000", "#@\t4070908800")
            + "3692217600\t37\n4039286400 38 # 1 Jan 2028, invented\n";

    /** The form of the Earth rotation service's file Leap_Second.dat, with its figures of 2018; only the last ones differ from the list's. */
    static String datOf2018() {
        StringBuilder text = new StringBuilder(
                "#  Updated through IERS Bulletin 56 issued in July 2018\n"
                        + "#  File expires on 28 June 2019\n#\n#    MJD        Date        TAI-UTC (s)\n#           day month year\n");
        LeapSeconds.bundled().wholeSteps().forEach((day, offset) -> {
            LocalDate date = LocalDate.ofEpochDay(day);
            text.append(String.format(
                    java.util.Locale.ROOT,
                    "    %d.0   %2d %2d %d       %d%n",
                    day + 40587,
                    date.getDayOfMonth(),
                    date.getMonthValue(),
                    date.getYear(),
                    offset));
        });
        return text.toString();
    }

    private static LeapSeconds parse(String text) {
        return new LeapSecondFile("list").parse(text);
    }

    @Test
    @Tag("truth")
    void theListsOwnHashIsOurs() {
        LeapSeconds table = parse(LIST_OF_2016);
        assertThat(table.expires()).isEqualTo(LocalDate.of(2016, 12, 28));
        assertThat(table.taiMinusUtcS(UtcTime.parse("2016-06-01T00:00:00Z"))).isEqualTo(36);
        assertThat(table.origin()).isEqualTo("list");
        for (String changed : new String[] {
            LIST_OF_2016.replace("3644697600\t36", "3647289600\t36"),
            LIST_OF_2016.replace("3691872000", "3723408000"),
            LIST_OF_2016.replace("48192c10", "48192c11"),
            LIST_OF_2016.replace("#$\t 3629404800\n", "")
        }) {
            refused(changed);
        }
    }

    @Test
    void newerListAddsALeapSecond() throws IOException {
        LeapSeconds newer = LeapSeconds.read(Files.writeString(folder.resolve("leap-seconds.list"), NEWER_LIST));
        assertThat(newer.ttMinusUtcS(UtcTime.parse("1972-08-01T00:00:00Z"))).isEqualTo(43.184);
        assertThat(newer.ttMinusUtcS(UtcTime.parse("2027-12-31T23:59:59Z"))).isEqualTo(69.184);
        UtcTime leap = UtcTime.parse("2027-12-31T23:59:60Z", newer);
        assertThat(newer.ttMinusUtcS(leap)).isEqualTo(69.184);
        assertThat(newer.ttMinusUtcS(UtcTime.parse("2028-01-01T00:00:00Z"))).isEqualTo(70.184);
        assertThat(newer.ttMinusUtcS(UtcTime.parse("1965-01-01T00:00:00Z"))).isCloseTo(35.72413, within(1e-9));
        assertThat(newer.expires()).isEqualTo(LocalDate.of(2029, 1, 1));
        assertThat(newer.isBundled()).isFalse();
        assertThat(LeapSeconds.bundled().expires()).isEqualTo(LocalDate.of(2026, 6, 28));
        assertThatThrownBy(() -> UtcTime.parse("2027-12-31T23:59:60Z")).isInstanceOf(ProblemException.class);
    }

    @Test
    void theOtherPublicFormIsRead() throws IOException {
        LeapSeconds table = LeapSeconds.read(Files.writeString(folder.resolve("Leap_Second.dat"), datOf2018()));
        assertThat(table.expires()).isEqualTo(LocalDate.of(2019, 6, 28));
        assertThat(table.wholeSteps()).isEqualTo(LeapSeconds.bundled().wholeSteps());
    }

    @Test
    void pastTheExpiryItIsSaid() {
        LeapSeconds table = LeapSeconds.bundled();
        assertThat(table.isKnownAt(UtcTime.parse("2026-06-27T23:59:59Z"))).isTrue();
        assertThat(table.isKnownAt(UtcTime.parse("2026-06-28T00:00:00Z"))).isFalse();
        assertThat(table.saidOf(UtcTime.parse("2020-01-01T00:00:00Z"))).isEqualTo("bundled, complete to 2026-06-28");
        assertThat(table.saidOf(UtcTime.parse("2031-01-01T00:00:00Z"))).contains("past 2026-06-28", "69.184 s");
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
            "#@ 99999999999999999999\n",
            NEWER_LIST.replace("3692217600\t37\n", ""),
            NEWER_LIST.replace("4039286400 38", "4039286400 39"),
            NEWER_LIST.replace("4039286400 38", "4039372800 38"),
            NEWER_LIST.replace("4039286400 38", "4039286401 38"),
            NEWER_LIST.replace("4070908800", "4039200000"),
            NEWER_LIST.replace("2698012800\t23", "2699000000\t23"),
            datOf2018().replace("28 June 2019", "31 June 2019"),
            datOf2018().replace("57754.0", "57755.0"),
            datOf2018().replace("#  File expires on 28 June 2019\n", ""),
            datOf2018().replace(" 1  1 2017 ", " 1 13 2017 ")
        }) {
            refused(text);
        }
        assertThatThrownBy(() -> LeapSeconds.read(folder.resolve("missing"))).isInstanceOf(ProblemException.class);
    }

    private static void refused(String text) {
        assertThatThrownBy(() -> parse(text))
                .as(text)
                .isInstanceOfSatisfying(
                        ProblemException.class, e -> assertThat(e.kind()).isEqualTo(SkyProblem.BAD_LEAP_SECONDS))
                .hasMessageStartingWith("list:");
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
