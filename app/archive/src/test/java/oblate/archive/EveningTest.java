/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.LongRange;

class EveningTest {

    private static String of(String utc, Site site) {
        return Evening.of(Instant.parse(utc), Optional.ofNullable(site)).toString();
    }

    private static Site at(double lonDeg, String zone) {
        return new Site("s", 0, lonDeg, 0, Optional.ofNullable(zone).map(ZoneId::of));
    }

    @Example
    void theNightTurnsAtLocalNoon() {
        assertThat(of("2031-03-24T11:59:59Z", null)).isEqualTo("2031-03-23");
        assertThat(of("2031-03-24T12:00:00Z", null)).isEqualTo("2031-03-24");
        // 150 degrees east is 10 h ahead.
        assertThat(of("2031-03-24T01:59:59Z", at(150, null))).isEqualTo("2031-03-23");
        assertThat(of("2031-03-24T02:00:00Z", at(150, null))).isEqualTo("2031-03-24");
        // 210 degrees east is 150 west, 10 h behind.
        assertThat(of("2031-03-24T21:59:59Z", at(210, null))).isEqualTo("2031-03-23");
        assertThat(of("2031-03-24T22:00:00Z", at(-150, null))).isEqualTo("2031-03-24");
    }

    @Example
    void theZonesNoonCountsWhereThereIsOne() {
        // Summer time of Lisbon is UTC+1: noon is 11:00 UTC; in winter 12:00.
        assertThat(of("2031-07-01T10:59:59Z", at(-9, "Europe/Lisbon"))).isEqualTo("2031-06-30");
        assertThat(of("2031-07-01T11:00:00Z", at(-9, "Europe/Lisbon"))).isEqualTo("2031-07-01");
        assertThat(of("2031-01-01T11:59:59Z", at(-9, "Europe/Lisbon"))).isEqualTo("2030-12-31");
    }

    @Property(tries = 300, seed = "1")
    void aDayLaterIsTheNextNight(
            @ForAll @LongRange(min = -300_000_000, max = 2_800_000_000L) long second,
            @ForAll @DoubleRange(min = -180, max = 360) double lonDeg) {
        Optional<Site> site = Optional.of(at(lonDeg, null));
        Instant time = Instant.ofEpochSecond(second);
        LocalDate evening = Evening.of(time, site);
        assertThat(Evening.of(time.plus(Duration.ofDays(1)), site)).isEqualTo(evening.plusDays(1));
    }
}
