/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import org.jdbi.v3.core.Handle;

/** What a mark's longitude is in every system of its planet, and whether what the mark names belongs to its picture. */
final class MarkLongitudes {
    private final KeptPictures pictures;
    private final List<PlanetModel> planets;
    private final FitRows fits = new FitRows();
    private final FeatureRows features = new FeatureRows();

    MarkLongitudes(KeptPictures pictures, List<PlanetModel> planets) {
        this.pictures = pictures;
        this.planets = planets;
    }

    /**
     * Longitudes (degrees, 0 to 360) by system id, exact at the picture's time since the systems' meridians are; none for a mark without a place.
     *
     * @throws ProblemException with {@link ArchiveProblem#NO_SUCH_PICTURE}, {@link ArchiveProblem#UNDATED_PICTURE},
     *     {@link ArchiveProblem#NO_MERIDIAN}, {@link ArchiveProblem#NO_SUCH_FIT} or {@link ArchiveProblem#NO_SUCH_FEATURE}
     */
    Map<String, Double> of(Handle handle, NewMark mark) {
        ArchivedPicture picture = pictures.existing(handle, mark.pictureId());
        if (picture.time().isEmpty()) {
            throw new ProblemException(ArchiveProblem.UNDATED_PICTURE, picture.id());
        }
        mark.fitId().ifPresent(fit -> {
            if (fits.ofPicture(handle, picture.id()).stream().noneMatch(f -> f.id() == fit)) {
                throw new ProblemException(ArchiveProblem.NO_SUCH_FIT, fit, picture.id());
            }
        });
        mark.featureId().ifPresent(id -> {
            Optional<Feature> known = features.byId(handle, id)
                    .filter(f -> Optional.of(f.planetId()).equals(picture.planetId()));
            if (known.isEmpty()) {
                throw new ProblemException(ArchiveProblem.NO_SUCH_FEATURE, id, picture.id());
            }
        });
        Map<String, Double> longitudes = new LinkedHashMap<>();
        mark.point().ifPresent(point -> {
            double iauMeridian = iauSystem(picture)
                    .map(picture.centralMeridians()::get)
                    .orElseThrow(() -> new ProblemException(ArchiveProblem.NO_MERIDIAN, picture.id()));
            picture.centralMeridians()
                    .forEach((system, cm) -> longitudes.put(system, Angle.turn(point.lonIauDeg() + cm - iauMeridian)));
        });
        return longitudes;
    }

    private Optional<String> iauSystem(ArchivedPicture picture) {
        return planets.stream()
                .filter(p -> Optional.of(p.id()).equals(picture.planetId()))
                .map(p -> p.globe().iauSystemId())
                .findFirst();
    }
}
