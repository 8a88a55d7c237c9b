/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import oblate.archive.ArchivedPicture;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.pictures.NightGroup;

/**
 * What stands above a night. Immutable.
 *
 * @param title both dates
 * @param summary count, site, kit, seeing
 * @param system system of the longitudes; empty when no planet is known
 * @param bestDistanceDeg distance from the meridian at which each whole degree was seen best (deg)
 */
record NightHeader(String title, String summary, Optional<RotationSystem> system, int[] bestDistanceDeg) {

    /** The coverage is of the planet with most pictures in the night. */
    static NightHeader of(NightGroup night, SystemChoice systems, boolean severalPlanets) {
        Map<String, Long> counts = night.pictures().stream()
                .flatMap(p -> p.planetId().stream())
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        Optional<String> planetId =
                counts.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
        Optional<PlanetModel> planet = systems.planet(planetId);
        List<Double> meridians = night.pictures().stream()
                .filter(p -> p.planetId().equals(planetId))
                .flatMap(p -> systems.meridianDeg(p).stream())
                .toList();
        String planets = severalPlanets
                ? counts.keySet().stream()
                                .sorted()
                                .map(id -> systems.planet(Optional.of(id))
                                        .map(PlanetModel::label)
                                        .orElse(id))
                                .collect(Collectors.joining(", "))
                        + "   ·   "
                : "";
        return new NightHeader(
                night.title(),
                planets + night.summary(),
                meridians.isEmpty() ? Optional.empty() : planet.map(systems::of),
                Coverage.bestDistanceDeg(meridians));
    }

    static boolean severalPlanets(List<ArchivedPicture> pictures) {
        return pictures.stream()
                        .flatMap(p -> p.planetId().stream())
                        .distinct()
                        .limit(2)
                        .count()
                > 1;
    }
}
