/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import oblate.planet.jupiter.Jupiter;
import oblate.planet.mars.Mars;
import oblate.planet.neptune.Neptune;
import oblate.planet.saturn.Saturn;
import oblate.planet.uranus.Uranus;
import oblate.planet.venus.Venus;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Planets and invented series for the tests. */
final class Sets {
    static final PlanetModel JUPITER = new Jupiter();
    static final PlanetModel SATURN = new Saturn();
    static final PlanetModel URANUS = new Uranus();
    static final PlanetModel NEPTUNE = new Neptune();
    static final PlanetModel MARS = new Mars();
    static final PlanetModel VENUS = new Venus();
    static final Instant START = Instant.parse("2024-10-01T00:00:00Z");

    private Sets() {}

    static RotationSystem system(PlanetModel planet, String id) {
        return planet.globe().system(id).orElseThrow();
    }

    static Instant day(double days) {
        return START.plusMillis(Math.round(days * 86_400_000));
    }

    static LongitudePoint point(double days, double lonDeg, double sigmaDeg) {
        return new LongitudePoint(day(days), lonDeg, sigmaDeg, OptionalDouble.empty(), OptionalDouble.empty());
    }

    static LongitudePoint point(double days, double lonDeg, double sigmaDeg, double latDeg, double sigmaLatDeg) {
        return new LongitudePoint(
                day(days), lonDeg, sigmaDeg, OptionalDouble.of(latDeg), OptionalDouble.of(sigmaLatDeg));
    }

    static LongitudeSeries jupiter(String system, List<LongitudePoint> points) {
        return new LongitudeSeries("spot", JUPITER, system(JUPITER, system), points);
    }

    /** Marks of an exact line. */
    static List<LongitudePoint> line(double lonDeg, double rate, double sigmaDeg, double... days) {
        List<LongitudePoint> points = new ArrayList<>();
        for (double day : days) {
            points.add(point(day, lonDeg + rate * day, sigmaDeg));
        }
        return points;
    }

    /** One invented series with its truth and the least error any unbiased fit to its good marks can have. */
    record Simulated(LongitudeSeries series, double lonDeg, double rate, double boundRate) {}

    /** What to invent. */
    record Recipe(int marks, double rate, double falseShare, double trueSigmaFactor, double spanDays, double gapFrom, double gapDays) {}

    static Simulated simulated(SplittableRandom random, Recipe recipe) {
        double lon = random.nextDouble(0, 360);
        List<LongitudePoint> points = new ArrayList<>();
        double w = 0;
        double wx = 0;
        double wxx = 0;
        while (points.size() < recipe.marks()) {
            double day = random.nextDouble(0, recipe.spanDays());
            if (day > recipe.gapFrom() && day < recipe.gapFrom() + recipe.gapDays()) {
                continue;
            }
            double sigma = random.nextDouble(0.5, 1);
            double value = lon + recipe.rate() * day + gauss(random) * sigma * recipe.trueSigmaFactor();
            if (random.nextDouble() < recipe.falseShare()) {
                value += random.nextDouble(6, 25) * (random.nextBoolean() ? 1 : -1);
            } else {
                double weight = 1 / (sigma * sigma * recipe.trueSigmaFactor() * recipe.trueSigmaFactor());
                w += weight;
                wx += weight * day;
                wxx += weight * day * day;
            }
            points.add(point(day, ((value % 360) + 360) % 360, sigma));
        }
        return new Simulated(jupiter("2", points), lon, recipe.rate(), 1 / Math.sqrt(wxx - wx * wx / w));
    }

    static double gauss(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
