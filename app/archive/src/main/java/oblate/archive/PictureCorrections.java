/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.disc.DiscFrame;
import oblate.disc.MarkMeasurer;
import oblate.sky.ApparentDisc;
import oblate.sky.PlanetModel;
import oblate.sky.Sky;

/**
 * Corrects what an archive says of a filed picture, with all that follows from it, in one transaction. The file stays where it is, under its
 * name; what every source said of its time stays among the claims; the old words go to the history.
 *
 * <p>A corrected time moves the central meridians, and every mark is measured anew from its pixel (the old ones stay, superseded). The disc fit
 * is kept, since the disc hardly changes in a day; beyond that, and when the planet is another, fit and marks are withdrawn.
 */
public final class PictureCorrections {
    private static final Duration FIT_HOLDS = Duration.ofDays(1);

    private final Archive archive;
    private final Sky sky;
    private final MarkMeasurer measurer = new MarkMeasurer();

    /**
     * @param archive where the pictures are
     * @param sky computes the discs
     */
    public PictureCorrections(Archive archive, Sky sky) {
        this.archive = archive;
        this.sky = sky;
    }

    /**
     * Corrects one picture. Does nothing when the facts are what the catalog says already.
     *
     * @param reason why, for the history; not blank
     * @return the picture as it is now
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}, {@link ArchiveProblem#NO_SUCH_SITE},
     *     {@link ArchiveProblem#NO_SUCH_PLANET}, {@link ArchiveProblem#OUTSIDE_EPHEMERIS} or {@link ArchiveProblem#CANNOT_WRITE}
     */
    public ArchivedPicture correct(long pictureId, PictureFacts wanted, String reason) {
        if (reason.isBlank()) {
            throw new IllegalArgumentException("a correction needs a reason");
        }
        PictureFacts facts = wanted.withPlanet(wanted.planetId()
                .map(word -> PlanetWord.named(word, archive.planets()).id()));
        return archive.together(step -> {
            ArchivedPicture before = step.picture(pictureId);
            if (PictureFacts.of(before).equals(facts)) {
                return before;
            }
            Optional<ApparentDisc> disc = disc(before, facts);
            Map<String, Double> meridians = disc.map(PictureSky::meridians).orElse(Map.of());
            PictureCorrecting.Corrected corrected =
                    new PictureCorrecting.Corrected(before, facts, night(facts), meridians);
            step.correct(corrected, reason);
            if (corrected.isPlanetChanged() || isFarOff(before, facts)) {
                takeBack(step, pictureId, reason);
            } else if (corrected.isTimeChanged()) {
                disc.ifPresent(d -> measureAnew(step, pictureId, d, facts, reason));
            }
            return step.picture(pictureId);
        });
    }

    private static boolean isFarOff(ArchivedPicture before, PictureFacts facts) {
        if (before.time().isEmpty()) {
            return false;
        }
        return facts.time()
                .filter(t -> Duration.between(before.time().get().midUtc(), t.midUtc())
                                .abs()
                                .compareTo(FIT_HOLDS)
                        <= 0)
                .isEmpty();
    }

    private static void takeBack(CorrectionStep step, long pictureId, String reason) {
        for (StoredMark mark : step.marksOf(pictureId)) {
            step.withdraw(mark, "planet or date of its picture corrected: " + reason);
        }
        for (StoredFit fit : step.fitsOf(pictureId)) {
            if (fit.withdrawnReason().isEmpty()) {
                step.withdraw(fit, "planet or date of its picture corrected: " + reason);
            }
        }
    }

    private void measureAnew(
            CorrectionStep step, long pictureId, ApparentDisc disc, PictureFacts facts, String reason) {
        double sigmaS = facts.time().orElseThrow().sigmaS();
        List<StoredFit> fits = step.fitsOf(pictureId);
        for (StoredMark old : step.marksOf(pictureId)) {
            NewMark mark = old.mark();
            Optional<StoredFit> fit = mark.fitId()
                    .flatMap(id -> fits.stream().filter(f -> f.id() == id).findFirst());
            if (mark.point().isEmpty() || fit.isEmpty()) {
                continue;
            }
            DiscFrame frame = new DiscFrame(disc, fit.get().fit().placement());
            Optional<MarkMeasurer.Measured> measured =
                    measurer.measure(frame, fit.get().fit().covariance(), mark.pixel(), mark.pickSigmaPx(), sigmaS);
            if (measured.isPresent()) {
                step.supersede(old, at(mark, measured.get()), "time of its picture corrected: " + reason);
            } else {
                step.withdraw(old, "off the disc since the time of its picture was corrected: " + reason);
            }
        }
    }

    private static NewMark at(NewMark mark, MarkMeasurer.Measured place) {
        return new NewMark(
                mark.pictureId(),
                mark.fitId(),
                mark.featureId(),
                mark.pixel(),
                mark.pickSigmaPx(),
                Optional.of(place.point()),
                Optional.of(place.errors()),
                mark.what(),
                mark.measurer());
    }

    private Optional<ApparentDisc> disc(ArchivedPicture before, PictureFacts facts) {
        Optional<PlanetModel> planet = facts.planetId().map(word -> PlanetWord.named(word, archive.planets()));
        facts.time().ifPresent(t -> new PictureSky(sky).refuseOutsideEphemeris(before.name(), t.midUtc()));
        return planet.flatMap(p -> facts.time().map(t -> sky.disc(p, t.midUtc())));
    }

    private Optional<LocalDate> night(PictureFacts facts) {
        Optional<Site> site = facts.site().flatMap(name -> archive.sites().stream()
                .filter(s -> s.name().equals(name))
                .findFirst());
        return facts.time().map(t -> Evening.of(t.midUtc(), site));
    }
}
