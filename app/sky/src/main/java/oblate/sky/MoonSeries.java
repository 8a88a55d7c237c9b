/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import oblate.base.ProblemException;

/**
 * A moon's motion as sums of cosines in cylindrical coordinates about a fixed plane.
 *
 * <p>With t days of TDB from J2000 and T = t/36525: r, z (km) and θ (rad) = c0 + c1·t + c2·T² + c3·T³ + Σ value·Tᵖ·cos(phase + rate·t), the power p
 * being 0 for the kind {@code cos}, 1 for {@code cosT}, 2 for {@code cosT2} and 3 for {@code cosT3}. With u = r cos θ, v = r sin θ, node N and inclination I of the plane on the ICRF equator: X = u cos N − v sin N cos I + z sin N sin I,
 * Y = u sin N + v cos N cos I − z cos N sin I, Z = v sin I + z cos I.
 */
public final class MoonSeries implements MoonMotion {
    /** Kinds of cosines, by the power of T on their value. */
    private static final List<String> COSINES = List.of("cos", "cosT", "cosT2", "cosT3");

    private static final List<String> POLYNOMIAL = List.of("c0", "c1", "c2", "c3");
    private static final List<String> FRAME = List.of("node", "inclination");

    private final double firstTdbDay;
    private final double lastTdbDay;
    private final Sum r;
    private final Sum theta;
    private final Sum z;
    private final Vec3 uAxis;
    private final Vec3 vAxis;
    private final Vec3 zAxis;

    private MoonSeries(
            double firstTdbDay, double lastTdbDay, Map<String, List<double[]>> parts, double node, double inclination) {
        this.firstTdbDay = firstTdbDay;
        this.lastTdbDay = lastTdbDay;
        r = new Sum(parts, "r");
        theta = new Sum(parts, "theta");
        z = new Sum(parts, "z");
        Turn turn = Turn.NONE.thenZ(node).thenX(inclination);
        uAxis = turn.xAxis();
        vAxis = turn.yAxis();
        zAxis = turn.zAxis();
    }

    /**
     * Reads the series of several moons from a table with the columns
     * {@code moon, coordinate, kind, value, phase_rad, rate_rad_per_day}; lines that begin with # are words.
     *
     * @param in the table; not closed here
     * @param name of the table, for a refusal
     * @param firstTdbDay start of the span in which the series holds, days of TDB from J2000
     * @param lastTdbDay its end
     * @return by moon, in the order of the table
     * @throws ProblemException {@link SkyProblem#BAD_SERIES} when a line is not understood
     * @throws IOException when reading fails
     */
    public static Map<String, MoonSeries> read(InputStream in, String name, double firstTdbDay, double lastTdbDay)
            throws IOException {
        Map<String, Map<String, List<double[]>>> byMoon = new LinkedHashMap<>();
        for (String line :
                new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
            if (line.isBlank() || line.startsWith("#") || line.startsWith("moon,")) {
                continue;
            }
            String[] cells = line.split(",", -1);
            try {
                checkKind(cells, name, line);
                byMoon.computeIfAbsent(cells[0], m -> new LinkedHashMap<>())
                        .computeIfAbsent(cells[1] + " " + cells[2], c -> new ArrayList<>())
                        .add(new double[] {number(cells[3]), number(cells[4]), number(cells[5])});
            } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
                throw notUnderstood(e, name, line);
            }
        }
        Map<String, MoonSeries> series = new LinkedHashMap<>();
        byMoon.forEach((moon, parts) -> {
            for (String needed : List.of("frame node", "frame inclination", "r c0", "theta c0", "theta c1")) {
                if (!parts.containsKey(needed)) {
                    throw new ProblemException(SkyProblem.BAD_SERIES, name, moon + " has no \"" + needed + "\"");
                }
            }
            double node = parts.get("frame node").get(0)[0];
            double inclination = parts.get("frame inclination").get(0)[0];
            series.put(moon, new MoonSeries(firstTdbDay, lastTdbDay, parts, node, inclination));
        });
        return series;
    }

    private static void checkKind(String[] cells, String name, String line) {
        boolean known = cells[1].equals("frame")
                ? FRAME.contains(cells[2])
                : List.of("r", "theta", "z").contains(cells[1])
                        && (POLYNOMIAL.contains(cells[2]) || COSINES.contains(cells[2]));
        if (!known) {
            throw notUnderstood(null, name, line);
        }
    }

    private static ProblemException notUnderstood(Throwable cause, String name, String line) {
        return new ProblemException(cause, SkyProblem.BAD_SERIES, name, "its line \"" + line + "\" is not understood");
    }

    private static double number(String cell) {
        return cell.isEmpty() ? 0 : Double.parseDouble(cell);
    }

    @Override
    public Vec3 fromPlanetKm(double tdbDays) {
        double[] xyz = new double[3];
        fromPlanetKm(tdbDays, xyz);
        return new Vec3(xyz[0], xyz[1], xyz[2]);
    }

    @Override
    public void fromPlanetKm(double tdbDays, double[] xyzKm) {
        double radius = r.at(tdbDays);
        double angle = theta.at(tdbDays);
        double u = radius * Math.cos(angle);
        double v = radius * Math.sin(angle);
        double w = z.at(tdbDays);
        xyzKm[0] = u * uAxis.x() + v * vAxis.x() + w * zAxis.x();
        xyzKm[1] = u * uAxis.y() + v * vAxis.y() + w * zAxis.y();
        xyzKm[2] = u * uAxis.z() + v * vAxis.z() + w * zAxis.z();
    }

    @Override
    public double firstTdbDay() {
        return firstTdbDay;
    }

    @Override
    public double lastTdbDay() {
        return lastTdbDay;
    }

    /** One coordinate: polynomial, and cosines by the power of time on their values. */
    private static final class Sum {
        private final double c0;
        private final double c1;
        private final double c2;
        private final double c3;
        private final List<Cosines> byPower;

        Sum(Map<String, List<double[]>> parts, String coordinate) {
            c0 = constant(parts, coordinate + " c0");
            c1 = constant(parts, coordinate + " c1");
            c2 = constant(parts, coordinate + " c2");
            c3 = constant(parts, coordinate + " c3");
            int powers = COSINES.size();
            while (powers > 0 && !parts.containsKey(coordinate + " " + COSINES.get(powers - 1))) {
                powers--;
            }
            byPower = COSINES.subList(0, powers).stream()
                    .map(kind -> new Cosines(parts.getOrDefault(coordinate + " " + kind, List.of())))
                    .toList();
        }

        private static double constant(Map<String, List<double[]>> parts, String key) {
            return parts.containsKey(key) ? parts.get(key).get(0)[0] : 0;
        }

        double at(double t) {
            double centuries = t / 36525;
            double sum = 0;
            for (int power = byPower.size() - 1; power >= 0; power--) {
                sum = sum * centuries + byPower.get(power).at(t);
            }
            return sum + c0 + c1 * t + (c2 + c3 * centuries) * centuries * centuries;
        }
    }

    /** Cosines of steady rates. */
    private static final class Cosines {
        private final double[] value;
        private final double[] phaseTurns;
        private final double[] turnsPerDay;

        Cosines(List<double[]> lines) {
            value = lines.stream().mapToDouble(c -> c[0]).toArray();
            phaseTurns = lines.stream().mapToDouble(c -> c[1] * Turns.PER_RAD).toArray();
            turnsPerDay = lines.stream().mapToDouble(c -> c[2] * Turns.PER_RAD).toArray();
        }

        double at(double t) {
            double sum = 0;
            for (int i = 0; i < value.length; i++) {
                sum += value[i] * Turns.cos(phaseTurns[i] + turnsPerDay[i] * t);
            }
            return sum;
        }
    }
}
