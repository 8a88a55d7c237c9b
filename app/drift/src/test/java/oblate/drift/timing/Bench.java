/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import oblate.base.Progress;
import oblate.disc.DiscFrame;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.planet.jupiter.Jupiter;
import oblate.planet.saturn.Saturn;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Planets, tables, and pictures in which moons stand where an independent table has them. */
final class Bench {
    static final Sky SKY = Sky.bundled();
    static final PlanetModel JUPITER = new Jupiter();
    static final PlanetModel SATURN = new Saturn();

    private Bench() {}

    static PlanetModel planet(CSVRecord row) {
        return row.get("planet").equals("jupiter") ? JUPITER : SATURN;
    }

    static MoonFacts moon(PlanetModel planet, String id) {
        return planet.moons().stream()
                .filter(m -> m.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    static List<CSVRecord> rows(String table) {
        try (Reader text = new InputStreamReader(Bench.class.getResourceAsStream(table), StandardCharsets.UTF_8);
                CSVParser parser = CSVParser.parse(
                        text,
                        CSVFormat.RFC4180
                                .builder()
                                .setHeader()
                                .setSkipHeaderRecord(true)
                                .setCommentMarker('#')
                                .get())) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Timings work(PlanetModel planet, List<PlaceMark> marks, List<StateSaid> states) {
        return new MoonTimings(SKY, planet).of(marks, states, Progress.SILENT);
    }

    /** How well a picture is taken and measured: standard errors. */
    record Quality(double pickPx, double centrePx, double radiusPx, double angleDeg) {
        static final Quality EXACT = new Quality(1e-3, 0, 0, 0);
        static final Quality USUAL = new Quality(0.6, 0.25, 0.4, 0.3);
    }

    /** What the fits of one night have in common: errors of centre x, y along and across the equator, radius, angle, in standard errors. */
    record Lean(double west, double north, double radius, double angle) {
        static final Lean NONE = new Lean(0, 0, 0, 0);

        static Lean drawn(Random random) {
            double root = Math.sqrt(0.6);
            return new Lean(
                    root * random.nextGaussian(),
                    root * random.nextGaussian(),
                    root * random.nextGaussian(),
                    root * random.nextGaussian());
        }
    }

    /**
     * Something that stands at a given place of a picture.
     *
     * @param name of the picture
     * @param statedUtc what its clock says
     * @param x where it truly stands (radii)
     * @param y where it truly stands (radii)
     */
    record Seen(
            String name,
            MoonSubject subject,
            PlanetModel planet,
            Instant statedUtc,
            double sigmaTimeS,
            double x,
            double y) {}

    static PlaceMark mark(Random random, Seen seen, Quality q) {
        return mark(random, seen, q, Lean.NONE);
    }

    /**
     * A picture fitted and marked with errors drawn at random.
     *
     * @param lean what the fit's errors have in common with others of the night; the rest is drawn
     */
    static PlaceMark mark(Random random, Seen seen, Quality q, Lean lean) {
        double own = lean.equals(Lean.NONE) ? 1 : Math.sqrt(0.4);
        Placement truth = new Placement(
                300 + 20 * random.nextDouble(),
                200 + 20 * random.nextDouble(),
                60 + 120 * random.nextDouble(),
                360 * random.nextDouble(),
                random.nextBoolean());
        DiscFrame frame = new DiscFrame(SKY.disc(seen.planet(), seen.statedUtc()), truth);
        PixelPoint at = frame.placeOffset(seen.x(), seen.y());
        double r = truth.equatorialRadiusPx();
        PixelPoint centre = frame.placeOffset(
                q.centrePx() / r * (lean.west() + own * random.nextGaussian()),
                q.centrePx() / r * (lean.north() + own * random.nextGaussian()));
        int hand = truth.mirrored() ? -1 : 1;
        Placement fitted = new Placement(
                centre.xPx(),
                centre.yPx(),
                r + q.radiusPx() * (lean.radius() + own * random.nextGaussian()),
                truth.poleAngleDeg() + hand * q.angleDeg() * (lean.angle() + own * random.nextGaussian()),
                truth.mirrored());
        PixelPoint picked = new PixelPoint(
                at.xPx() + q.pickPx() * random.nextGaussian(), at.yPx() + q.pickPx() * random.nextGaussian());
        return new PlaceMark(
                Shot.look(seen.name(), seen.statedUtc(), seen.sigmaTimeS(), "", Optional.empty()),
                seen.subject(),
                fitted,
                PlacementCovariance.diagonal(q.centrePx(), q.centrePx(), q.radiusPx(), q.angleDeg()),
                picked,
                q.pickPx(),
                Optional.empty());
    }

    /**
     * Where the light of a moon lies (radii of the planet, x and y): toward the Sun by up to 0.59 of its radius times the sine of the phase angle, as much as a sphere
     * after Lambert has; a hand marks somewhere on the way there.
     */
    static double[] lit(Random random, MoonSubject subject, PlanetModel planet, Instant utc, double x, double y) {
        if (subject.shadow()) {
            return new double[] {x, y};
        }
        var disc = SKY.disc(planet, utc);
        double off = 0.59
                * random.nextDouble()
                * subject.moon().radiusKm()
                / planet.globe().figure().equatorialRadiusKm()
                * Math.sin(Math.toRadians(disc.phaseAngleDeg()));
        double angle = Math.toRadians(disc.brightLimbPaDeg() - disc.northPolePaDeg());
        return new double[] {x - off * Math.sin(angle), y + off * Math.cos(angle)};
    }

    static Instant plus(Instant time, double seconds) {
        return time.plusMillis(Math.round(seconds * 1000));
    }

    static double number(CSVRecord row, String column) {
        return Double.parseDouble(row.get(column));
    }
}
