/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MoonsCommandTest {
    /** The columns of the reference tables, in their order. */
    private static final String COLUMNS =
            "time_utc,planet,moon,distance_au,dra_cosdec_arcsec,ddec_arcsec,x_west_radii,y_north_radii,"
                    + "z_toward_earth_radii,planet_radius_arcsec,moon_diameter_arcsec,in_transit,occulted,eclipsed,shadow_on_disc,"
                    + "shadow_dra_cosdec_arcsec,shadow_ddec_arcsec,shadow_x_west_radii,shadow_y_north_radii,shadow_lon_iau_deg,"
                    + "shadow_lat_graphic_deg";

    @TempDir
    Path work;

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    /** Titan's row of the reference table: JPL satellite orbits and DE431 as distributed with the Swiss Ephemeris 2.10. */
    @Test
    @Tag("truth")
    void saturnsMoonsStandWhereAnotherProgramHasThem() {
        CommandRun run = run("moons", "saturn", "--at", "2006-03-18T21:28:24Z", "--format", "csv");
        assertThat(run.status()).isZero();
        assertThat(run.rows())
                .extracting(r -> r.get("moon"))
                .containsExactly("mimas", "enceladus", "tethys", "dione", "rhea", "titan", "hyperion", "iapetus");
        CSVRecord titan = run.rows().get(5);
        assertThat(Double.parseDouble(titan.get("dra_cosdec_arcsec"))).isCloseTo(195.8131, within(0.005));
        assertThat(Double.parseDouble(titan.get("ddec_arcsec"))).isCloseTo(32.5057, within(0.005));
        assertThat(Double.parseDouble(titan.get("offset_sigma_arcsec"))).isBetween(0.003, 0.006);
    }

    @Test
    void columnsAreThoseOfTheReferenceTablesThenOurs() {
        CommandRun run = run("moons", "jupiter", "--at", "2024-12-07T20:00:00Z", "--format", "csv");
        assertThat(run.rows()).hasSize(4);
        assertThat(String.join(",", run.rows().get(0).getParser().getHeaderNames()))
                .isEqualTo(COLUMNS + ",offset_sigma_arcsec,ephemeris,leap_seconds");
    }

    @Test
    void timeOutsideTheSpanIsOneSentenceAndStatusOne() {
        CommandRun run = run("moons", "saturn", "--at", "1961-05-01T00:00:00Z", "--format", "csv");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.sentences()).hasSize(1);
        assertThat(run.err()).contains("Saturn", "1963-01-01", "2046-12-31");
    }
}
