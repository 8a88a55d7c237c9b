/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

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

/** A small archive of invented marks: one feature followed for five weeks, one marked once, one never, one only on two pictures of an hour. */
final class FollowedSeason {
    /** Longitude in System III of the followed feature at the first picture (deg); it falls evenly. */
    static final double LON_DEG = 120;

    /** Its drift in System III (deg per day). */
    static final double DEG_PER_DAY = -0.234;

    /** Time of the first picture. */
    static final Instant START = Instant.parse("2024-11-01T21:00:00Z");

    private static final PlanetModel JUPITER = new Jupiter();

    private FollowedSeason() {}

    /** Made under a folder; returns the archive's own. */
    static Path in(Path work) throws IOException {
        return made(work, true);
    }

    /** The same with marks that have no feature's name. */
    static Path unnamedIn(Path work) throws IOException {
        return made(work, false);
    }

    private static Path made(Path work, boolean named) throws IOException {
        Path folder = work.resolve("season");
        Clock clock = Clock.fixed(Instant.parse("2024-12-08T00:00:00Z"), ZoneOffset.UTC);
        try (Archive archive = Archive.create(folder, List.of(JUPITER), clock);
                PluginHost host = PluginHost.bundledOnly()) {
            archive.keepSite(new Site("Garden", 48.2, 16.3, 170, Optional.empty()));
            Optional<Long> oval = named(named, archive, "Oval, \"A\"; 1");
            Optional<Long> lone = named(named, archive, "Lone");
            Optional<Long> brief = named(named, archive, "Brief");
            feature(archive, "Unmarked");
            PictureReader reader = new PictureReader(host.load(ImageFormat.class), PictureLimits.usual());
            Filing filing = new Filing(archive, reader, new CaptureTimes(), Sky.bundled(), List.of(JUPITER));
            for (int i = 0; i < 9; i++) {
                double day = i == 8 ? 1 / 24.0 : 5 * i;
                ArchivedPicture picture = filed(filing, work, i, START.plusSeconds(Math.round(day * 86_400)));
                StoredFit fit = archive.keepFit(picture.id(), discFit(), "DE405", "Oblate 0.1.0");
                archive.addMark(mark(picture, fit, oval, LON_DEG + DEG_PER_DAY * day, -22));
                if (i == 3) {
                    archive.addMark(mark(picture, fit, lone, 300, 8));
                }
                if (i == 0 || i == 8) {
                    archive.addMark(mark(picture, fit, brief, 33, 3));
                }
            }
        }
        return folder;
    }

    private static Optional<Long> named(boolean named, Archive archive, String name) {
        return named ? Optional.of(feature(archive, name)) : Optional.empty();
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
                Optional.of("Garden"),
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

    private static NewMark mark(
            ArchivedPicture picture, StoredFit fit, Optional<Long> feature, double lon, double lat) {
        return new NewMark(
                picture.id(),
                Optional.of(fit.id()),
                feature,
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
