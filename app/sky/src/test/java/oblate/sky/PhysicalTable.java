/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Checks apparent discs against a table of physical ephemerides: planets from JPL DE431, apparent places by ERFA (IAU 2006/2000A), rotation per IAU
 * 2015. The bars are what a program on DE405 can be asked for.
 */
public final class PhysicalTable {

    /**
     * One figure compared.
     *
     * @param row place and time
     * @param quantity column
     * @param off ours minus the table's, in the column's unit (RA in arcsec on the sky, Dec in arcsec)
     * @param bar largest allowed
     */
    public record Difference(String row, String quantity, double off, double bar) {
        /** Whether it lies inside the bar; false for a missing value too. */
        public boolean holds() {
            return Math.abs(off) <= bar;
        }
    }

    private final List<Map<String, String>> rows;

    private PhysicalTable(List<Map<String, String>> rows) {
        this.rows = rows;
    }

    /** From a text that stands beside a test class. */
    public static PhysicalTable beside(Class<?> test, String name) throws IOException {
        try (InputStream in = test.getResourceAsStream(name)) {
            return new PhysicalTable(rows(new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList()));
        }
    }

    /** From a file elsewhere. */
    public static PhysicalTable of(Path file) throws IOException {
        return new PhysicalTable(rows(Files.readAllLines(file)));
    }

    /** Rows of a CSV without quoted cells; lines with # are words. */
    static List<Map<String, String>> rows(List<String> lines) {
        List<Map<String, String>> rows = new ArrayList<>();
        String[] head = null;
        for (String line : lines) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            String[] cells = line.split(",", -1);
            if (head == null) {
                head = cells;
                continue;
            }
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < cells.length; i++) {
                row.put(head[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    /** Number of rows of a planet. */
    public int rowsOf(PlanetModel planet) {
        return (int)
                rows.stream().filter(r -> r.get("body").equals(planet.id())).count();
    }

    /** All differences of a planet's rows. */
    public List<Difference> differences(Sky sky, PlanetModel planet) {
        List<Difference> all = new ArrayList<>();
        for (Map<String, String> row : rows) {
            if (row.get("body").equals(planet.id())) {
                compare(sky.disc(planet, UtcTime.parse(row.get("time_utc"))), row, all);
            }
        }
        return all;
    }

    /** The largest difference per column, one line each. */
    public static String largest(List<Difference> differences) {
        Map<String, Difference> worst = new java.util.LinkedHashMap<>();
        for (Difference d : differences) {
            worst.merge(d.quantity(), d, (a, b) -> Math.abs(b.off() / b.bar()) > Math.abs(a.off() / a.bar()) ? b : a);
        }
        StringBuilder text = new StringBuilder();
        worst.values()
                .forEach(d -> text.append(String.format(
                        Locale.ROOT, "%-34s %12.3g of %9.3g  %s%n", d.quantity(), d.off(), d.bar(), d.row())));
        return text.toString();
    }

    private static void compare(ApparentDisc disc, Map<String, String> row, List<Difference> all) {
        String place = row.get("body") + " " + row.get("time_utc");
        Map<String, Double> ours = values(disc);
        Map<String, Double> bars = bars(disc);
        for (Map.Entry<String, String> cell : row.entrySet()) {
            String column = cell.getKey();
            if (List.of("time_utc", "body", "lon_positive").contains(column)) {
                continue;
            }
            boolean empty = cell.getValue().isEmpty();
            Double value = ours.get(column);
            if (empty && value == null) {
                continue;
            }
            double off = empty || value == null ? Double.NaN : value - Double.parseDouble(cell.getValue());
            if (column.endsWith("_deg")) {
                off = Math.IEEEremainder(off, 360);
            }
            if (column.equals("ra_apparent_deg")) {
                off *= 3600 * Math.cos(Math.toRadians(disc.decApparentDeg()));
            } else if (column.equals("dec_apparent_deg")) {
                off *= 3600;
            }
            all.add(new Difference(place, column, off, bars.getOrDefault(column, 0.0)));
        }
        boolean sense = row.get("lon_positive")
                .equals(disc.planet().globe().longitudePositive().name().toLowerCase(Locale.ROOT));
        all.add(new Difference(place, "lon_positive", sense ? 0 : 1, 0));
    }

    private static Map<String, Double> values(ApparentDisc disc) {
        Map<String, Double> v = new HashMap<>();
        v.put("tt_minus_utc_s", disc.ttMinusUtcS());
        v.put("ra_apparent_deg", disc.raApparentDeg());
        v.put("dec_apparent_deg", disc.decApparentDeg());
        v.put("distance_au", disc.distanceAu());
        v.put("light_time_s", disc.lightTimeS());
        v.put("sun_distance_au", disc.sunDistanceAu());
        v.put("elongation_deg", disc.elongationDeg());
        v.put("diameter_equatorial_arcsec", disc.diameterEquatorialArcsec());
        v.put("diameter_polar_arcsec", disc.diameterPolarArcsec());
        v.put("phase_angle_deg", disc.phaseAngleDeg());
        v.put("illuminated_fraction", disc.illuminatedFraction());
        subPoint(v, "sub_earth", disc.subEarth());
        subPoint(v, "sub_solar", disc.subSolar());
        v.put("north_pole_pa_deg", disc.northPolePaDeg());
        v.put("north_pole_pa_icrf_deg", disc.northPolePaIcrfDeg());
        v.put("bright_limb_pa_deg", disc.brightLimbPaDeg());
        v.put("defect_pa_deg", disc.defectPaDeg());
        disc.rings().ifPresent(rings -> {
            v.put("ring_opening_earth_deg", rings.openingEarthDeg());
            v.put("ring_opening_sun_deg", rings.openingSunDeg());
            v.put("ring_outer_semi_major_arcsec", rings.outerSemiMajorArcsec());
            v.put("ring_outer_semi_minor_arcsec", rings.outerSemiMinorArcsec());
        });
        v.put("equatorial_radius_km", disc.planet().globe().figure().equatorialRadiusKm());
        v.put("polar_radius_km", disc.planet().globe().figure().polarRadiusKm());
        return v;
    }

    private static void subPoint(Map<String, Double> v, String name, SubPoint point) {
        v.put(name + "_lon_deg", point.iauLonDeg());
        v.put(name + "_lat_centric_deg", point.latCentricDeg());
        v.put(name + "_lat_graphic_deg", point.latGraphicDeg());
        for (RotationSystem system : point.globe().systems()) {
            if (!system.id().equals("iau")) {
                v.put(name + "_lon_sys" + system.id() + "_deg", point.lonDeg(system));
            }
        }
    }

    private static Map<String, Double> bars(ApparentDisc disc) {
        int body = disc.planet().globe().deBody();
        boolean uranus = body == 7;
        Map<String, Double> b = new HashMap<>();
        b.put("tt_minus_utc_s", 0.00051);
        double place = body < 5 ? 0.05 : new double[] {0.25, 0.3, 0.5, 1.2}[body - 5];
        b.put("ra_apparent_deg", place);
        b.put("dec_apparent_deg", place);
        double distance = body < 5 ? 1e-7 : new double[] {3e-6, 6e-6, 1e-5, 1e-4}[body - 5];
        b.put("distance_au", distance);
        b.put("sun_distance_au", distance);
        b.put("light_time_s", distance * 499.005 + 0.0005);
        for (String column : List.of(
                "elongation_deg",
                "phase_angle_deg",
                "diameter_equatorial_arcsec",
                "diameter_polar_arcsec",
                "sub_earth_lat_centric_deg",
                "sub_earth_lat_graphic_deg",
                "sub_solar_lat_centric_deg",
                "sub_solar_lat_graphic_deg",
                "ring_opening_earth_deg",
                "ring_opening_sun_deg",
                "ring_outer_semi_major_arcsec",
                "ring_outer_semi_minor_arcsec")) {
            b.put(column, 0.001);
        }
        for (String point : List.of("sub_earth", "sub_solar")) {
            for (String system : List.of("", "_sys1", "_sys2", "_sys3")) {
                b.put(point + "_lon" + system + "_deg", uranus ? 0.002 : 0.001);
            }
        }
        b.put("illuminated_fraction", 1e-5);
        b.put("north_pole_pa_icrf_deg", 0.002);
        b.put("north_pole_pa_deg", uranus ? 0.04 : 0.01);
        double limb = 0.01 / Math.sin(Math.toRadians(disc.phaseAngleDeg()));
        b.put("bright_limb_pa_deg", limb);
        b.put("defect_pa_deg", limb);
        return b;
    }
}
