/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import oblate.archive.Archive;
import oblate.archive.ArchiveProblem;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.MarkSearch;
import oblate.archive.NewMark;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.base.ProblemException;
import oblate.disc.DiscFrame;
import oblate.disc.FitHints;
import oblate.disc.MarkMeasurer;
import oblate.disc.PixelPoint;

/** Places marks on pictures of an archive, with the picture's current fit. */
final class Marking {
    /** Kinds that are not on the globe: a place in the picture is kept, but no longitude. */
    private static final Set<String> OFF_GLOBE = Set.of("moon");

    /** On the globe, but wanted at its very edge too, and marked where it is not seen: kept without a longitude there. */
    private static final String SHADOW = "shadow";

    private final Services services;
    private final Archive archive;
    private final double pickSigmaPx;
    private final String measurer;

    Marking(Services services, Archive archive, double pickSigmaPx, String measurer) {
        this.services = services;
        this.archive = archive;
        this.pickSigmaPx = pickSigmaPx;
        this.measurer = measurer;
    }

    /** A mark to be made. */
    record Wish(
            String picture,
            PixelPoint pixel,
            Optional<String> feature,
            Optional<String> kind,
            Optional<String> tone,
            String what) {}

    static PixelPoint point(String text) {
        String[] parts = text.split(",");
        try {
            if (parts.length == 2) {
                double x = Double.parseDouble(parts[0].strip());
                double y = Double.parseDouble(parts[1].strip());
                if (Double.isFinite(x) && Double.isFinite(y)) {
                    return new PixelPoint(x, y);
                }
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw new UsageException("\"" + text + "\" is no point; write x,y in pixels, e.g. 212.4,301.7");
    }

    static List<Wish> wishes(String file, Console console) {
        List<Wish> wishes = new ArrayList<>();
        for (CsvRows.Row row : CsvRows.read(file, console)) {
            wishes.add(new Wish(
                    row.needed("picture"),
                    new PixelPoint(row.number("x_px"), row.number("y_px")),
                    row.text("feature"),
                    row.text("kind"),
                    row.text("tone"),
                    row.text("what").orElse("centre")));
        }
        return wishes;
    }

    StoredMark add(Wish wish) {
        ArchivedPicture picture = archive.pictureCalled(wish.picture());
        Optional<String> kind = wish.feature()
                .flatMap(name -> known(picture, name))
                .map(Feature::kind)
                .or(wish::kind);
        // Measured first: a point that cannot be measured must not leave a new feature behind.
        NewMark measured = measure(picture, wish.pixel(), wish.what(), onGlobe(kind), Optional.empty());
        Optional<Long> feature =
                wish.feature().map(name -> featureNamed(picture, name, wish).id());
        return archive.addMark(withFeature(measured, feature));
    }

    StoredMark supersede(long markId, PixelPoint pixel, Optional<String> featureName, String reason) {
        StoredMark old = archive.marks(MarkSearch.all()).stream()
                .filter(m -> m.id() == markId)
                .findFirst()
                .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_SUCH_MARK, markId));
        ArchivedPicture picture = MarksCommand.pictureOf(archive, old);
        NewMark measured = measure(
                picture,
                pixel,
                old.mark().what(),
                old.mark().point().isEmpty() ? OnGlobe.NO : OnGlobe.YES,
                old.mark().featureId());
        Optional<Long> feature = featureName
                .map(name -> known(picture, name)
                        .orElseThrow(() -> new UsageException(
                                "feature \"" + name + "\" is not known; " + Nearest.hint(name, names(picture))))
                        .id())
                .or(() -> old.mark().featureId());
        return archive.supersedeMark(markId, withFeature(measured, feature), reason);
    }

    /** Whether a longitude is wanted. */
    private enum OnGlobe {
        YES,
        IF_IT_CAN,
        NO
    }

    private static OnGlobe onGlobe(Optional<String> kind) {
        return kind.map(k -> OFF_GLOBE.contains(k) ? OnGlobe.NO : k.equals(SHADOW) ? OnGlobe.IF_IT_CAN : OnGlobe.YES)
                .orElse(OnGlobe.YES);
    }

    private NewMark measure(
            ArchivedPicture picture, PixelPoint pixel, String what, OnGlobe onGlobe, Optional<Long> feature) {
        StoredFit fit = archive.currentFit(picture.id())
                .orElseThrow(() -> new ProblemException(CommandProblem.NO_FIT, picture.name()));
        Optional<MarkMeasurer.Measured> place = Optional.empty();
        if (onGlobe != OnGlobe.NO) {
            Subject subject = new Subjects(services, null).ofArchive(archive, picture, FitHints.none());
            DiscFrame frame = new DiscFrame(subject.disc(), fit.fit().placement());
            place = new MarkMeasurer().measure(frame, fit.fit().covariance(), pixel, pickSigmaPx, subject.timeSigmaS());
            if (place.isEmpty() && onGlobe == OnGlobe.YES) {
                throw new ProblemException(CommandProblem.OFF_DISC, picture.name(), pixel.xPx(), pixel.yPx());
            }
        }
        return new NewMark(
                picture.id(),
                Optional.of(fit.id()),
                feature,
                pixel,
                pickSigmaPx,
                place.map(MarkMeasurer.Measured::point),
                place.map(MarkMeasurer.Measured::errors),
                what,
                measurer);
    }

    private static NewMark withFeature(NewMark m, Optional<Long> feature) {
        return new NewMark(
                m.pictureId(),
                m.fitId(),
                feature,
                m.pixel(),
                m.pickSigmaPx(),
                m.point(),
                m.errors(),
                m.what(),
                m.measurer());
    }

    private Optional<Feature> known(ArchivedPicture picture, String name) {
        return picture.planetId().flatMap(planet -> archive.features(planet).stream()
                .filter(f -> f.name().equals(name))
                .findFirst());
    }

    private List<String> names(ArchivedPicture picture) {
        return picture.planetId().stream()
                .flatMap(planet -> archive.features(planet).stream())
                .map(Feature::name)
                .toList();
    }

    private Feature featureNamed(ArchivedPicture picture, String name, Wish wish) {
        return known(picture, name)
                .orElseGet(() -> archive.addFeature(new Feature(
                        0,
                        picture.planetId()
                                .orElseThrow(() -> new ProblemException(CommandProblem.NO_PLANET, picture.name())),
                        name,
                        wish.kind().orElse("spot"),
                        wish.tone(),
                        Optional.empty(),
                        Optional.empty())));
    }
}
