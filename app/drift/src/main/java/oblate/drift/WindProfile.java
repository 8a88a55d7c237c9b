/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.sky.PlanetModel;

/**
 * A published profile of the zonal wind, to hold drifts against.
 *
 * @param source where it was published, one line
 * @param rows from south to north
 */
public record WindProfile(String source, List<Row> rows) {
    private static final String JUPITER = "jupiter_zonal_wind_2017.csv";
    private static final String JUPITER_SOURCE =
            "Tollefson et al. 2017, Icarus 296, 163: 2017 February 1 to 2, at 631 nm";

    /** Copies the list. */
    public WindProfile {
        rows = List.copyOf(rows);
    }

    /**
     * One latitude.
     *
     * @param latGraphicDeg planetographic latitude (deg)
     * @param windMS wind (m/s) relative to the IAU's system, positive in the sense of rotation
     * @param sigmaWindMS its standard error (m/s)
     */
    public record Row(double latGraphicDeg, double windMS, double sigmaWindMS) {}

    /** The profile bundled for a planet; empty where there is none. */
    public static Optional<WindProfile> of(PlanetModel planet) {
        if (!planet.id().equals("jupiter")) {
            return Optional.empty();
        }
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(WindProfile.class.getResourceAsStream(JUPITER), StandardCharsets.UTF_8))) {
            List<Row> rows = new ArrayList<>();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#") && !line.startsWith("lat")) {
                    String[] cells = line.split(",");
                    rows.add(new Row(
                            Double.parseDouble(cells[0]), Double.parseDouble(cells[1]), Double.parseDouble(cells[2])));
                }
            }
            return Optional.of(new WindProfile(JUPITER_SOURCE, rows));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Wind (m/s) at a planetographic latitude (deg), between the rows in a straight line; empty beyond them. */
    public OptionalDouble windMSAt(double latGraphicDeg) {
        for (int i = 1; i < rows.size(); i++) {
            Row south = rows.get(i - 1);
            Row north = rows.get(i);
            if (latGraphicDeg >= south.latGraphicDeg() && latGraphicDeg <= north.latGraphicDeg()) {
                double share =
                        (latGraphicDeg - south.latGraphicDeg()) / (north.latGraphicDeg() - south.latGraphicDeg());
                return OptionalDouble.of(south.windMS() + share * (north.windMS() - south.windMS()));
            }
        }
        return OptionalDouble.empty();
    }
}
