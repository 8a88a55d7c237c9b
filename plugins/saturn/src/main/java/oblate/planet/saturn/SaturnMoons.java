/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.saturn;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import oblate.sky.MoonFacts;
import oblate.sky.MoonSeries;

/**
 * Eight moons, with our own series for their motion, fitted to public JPL orbits of 1962 to 2047 and judged by rows kept out of the fit; how is told in
 * docs/moon-series. No date outside is answered.
 */
final class SaturnMoons {
    private static final String SERIES = "saturn_series.csv";

    /** 1963-01-01 and 2047-01-01, days of TDB from J2000: a year inside the rows the series was fitted to. */
    private static final double FIRST_TDB_DAY = 2438030.5 - 2451545.0;

    private static final double LAST_TDB_DAY = 2468711.5 - 2451545.0;

    /** What the JPL orbits are assumed to be good to, along any one direction (km); no published figure is behind it. */
    private static final double ORBITS_SIGMA_KM = 25;

    private static final String SOURCE = "radii: IAU WGCCRE 2015, all but Titan's from memory; masses: JPL, from memory; "
            + "standard error: the series against the JPL orbits it was fitted to, and 25 km assumed of those";

    /** GM (km³/s²) of the planet and its moons. */
    private static final double SATURN_GM = 37931206;

    private static final double MIMAS_GM = 2.5;
    private static final double ENCELADUS_GM = 7.2;
    private static final double TETHYS_GM = 41.2;
    private static final double DIONE_GM = 73.1;
    private static final double RHEA_GM = 153.9;
    private static final double TITAN_GM = 8978.1;
    private static final double HYPERION_GM = 0.37;
    private static final double IAPETUS_GM = 120.5;
    private static final double SYSTEM_GM = SATURN_GM
            + MIMAS_GM
            + ENCELADUS_GM
            + TETHYS_GM
            + DIONE_GM
            + RHEA_GM
            + TITAN_GM
            + HYPERION_GM
            + IAPETUS_GM;

    /** Read once, when moons are first asked for. */
    static final List<MoonFacts> ALL = load();

    private SaturnMoons() {}

    private static List<MoonFacts> load() {
        try (InputStream in = SaturnMoons.class.getResourceAsStream(SERIES)) {
            Map<String, MoonSeries> series = MoonSeries.read(in, SERIES, FIRST_TDB_DAY, LAST_TDB_DAY);
            return List.of(
                    moon(series, "Mimas", 198.2, MIMAS_GM, 6),
                    moon(series, "Enceladus", 252.1, ENCELADUS_GM, 1.8),
                    moon(series, "Tethys", 531.0, TETHYS_GM, 2.3),
                    moon(series, "Dione", 561.4, DIONE_GM, 2),
                    moon(series, "Rhea", 763.5, RHEA_GM, 1.9),
                    moon(series, "Titan", 2574.73, TITAN_GM, 1.9),
                    moon(series, "Hyperion", 135, HYPERION_GM, 320),
                    moon(series, "Iapetus", 734.3, IAPETUS_GM, 2.2));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * One moon.
     *
     * @param seriesRmsKm rms distance in space (km) of the series from rows kept out of its fit
     */
    private static MoonFacts moon(
            Map<String, MoonSeries> series, String name, double radiusKm, double gm, double seriesRmsKm) {
        String id = name.toLowerCase(Locale.ROOT);
        double sigmaKm = Math.sqrt(ORBITS_SIGMA_KM * ORBITS_SIGMA_KM + seriesRmsKm * seriesRmsKm / 3);
        return new MoonFacts(id, name, radiusKm, gm / SYSTEM_GM, series.get(id), sigmaKm, SOURCE);
    }
}
