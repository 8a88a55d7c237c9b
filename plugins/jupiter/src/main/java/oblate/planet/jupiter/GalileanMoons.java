/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.jupiter;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import oblate.sky.MoonFacts;
import oblate.sky.MoonSeries;

/**
 * The four large moons, with our own series for their motion: 8 to 11 km at worst against the JPL orbits it was fitted to, themselves good to some
 * 20–30 km. It holds from 1957 to 2062 and runs away outside, so no other date is answered.
 */
final class GalileanMoons {
    private static final String SERIES = "galilean_series.csv";

    /** 1957-01-01 and 2063-01-01, days of TDB from J2000. */
    private static final double FIRST_TDB_DAY = 2435839.5 - 2451545.0;

    private static final double LAST_TDB_DAY = 2474555.5 - 2451545.0;

    private static final String SOURCE =
            "radii: Io 1821.49, Europa 1560.8, Ganymede 2631.2, Callisto 2410.3 km, IAU WGCCRE 2015; masses: JPL, from memory to 0.1 km3/s2; "
                    + "standard error: 2.5 to 3.5 km of the series, and 25 km assumed of the JPL orbits it was fitted to";

    /** The JPL orbits are assumed good to 20–30 km; the series' own 2.5 to 3.5 km, rms in space, add nothing to that. */
    private static final double SIGMA_KM = 25;

    /** GM (km³/s²) of the planet and its moons. */
    private static final double JUPITER_GM = 126686532;

    private static final double IO_GM = 5959.9;
    private static final double EUROPA_GM = 3202.7;
    private static final double GANYMEDE_GM = 9887.8;
    private static final double CALLISTO_GM = 7179.3;
    private static final double SYSTEM_GM = JUPITER_GM + IO_GM + EUROPA_GM + GANYMEDE_GM + CALLISTO_GM;

    /** Read once, when moons are first asked for. */
    static final List<MoonFacts> ALL = load();

    private GalileanMoons() {}

    private static List<MoonFacts> load() {
        try (InputStream in = GalileanMoons.class.getResourceAsStream(SERIES)) {
            Map<String, MoonSeries> series = MoonSeries.read(in, SERIES, FIRST_TDB_DAY, LAST_TDB_DAY);
            return List.of(
                    new MoonFacts("io", "Io", 1821.49, IO_GM / SYSTEM_GM, series.get("io"), SIGMA_KM, SOURCE),
                    new MoonFacts(
                            "europa", "Europa", 1560.8, EUROPA_GM / SYSTEM_GM, series.get("europa"), SIGMA_KM, SOURCE),
                    new MoonFacts(
                            "ganymede",
                            "Ganymede",
                            2631.2,
                            GANYMEDE_GM / SYSTEM_GM,
                            series.get("ganymede"),
                            SIGMA_KM,
                            SOURCE),
                    new MoonFacts(
                            "callisto",
                            "Callisto",
                            2410.3,
                            CALLISTO_GM / SYSTEM_GM,
                            series.get("callisto"),
                            SIGMA_KM,
                            SOURCE));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
