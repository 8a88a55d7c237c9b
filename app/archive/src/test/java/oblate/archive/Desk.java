/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.imageio.ImageIO;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.ErrorBudget;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.SurfacePoint;
import oblate.disc.Trust;
import oblate.disc.Witness;
import oblate.image.CaptureTimes;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** What tests of the archive work with: real planets, formats and sky, and small pictures made on the spot. */
final class Desk {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2031-03-25T01:00:00Z"), ZoneOffset.UTC);
    static final List<PlanetModel> PLANETS = PluginHost.bundledOnly().load(PlanetModel.class);
    static final Sky SKY = Sky.bundled();
    private static final PictureReader READER =
            new PictureReader(PluginHost.bundledOnly().load(ImageFormat.class), PictureLimits.usual());

    private Desk() {}

    static Filing filing(Archive archive) {
        return new Filing(archive, READER, new CaptureTimes(), SKY, PLANETS);
    }

    static List<FilingOutcome> file(Archive archive, FilingFacts facts, Path... paths) {
        return filing(archive).file(List.of(paths), facts, Progress.SILENT);
    }

    /** A small grey PNG whose bytes differ from seed to seed. */
    static Path picture(Path folder, String name, int seed) throws IOException {
        Files.createDirectories(folder);
        BufferedImage image = new BufferedImage(40, 30, BufferedImage.TYPE_BYTE_GRAY);
        Random random = new Random(seed);
        for (int i = 0; i < 1200; i++) {
            image.setRGB(i % 40, i / 40, random.nextInt() | 0xFF000000);
        }
        Path file = folder.resolve(name);
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    /** Files one picture of Jupiter and gives its entry. */
    static ArchivedPicture filed(Archive archive, Path folder, String time, int seed) throws IOException {
        Path file = picture(folder, "p-" + time + ".png", seed);
        FilingOutcome outcome =
                file(archive, FilingFacts.forPlanet("jupiter"), file).get(0);
        if (outcome instanceof FilingOutcome.Filed done) {
            return done.picture();
        }
        throw new AssertionError(outcome);
    }

    static DiscFit fit(double x) {
        double[][] covariance = {{0.04, 0.01, 0, 0}, {0.01, 0.05, 0, 0}, {0, 0, 0.09, 0.001}, {0, 0, 0.001, 0.02}};
        return new DiscFit(
                new Placement(x, 15.5, 10.25, -170.5, true),
                new PlacementCovariance(covariance),
                Trust.DOUBTFUL,
                List.of("first reason", "second reason"),
                "test 1",
                "grey",
                0.31,
                77,
                List.of(new Witness("pole angle", "limb", 24.1, 0.8), new Witness("pole angle", "belts", 24.41, 0.14)));
    }

    static NewMark mark(ArchivedPicture picture, Optional<Long> fit, Optional<Long> feature, double lonIau) {
        return new NewMark(
                picture.id(),
                fit,
                feature,
                new PixelPoint(12.5, 13.25),
                0.5,
                Optional.of(new SurfacePoint(lonIau, -22.4, -19.8, 30.5, 28.25, -12)),
                Optional.of(new ErrorBudget(0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1)),
                "centre",
                "tester");
    }
}
