/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive.testing;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
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
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/** Fills a small archive for tests: pictures of Jupiter on which nothing is to be seen, with invented fits and marks. Needs the picture formats. */
public final class PracticePictures {
    private final Archive archive;
    private final Filing filing;
    private final Path work;

    /**
     * @param archive the open archive; the caller's to close
     * @param planets what it was opened with
     * @param work where the files are made that are filed
     */
    public PracticePictures(Archive archive, List<PlanetModel> planets, Path work) {
        this.archive = archive;
        this.work = work;
        try (PluginHost host = PluginHost.bundledOnly()) {
            PictureReader reader = new PictureReader(host.load(ImageFormat.class), PictureLimits.usual());
            filing = new Filing(archive, reader, new CaptureTimes(), Sky.bundled(), planets);
        }
    }

    /** That Jupiter was taken, when, and by whom. */
    public static FilingFacts facts(Instant mid) {
        return facts(mid, Optional.empty(), Optional.empty());
    }

    /** The same, with a site of the archive and a kit. */
    public static FilingFacts facts(Instant mid, Optional<String> site, Optional<String> kit) {
        return new FilingFacts(
                Optional.of("jupiter"),
                site,
                Optional.of("A. Observer"),
                kit,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                takenAt(mid),
                false);
    }

    /** The wish for a time. */
    public static TimeWish takenAt(Instant mid) {
        return new TimeWish(
                Optional.of(mid.toString()),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    /** Files a dark picture, 64 pixels by 64, that differs from all others by its number (0 to 215). */
    public ArchivedPicture filed(int number, FilingFacts facts) throws IOException {
        BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setSample(5, 5, 0, 40 + number);
        return filed("jupiter-" + number, image, facts);
    }

    /** Files a picture as a PNG of a name. */
    public ArchivedPicture filed(String name, BufferedImage image, FilingFacts facts) throws IOException {
        Path file = work.resolve(name + ".png");
        ImageIO.write(image, "png", file.toFile());
        FilingOutcome outcome =
                filing.file(List.of(file), facts, Progress.SILENT).get(0);
        if (outcome instanceof FilingOutcome.Filed done) {
            return done.picture();
        }
        throw new AssertionError(outcome);
    }

    /** Keeps a trusted fit of a disc in the middle of the picture, 25 pixels in radius. */
    public StoredFit fitted(ArchivedPicture picture) {
        DiscFit fit = new DiscFit(
                new Placement(32, 32, 25, 0, false),
                PlacementCovariance.diagonal(0.1, 0.1, 0.1, 0.3),
                Trust.TRUSTED,
                List.of(),
                "forward model 1",
                "grey",
                0.2,
                200,
                List.of());
        return archive.keepFit(picture.id(), fit, "DE405", "Oblate 0.1.0");
    }

    /**
     * Adds a feature of Jupiter.
     *
     * @param kind such as "oval"
     * @param system the rotation system it is told in, if one is chosen
     * @return its number
     */
    public long feature(String name, String kind, Optional<String> system) {
        return archive.addFeature(new Feature(0, "jupiter", name, kind, Optional.empty(), system, Optional.empty()))
                .id();
    }

    /** Errors of a mark: 0.4° in longitude, 0.3° in latitude in all. */
    public static ErrorBudget errors() {
        return new ErrorBudget(0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.4, 0.3);
    }

    /**
     * The centre of something, to be marked.
     *
     * @param planet whose figure tells the planetocentric latitude
     * @param feature its number, if it has a name
     * @param lonIauDeg longitude in the IAU's system (deg), any turn
     * @param latGraphicDeg planetographic latitude (deg)
     */
    public static NewMark mark(
            PlanetModel planet, StoredFit fit, Optional<Long> feature, double lonIauDeg, double latGraphicDeg) {
        return mark(planet, fit, feature, lonIauDeg, latGraphicDeg, "centre");
    }

    /** The same of another part of it. */
    public static NewMark mark(
            PlanetModel planet,
            StoredFit fit,
            Optional<Long> feature,
            double lonIauDeg,
            double latGraphicDeg,
            String what) {
        return new NewMark(
                fit.pictureId(),
                Optional.of(fit.id()),
                feature,
                new PixelPoint(30, 40),
                0.3,
                Optional.of(new SurfacePoint(
                        ((lonIauDeg % 360) + 360) % 360,
                        latGraphicDeg,
                        planet.globe().figure().centricFromGraphicDeg(latGraphicDeg),
                        30,
                        31,
                        5)),
                Optional.of(errors()),
                what,
                "A. Measurer");
    }
}
