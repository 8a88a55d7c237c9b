/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.MarkSearch;
import oblate.archive.StoredMark;
import oblate.drift.LongitudePoint;
import oblate.drift.LongitudeSeries;
import oblate.drift.MarkSeries;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/**
 * Features of a planet with their fits, and the mark each point came from. Immutable; made in the background.
 *
 * @param fits by name
 * @param marks by feature, one per point of its series, in the points' order
 * @param hidden how many features are left out because their own or customary system is another one
 */
record DriftData(List<Fitted> fits, Map<String, List<Optional<StoredMark>>> marks, int hidden) {
    /** Nothing yet. */
    static final DriftData NONE = new DriftData(List.of(), Map.of(), 0);

    DriftData {
        fits = List.copyOf(fits);
        marks = Map.copyOf(marks);
    }

    /**
     * A point of a feature.
     *
     * @param feature name
     * @param index place in the feature's series
     */
    record Point(String feature, int index) {}

    private record Place(String feature, Instant time, double lonDeg) {}

    /**
     * Reads an archive and fits.
     *
     * @param all also features whose own or customary system is another one
     */
    static DriftData of(Archive archive, PlanetModel planet, RotationSystem system, boolean all) {
        MarkSeries series = new MarkSeries();
        List<String> own = series.ofArchive(archive, planet, Optional.empty()).stream()
                .filter(s -> all
                        || s.system().equals(system)
                        || planet.globe().systems().size() == 1)
                .map(LongitudeSeries::feature)
                .toList();
        List<LongitudeSeries> here = series.ofArchive(archive, planet, Optional.of(system));
        List<Fitted> fits = here.stream()
                .filter(s -> own.contains(s.feature()))
                .map(Fitted::of)
                .toList();
        Map<Place, StoredMark> byPlace = new HashMap<>();
        MarkSearch search = new MarkSearch(
                Optional.of(planet.id()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false);
        for (StoredMark mark : archive.marks(search)) {
            Double lon = mark.longitudes().get(system.id());
            if (mark.isCurrent() && lon != null && mark.featureName().isPresent()) {
                byPlace.put(new Place(mark.featureName().get(), mark.midUtc(), lon), mark);
            }
        }
        Map<String, List<Optional<StoredMark>>> marks = new HashMap<>();
        for (Fitted fitted : fits) {
            List<Optional<StoredMark>> of = new ArrayList<>();
            for (LongitudePoint p : fitted.series().points()) {
                of.add(Optional.ofNullable(byPlace.get(new Place(fitted.name(), p.time(), p.lonDeg()))));
            }
            marks.put(fitted.name(), List.copyOf(of));
        }
        return new DriftData(fits, marks, here.size() - fits.size());
    }

    Optional<Fitted> called(String name) {
        return fits.stream().filter(f -> f.name().equals(name)).findFirst();
    }

    /** The mark of a point. */
    Optional<StoredMark> mark(Point point) {
        List<Optional<StoredMark>> of = marks.getOrDefault(point.feature(), List.of());
        return point.index() < of.size() ? of.get(point.index()) : Optional.empty();
    }

    /** The point of a mark. */
    Optional<Point> pointOf(long markId) {
        for (Map.Entry<String, List<Optional<StoredMark>>> entry : marks.entrySet()) {
            for (int i = 0; i < entry.getValue().size(); i++) {
                if (entry.getValue().get(i).filter(m -> m.id() == markId).isPresent()) {
                    return Optional.of(new Point(entry.getKey(), i));
                }
            }
        }
        return Optional.empty();
    }

    LongitudePoint measured(Point point) {
        return called(point.feature()).orElseThrow().series().points().get(point.index());
    }

    /** The mark of the same feature that is so many places later in time, if there is one. */
    Optional<Point> step(Point from, int places) {
        List<LongitudePoint> points =
                called(from.feature()).orElseThrow().series().points();
        List<Integer> order = java.util.stream.IntStream.range(0, points.size())
                .boxed()
                .sorted(Comparator.comparing(i -> points.get(i).time()))
                .toList();
        int at = order.indexOf(from.index()) + places;
        return at < 0 || at >= order.size() ? Optional.empty() : Optional.of(new Point(from.feature(), order.get(at)));
    }

    /**
     * Another track a mark could belong to.
     *
     * @param feature its name
     * @param offDeg how far the mark is from where its drift says it was (deg); empty without a drift
     */
    record Rival(String feature, Optional<Double> offDeg) {}

    /** The other tracks, nearest to the mark first. */
    List<Rival> rivals(Point point) {
        LongitudePoint p = measured(point);
        return fits.stream()
                .filter(f -> !f.name().equals(point.feature()))
                .map(f -> new Rival(
                        f.name(),
                        f.drift().map(d -> Math.IEEEremainder(p.lonDeg() - d.unwrappedLonDegAt(p.time()), 360))))
                .sorted(Comparator.comparingDouble(
                        r -> r.offDeg().map(Math::abs).orElse(360.0)))
                .toList();
    }
}
