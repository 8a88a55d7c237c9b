/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Filing;
import oblate.archive.FilingFacts;
import oblate.archive.FilingOutcome;
import oblate.archive.Site;
import oblate.base.PluginHost;
import oblate.base.Progress;
import oblate.disc.DiscFit;
import oblate.disc.Placement;
import oblate.disc.PlacementCovariance;
import oblate.disc.Trust;
import oblate.image.CaptureTimes;
import oblate.image.ImageFormat;
import oblate.image.PictureLimits;
import oblate.image.PictureReader;
import oblate.image.TimeWish;
import oblate.planet.jupiter.Jupiter;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** A small archive of Jupiter's moons: pictures with a disc, Io and its shadow marked where an independent table has them. */
final class MoonArchive {
    private static final PlanetModel JUPITER = new Jupiter();

    /** Io, its shadow: an independent table's instant and places (JPL DE431 and satellite orbits by way of the Swiss Ephemeris 2.10). */
    static final Instant SEEN = Instant.parse("2004-12-04T17:16:58Z");

    private static final double[] IO = {-0.11926, 0.25667};
    private static final double[] SHADOW = {0.70503, 0.24117};
    private static final double RADIUS_PX = 100;

    private final Path work;

    /** @param work an empty folder */
    MoonArchive(Path work) {
        this.work = work;
    }

    private CommandRun run(String... words) {
        return CommandRun.of(work.resolve("settings"), "", words);
    }

    /** Two pictures of a clock that is 60 s fast, with Io and its shadow marked where the table has them, and states said by marks. */
    Path made() throws IOException {
        Path folder = work.resolve("season");
        Clock clock = Clock.fixed(Instant.parse("2004-12-08T00:00:00Z"), ZoneOffset.UTC);
        try (Archive archive = Archive.create(folder, List.of(JUPITER), clock);
                PluginHost host = PluginHost.bundledOnly()) {
            archive.keepSite(new Site("Garden", 48.2, 16.3, 170, Optional.empty()));
            PictureReader reader = new PictureReader(host.load(ImageFormat.class), PictureLimits.usual());
            Filing filing = new Filing(archive, reader, new CaptureTimes(), Sky.bundled(), List.of(JUPITER));
            for (int i = 0; i < 4; i++) {
                ArchivedPicture picture = filed(filing, i, SEEN.plusSeconds(60 + (i < 2 ? 0 : -5000 + 400L * i)));
                archive.keepFit(
                        picture.id(),
                        new DiscFit(
                                new Placement(160, 120, RADIUS_PX, 0, false),
                                PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.1),
                                Trust.TRUSTED,
                                List.of(),
                                "forward model 1",
                                "grey",
                                0.2,
                                200,
                                List.of()),
                        "DE405",
                        "Oblate 0.1.0");
            }
        }
        for (String picture : new String[] {"1", "2"}) {
            mark(folder, picture, IO, "Io", "moon", "centre");
            mark(folder, picture, SHADOW, "Io's shadow", "shadow", "centre");
        }
        mark(folder, "3", new double[] {-1.1, 0.2}, "Io", "moon", "clear");
        mark(folder, "4", new double[] {-0.9, 0.2}, "Io", "moon", "transit: on disc");
        return folder;
    }

    private ArchivedPicture filed(Filing filing, int i, Instant time) throws IOException {
        BufferedImage image = new BufferedImage(320, 240, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setSample(5, 5, 0, 40 + i);
        Path file = work.resolve("jupiter-" + i + ".png");
        ImageIO.write(image, "png", file.toFile());
        FilingFacts facts = new FilingFacts(
                Optional.of("jupiter"),
                Optional.of("Garden"),
                Optional.of("A. Observer"),
                Optional.empty(),
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

    void mark(Path archive, String picture, double[] at, String feature, String kind, String what) {
        CommandRun run = run(
                "marks",
                "add",
                picture,
                "--archive",
                archive.toString(),
                "--at",
                String.format(Locale.ROOT, "%.3f,%.3f", 160 + RADIUS_PX * at[0], 120 - RADIUS_PX * at[1]),
                "--feature",
                feature,
                "--kind",
                kind,
                "--what",
                what);
        assertThat(run.status()).as(run.err()).isZero();
    }
}
