/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc.studio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** How a planet stands, as a table made elsewhere has it: angles in degrees. */
record Circumstances(
        String time,
        String body,
        boolean eastPositive,
        double earthLon,
        double earthLat,
        double sunLon,
        double sunLat,
        double phase,
        double polarRatio) {

    static List<Circumstances> all() throws IOException {
        List<Circumstances> rows = new ArrayList<>();
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Circumstances.class.getResourceAsStream("circumstances.csv"), StandardCharsets.UTF_8))) {
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                if (line.startsWith("#") || line.startsWith("time_utc")) {
                    continue;
                }
                String[] c = line.split(",");
                rows.add(new Circumstances(
                        c[0],
                        c[1],
                        c[2].equals("east"),
                        Double.parseDouble(c[3]),
                        Double.parseDouble(c[4]),
                        Double.parseDouble(c[5]),
                        Double.parseDouble(c[6]),
                        Double.parseDouble(c[7]),
                        Double.parseDouble(c[9]) / Double.parseDouble(c[8])));
            }
        }
        return rows;
    }

    /** Direction of the Sun in the body frame: x to the central meridian, y planetary east, z north. */
    double[] sun() {
        double east = Math.toRadians((eastPositive ? 1 : -1) * (sunLon - earthLon));
        double lat = Math.toRadians(sunLat);
        return new double[] {Math.cos(lat) * Math.cos(east), Math.cos(lat) * Math.sin(east), Math.sin(lat)};
    }
}
