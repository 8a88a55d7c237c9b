/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.Feature;
import oblate.archive.MarkSearch;
import oblate.archive.StoredFit;
import oblate.archive.StoredMark;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** The table of measured positions. Used for one table. */
final class PositionTable {
    private final Archive archive;
    private final PlanetModel planet;
    private final Optional<RotationSystem> system;
    private final Map<Long, Optional<ArchivedPicture>> pictures = new HashMap<>();
    private final Map<Long, List<StoredFit>> fits = new HashMap<>();

    PositionTable(Archive archive, PlanetModel planet, Optional<RotationSystem> system) {
        this.archive = archive;
        this.planet = planet;
        this.system = system;
    }

    ReportTable of(MarkSearch search) {
        MarkSearch ofPlanet = new MarkSearch(
                Optional.of(planet.id()), search.pictureId(), search.featureName(), search.from(), search.to(), false);
        Map<String, Feature> features = new HashMap<>();
        archive.features(planet.id()).forEach(feature -> features.put(feature.name(), feature));
        List<Position> positions = new ArrayList<>();
        for (StoredMark mark : archive.marks(ofPlanet)) {
            Optional<ArchivedPicture> picture = picture(mark.mark().pictureId());
            if (mark.isCurrent() && mark.mark().point().isPresent() && picture.isPresent()) {
                positions.add(position(mark, picture.get(), features));
            }
        }
        positions.sort(Comparator.comparing((Position p) -> p.mark().midUtc())
                .thenComparing(p -> p.mark().id()));
        TableDraft<Position> draft = new TableDraft<>("Positions on " + planet.label());
        facts(draft, positions);
        new PositionColumns(planet).addTo(draft);
        return draft.rows(positions);
    }

    private Position position(StoredMark mark, ArchivedPicture picture, Map<String, Feature> features) {
        Optional<Feature> feature = mark.featureName().map(features::get);
        double lat = mark.mark().point().orElseThrow().latGraphicDeg();
        RotationSystem stated = system.or(() -> feature.flatMap(Feature::systemId)
                        .flatMap(id -> planet.globe().system(id)))
                .orElseGet(() -> planet.customarySystem(lat));
        return new Position(mark, picture, fit(mark), feature, stated);
    }

    private Optional<ArchivedPicture> picture(long id) {
        return pictures.computeIfAbsent(id, archive::picture);
    }

    private Optional<StoredFit> fit(StoredMark mark) {
        return mark.mark()
                .fitId()
                .flatMap(id -> fits.computeIfAbsent(mark.mark().pictureId(), archive::fitHistory).stream()
                        .filter(fit -> fit.id() == id)
                        .findFirst());
    }

    private void facts(TableDraft<Position> draft, List<Position> positions) {
        draft.fact("planet", planet.label())
                .fact("longitudes", Wording.longitudes(planet))
                .fact("systems", Wording.systems(planet))
                .fact("latitudes", "lat_graphic_deg planetographic, lat_centric_deg planetocentric, north positive")
                .fact("shape", Wording.radii(planet))
                .fact("central meridian", "geometric, no phase correction, light time removed")
                .fact("times", "UTC, middle of the capture")
                .fact(
                        "errors",
                        "one standard error, from the pick, the disc's centre, scale and pole angle, and the time, with their correlations")
                .fact(
                        "ephemeris",
                        distinct(positions.stream()
                                .flatMap(p -> p.fit().stream())
                                .map(StoredFit::ephemeris)))
                .fact(
                        "measured with",
                        distinct(positions.stream()
                                .flatMap(p -> p.fit().stream())
                                .map(StoredFit::software)))
                .fact("observers", distinct(positions.stream().flatMap(p -> p.picture().observer().stream())))
                .fact("sites", distinct(positions.stream().flatMap(p -> p.picture().site().stream())))
                .fact("kits", distinct(positions.stream().flatMap(p -> p.picture().kit().stream())))
                .fact("software", Software.nameAndVersion());
    }

    private static String distinct(Stream<String> words) {
        return words.distinct().sorted().collect(Collectors.joining(", "));
    }
}
