/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.Filing;
import oblate.archive.FilingFacts;
import oblate.archive.FilingOutcome;
import oblate.archive.NewMark;
import oblate.archive.Site;
import oblate.archive.StoredFit;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.ErrorBudget;
import oblate.disc.PixelPoint;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.SurfacePoint;
import oblate.disc.Trust;
import oblate.image.CaptureTimes;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.TimeWish;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** A small archive of invented marks: two features followed for five weeks, one marked once, one never. */
final class Season {
    static final String OVAL = "Oval";
    static final String SPOT = "Spot, fast";
    static final String SITE = "Garden";

    private static final Instant START = Instant.parse("2024-11-01T21:00:00Z");
    private static final PlanetModel JUPITER = new Jupiter();

    private Season() {}

    /** Made in a folder that is not there yet. */
    static void make(Path folder, Path work) throws IOException {
        Clock clock = Clock.fixed(Instant.parse("2024-12-08T00:00:00Z"), ZoneOffset.UTC);
        try (Archive archive = Archive.create(folder, List.of(JUPITER), clock);
                PluginHost host = PluginHost.bundledOnly()) {
            archive.keepSite(new Site(SITE, 48.2, 16.3, 170, Optional.empty()));
            long oval = feature(archive, OVAL);
            long spot = feature(archive, SPOT);
            long lone = feature(archive, "Lone");
            feature(archive, "Unmarked");
            PictureReader reader = new PictureReader(host.load(ImageFormat.class), PictureLimits.usual());
            Filing filing = new Filing(archive, reader, new CaptureTimes(), Sky.bundled(), List.of(JUPITER));
            for (int i = 0; i < 8; i++) {
                double day = 5 * i;
                ArchivedPicture picture = filed(filing, work, i, START.plusSeconds(Math.round(day * 86_400)));
                StoredFit fit = archive.keepFit(picture.id(), discFit(), "DE405", "Oblate 0.1.0");
                archive.addMark(mark(picture, fit, oval, 120 - 0.234 * day, -22));
                archive.addMark(mark(picture, fit, spot, 250 + 1.1 * day, 16));
                if (i == 3) {
                    archive.addMark(mark(picture, fit, lone, 300, 8));
                }
            }
        }
    }

    private static long feature(Archive archive, String name) {
        return archive.addFeature(
                        new Feature(0, "jupiter", name, "oval", Optional.empty(), Optional.of("3"), Optional.empty()))
                .id();
    }

    private static ArchivedPicture filed(Filing filing, Path work, int i, Instant time) throws IOException {
        BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setSample(5, 5, 0, 40 + i);
        Path file = work.resolve("jupiter-" + i + ".png");
        ImageIO.write(image, "png", file.toFile());
        FilingFacts facts = new FilingFacts(
                Optional.of("jupiter"),
                Optional.of(SITE),
                Optional.of("A. Observer"),
                Optional.of("Long tube"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                new TimeWish(
                        Optional.of(time.toString()),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()),
                false);
        return ((FilingOutcome.Filed)
                        filing.file(List.of(file), facts, Progress.SILENT).get(0))
                .picture();
    }

    private static DiscFit discFit() {
        return new DiscFit(
                new Placement(32, 32, 25, 0, false),
                PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.3),
                Trust.TRUSTED,
                List.of(),
                "forward model 1",
                "grey",
                0.2,
                200,
                List.of());
    }

    private static NewMark mark(ArchivedPicture picture, StoredFit fit, long feature, double lon, double lat) {
        return new NewMark(
                picture.id(),
                Optional.of(fit.id()),
                Optional.of(feature),
                new PixelPoint(30, 40),
                0.3,
                Optional.of(new SurfacePoint(
                        ((lon % 360) + 360) % 360,
                        lat,
                        JUPITER.globe().figure().centricFromGraphicDeg(lat),
                        30,
                        31,
                        5)),
                Optional.of(new ErrorBudget(0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.4, 0.3)),
                "centre",
                "A. Measurer");
    }
}
