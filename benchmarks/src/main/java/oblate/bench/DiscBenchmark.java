/* SPDX-License-Identifier: Apache-2.0 */
package oblate.bench;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.ServiceLoader;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.DiscFitter;
import oblate.disc.DiscFrame;
import oblate.disc.FitHints;
import oblate.disc.FitOutcome;
import oblate.disc.MapBuilder;
import oblate.disc.MapFrame;
import oblate.disc.MapProjection;
import oblate.disc.Placement;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.PixelGrid;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Finding, fitting and unrolling the disc of a drawn picture of 1000 × 1000 px, beside the decoding of the same file and a plain copy of a map's size. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 4, time = 3)
@State(Scope.Benchmark)
public class DiscBenchmark {
    private static final int SIDE = 1000;
    private static final int MAP_WIDTH = 1440;
    private static final Instant WHEN = Instant.parse("2024-01-13T05:02:24Z");

    /** Which planet. */
    @Param({"jupiter", "saturn"})
    public String body;

    private final DiscFitter fitter = new DiscFitter();
    private final float[] sheet = new float[MAP_WIDTH * MAP_WIDTH / 2];
    private PictureReader reader;
    private Path file;
    private PixelGrid pixels;
    private ApparentDisc disc;
    private FitHints hints;
    private MapBuilder.Source source;
    private MapFrame map;

    /** Draws the picture. */
    @Setup
    public void draw() {
        PlanetModel planet = Planets.named(body);
        disc = Sky.bundled().disc(planet, WHEN);
        Placement truth = new Placement(503.3, 498.7, body.equals("saturn") ? 150 : 380, 12, false);
        hints = FitHints.of(9, 5, false);
        DiscFrame frame = new DiscFrame(disc, truth);
        BufferedImage image = new BufferedImage(SIDE, SIDE, BufferedImage.TYPE_USHORT_GRAY);
        for (int i = 0; i < SIDE * SIDE; i++) {
            double light = light(frame, i % SIDE, i / SIDE);
            image.getRaster().setSample(i % SIDE, i / SIDE, 0, (int) (50_000 * light));
        }
        try {
            file = Files.createTempFile("drawn", ".png");
            file.toFile().deleteOnExit();
            ImageIO.write(image, "png", file.toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<ImageFormat> formats = ServiceLoader.load(ImageFormat.class).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
        reader = new PictureReader(formats, PictureLimits.usual());
        pixels = reader.decode(file).pixels();
        source = new MapBuilder.Source("drawn", pixels, frame);
        map = new MapFrame(
                planet,
                planet.globe().iauSystem(),
                MapProjection.CYLINDRICAL,
                true,
                180,
                0,
                MAP_WIDTH,
                MAP_WIDTH / 2,
                360.0 / MAP_WIDTH);
    }

    /** A plain soft-edged disc with belts, and rings of even light. */
    private double light(DiscFrame frame, int x, int y) {
        double sum = 0;
        for (int s = 0; s < 9; s++) {
            double px = x + 1.5 * (s % 3 - 1);
            double py = y + 1.5 * (s / 3 - 1);
            var point = frame.locate(px, py);
            if (point.isPresent()) {
                double lat = Math.toRadians(point.get().latGraphicDeg());
                double sun = Math.max(0, Math.cos(Math.toRadians(point.get().incidenceDeg())));
                sum += Math.pow(sun, 0.85) * (0.8 + 0.15 * Math.sin(9 * lat) + 0.05 * Math.sin(21 * lat));
            } else if (body.equals("saturn")) {
                sum += ring(frame, px, py);
            }
        }
        return sum / 9 + 0.002 * ((x * 7919 + y * 104_729) % 17) / 17;
    }

    private double ring(DiscFrame frame, double px, double py) {
        Placement p = frame.placement();
        double a = Math.toRadians(p.poleAngleDeg());
        double dx = (px - p.centreXPx()) / p.equatorialRadiusPx();
        double dy = (py - p.centreYPx()) / p.equatorialRadiusPx();
        double right = dx * Math.cos(a) - dy * Math.sin(a);
        double high = -dx * Math.sin(a) - dy * Math.cos(a);
        double tilt = Math.sin(Math.toRadians(disc.subEarth().latCentricDeg()));
        double r = Math.hypot(right, high / tilt);
        return r > 1.526 && r < 1.95 ? 0.8 : r > 2.025 && r < 2.27 ? 0.5 : 0;
    }

    /** Reading the file. */
    @Benchmark
    public PixelGrid decode() {
        return reader.decode(file).pixels();
    }

    /** The first outline. */
    @Benchmark
    public Placement outline() {
        return fitter.outline(pixels, disc, hints).orElseThrow();
    }

    /** The full fit. */
    @Benchmark
    public DiscFit fit() {
        return ((FitOutcome.Fitted) fitter.fit(pixels, disc, hints, Progress.SILENT)).fit();
    }

    /** A map of 1440 × 720, darkening taken out. */
    @Benchmark
    public Object map() {
        return new MapBuilder().draw(map, List.of(source), new MapBuilder.Manner(75, true), Progress.SILENT);
    }

    /** A plain copy of that size. */
    @Benchmark
    public float[] copyOfAMap() {
        return sheet.clone();
    }
}
