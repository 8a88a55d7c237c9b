package oblate.sample;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is true about a sample season: every picture, every feature with its drift, and where each feature stands in each picture. Immutable.
 *
 * <p>Pixels: centres are whole numbers, origin top left as displayed, x right, y down. Longitudes are planetographic, west-positive. Truth belongs to the green channel
 * of colour pictures, and to every grey picture.
 *
 * @param epoch instant at which the features' longitudes are given
 * @param pictures in the order of the season
 * @param features what drifts
 * @param marks features and moons in pictures
 */
public record SampleTruth(Instant epoch, List<Picture> pictures, List<Feature> features, List<Mark> marks) {

    /** Copies the lists. */
    public SampleTruth {
        pictures = List.copyOf(pictures);
        features = List.copyOf(features);
        marks = List.copyOf(marks);
    }

    /**
     * One picture.
     *
     * @param file path below the season's folder, with forward slashes
     * @param planet id of the planet
     * @param mid true middle of the capture
     * @param stated what a careful reader takes for the middle, clock errors included; empty when the file carries no time
     * @param carrier where the time is
     * @param clockErrorS stated minus true (s); 0 for a right clock
     * @param wrongClock what is wrong with the clock, or empty
     * @param kitId kit
     * @param evening date of the evening at the site
     * @param seeing Antoniadi class, 1…5
     * @param fileKind kind of file
     * @param widthPx frame
     * @param heightPx frame
     * @param channels 1 grey, 3 colour
     * @param cxPx centre of the globe
     * @param cyPx centre of the globe
     * @param rePx equatorial radius (px)
     * @param poleAngleDeg direction of the north pole from straight up, counter-clockwise as displayed (deg, −180…180)
     * @param mirrored mirror image of the sky
     * @param cm1Deg central meridian in System I at {@code mid} (deg)
     * @param cm2Deg in System II
     * @param cm3Deg in System III
     * @param subEarthLatGraphicDeg planetographic latitude under the Earth (deg)
     * @param captureS length of the capture (s)
     * @param seeingArcsec blur before sharpening (arcsec, sigma)
     * @param blurPx the same (px)
     * @param redShiftXPx how far red stands right of green (px); blue as far left
     * @param redShiftYPx how far red stands below green (px); blue as far above
     */
    public record Picture(
            String file,
            String planet,
            Instant mid,
            Optional<Instant> stated,
            TimeCarrier carrier,
            int clockErrorS,
            String wrongClock,
            String kitId,
            LocalDate evening,
            int seeing,
            FileKind fileKind,
            int widthPx,
            int heightPx,
            int channels,
            double cxPx,
            double cyPx,
            double rePx,
            double poleAngleDeg,
            boolean mirrored,
            double cm1Deg,
            double cm2Deg,
            double cm3Deg,
            double subEarthLatGraphicDeg,
            double captureS,
            double seeingArcsec,
            double blurPx,
            double redShiftXPx,
            double redShiftYPx) {}

    /**
     * A feature or moon in a picture.
     *
     * @param picture the picture's {@code file}
     * @param feature the feature's name, or the moon's, or the moon's with " shadow"
     * @param kind what it is, words
     * @param xPx where
     * @param yPx where
     * @param place where on the globe; empty for a moon
     */
    public record Mark(String picture, String feature, String kind, double xPx, double yPx, Optional<Place> place) {

        /** Angle between the surface's upright and the line of sight (deg), if it is on the globe. */
        public OptionalDouble emissionDeg() {
            return place.isPresent() ? OptionalDouble.of(place.get().emissionDeg()) : OptionalDouble.empty();
        }
    }

    /**
     * A place on the globe at the picture's true time.
     *
     * @param lon1Deg west longitude in System I (deg, 0…360)
     * @param lon2Deg in System II
     * @param lon3Deg in System III
     * @param latGraphicDeg planetographic latitude (deg)
     * @param emissionDeg angle between the surface's upright and the line of sight (deg)
     */
    public record Place(double lon1Deg, double lon2Deg, double lon3Deg, double latGraphicDeg, double emissionDeg) {}

    /** Pictures whose clock was wrong. */
    public List<Picture> wrongClocks() {
        return pictures.stream().filter(p -> p.clockErrorS() != 0).toList();
    }

    /** Pictures that carry no time. */
    public List<Picture> undated() {
        return pictures.stream().filter(p -> p.stated().isEmpty()).toList();
    }

    /** Marks of one picture. */
    public List<Mark> marksOf(Picture picture) {
        return marks.stream().filter(m -> m.picture().equals(picture.file())).toList();
    }

    /** The feature of a name, if there is one; moons are none. */
    public Optional<Feature> feature(String name) {
        return features.stream().filter(f -> f.name().equals(name)).findFirst();
    }

    /**
     * Reads the truth of a season from its {@code truth} folder; numbers are as written there, rounded.
     *
     * @param seasonFolder the folder {@link SampleSeason#writeTo} wrote
     * @throws oblate.base.ProblemException {@link SampleProblem#CANNOT_READ}
     */
    public static SampleTruth readFrom(Path seasonFolder) {
        return TruthTables.read(seasonFolder);
    }
}
