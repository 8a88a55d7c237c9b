/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import oblate.archive.Archive;
import oblate.archive.Feature;
import oblate.archive.MarkSearch;
import oblate.archive.StoredMark;
import oblate.disc.ErrorBudget;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Makes longitude series from the marks of an archive. Stateless. */
public final class MarkSeries {
    private static final String CENTRE = "centre";
    private static final Set<String> NOT_OF_THE_SURFACE = Set.of("moon", "shadow");
    private static final double LEAST_SIGMA_DEG = 1e-3;

    /**
     * One series per named feature of a planet with at least one current mark on the globe, by name.
     *
     * <p>Marks of the centre are taken; for a feature whose centre was never marked, the part marked most often. Moons and their shadows are left out: they are
     * no features of the surface.
     *
     * @param system system of the longitudes; empty for each feature's own or the planet's custom at its latitude
     */
    public List<LongitudeSeries> ofArchive(Archive archive, PlanetModel planet, Optional<RotationSystem> system) {
        MarkSearch search = new MarkSearch(
                Optional.of(planet.id()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
        Map<String, Feature> features = new HashMap<>();
        archive.features(planet.id()).forEach(feature -> features.put(feature.name(), feature));
        Map<String, List<StoredMark>> byName = new TreeMap<>();
        for (StoredMark mark : archive.marks(search)) {
            boolean counts = mark.isCurrent()
                    && mark.mark().point().isPresent()
                    && mark.featureName().isPresent();
            if (counts && !isMoonOrShadow(features.get(mark.featureName().get()))) {
                byName.computeIfAbsent(mark.featureName().get(), name -> new ArrayList<>())
                        .add(mark);
            }
        }
        List<LongitudeSeries> series = new ArrayList<>(byName.size());
        byName.forEach((name, marks) ->
                series.add(of(name, planet, samePart(marks), system.or(() -> ownSystem(planet, features.get(name))))));
        return series.stream().filter(one -> !one.points().isEmpty()).toList();
    }

    /**
     * All current marks of centres on a planet, with names and without, to be linked; the row of each is its number in the catalog. Moons and their shadows are left out.
     *
     * @param system system of the longitudes
     */
    public MarkTable toLink(Archive archive, PlanetModel planet, RotationSystem system) {
        MarkSearch search = new MarkSearch(
                Optional.of(planet.id()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
        Map<String, Feature> features = new HashMap<>();
        archive.features(planet.id()).forEach(feature -> features.put(feature.name(), feature));
        List<MarkRow> rows = new ArrayList<>();
        for (StoredMark mark : archive.marks(search)) {
            Double lon = mark.longitudes().get(system.id());
            boolean counts = mark.isCurrent()
                    && mark.mark().point().isPresent()
                    && mark.mark().what().equals(CENTRE)
                    && lon != null;
            Feature feature = mark.featureName().map(features::get).orElse(null);
            if (counts && !isMoonOrShadow(feature)) {
                rows.add(new MarkRow(
                        Math.toIntExact(mark.id()),
                        mark.featureName().orElse(""),
                        point(mark, lon),
                        "",
                        OptionalDouble.empty()));
            }
        }
        return new MarkTable(planet, system, rows, List.of());
    }

    private static LongitudePoint point(StoredMark mark, double lon) {
        Optional<ErrorBudget> errors = mark.mark().errors();
        return new LongitudePoint(
                mark.midUtc(),
                lon,
                Math.max(LEAST_SIGMA_DEG, errors.map(ErrorBudget::totalLonDeg).orElse(MarkFile.ASSUMED_SIGMA_DEG)),
                OptionalDouble.of(mark.mark().point().orElseThrow().latGraphicDeg()),
                errors.isPresent()
                        ? OptionalDouble.of(
                                Math.max(LEAST_SIGMA_DEG, errors.get().totalLatDeg()))
                        : OptionalDouble.empty());
    }

    private static boolean isMoonOrShadow(Feature feature) {
        return feature != null && NOT_OF_THE_SURFACE.contains(feature.kind());
    }

    private static Optional<RotationSystem> ownSystem(PlanetModel planet, Feature feature) {
        return feature == null
                ? Optional.empty()
                : feature.systemId().flatMap(id -> planet.globe().system(id));
    }

    private static List<StoredMark> samePart(List<StoredMark> marks) {
        Map<String, Integer> counts = new TreeMap<>();
        marks.forEach(mark -> counts.merge(mark.mark().what(), 1, Integer::sum));
        String part = counts.containsKey(CENTRE)
                ? CENTRE
                : counts.entrySet().stream()
                        .max(Map.Entry.<String, Integer>comparingByValue()
                                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                        .orElseThrow()
                        .getKey();
        return marks.stream().filter(mark -> mark.mark().what().equals(part)).toList();
    }

    private static LongitudeSeries of(
            String name, PlanetModel planet, List<StoredMark> marks, Optional<RotationSystem> wanted) {
        double meanLat = marks.stream()
                .mapToDouble(mark -> mark.mark().point().orElseThrow().latGraphicDeg())
                .average()
                .orElseThrow();
        RotationSystem system = wanted.orElseGet(() -> planet.customarySystem(meanLat));
        List<LongitudePoint> points = new ArrayList<>(marks.size());
        for (StoredMark mark : marks) {
            Double lon = mark.longitudes().get(system.id());
            if (lon != null) {
                points.add(point(mark, lon));
            }
        }
        return new LongitudeSeries(name, planet, system, points);
    }
}
