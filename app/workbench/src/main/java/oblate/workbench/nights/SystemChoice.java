/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;
import java.util.Optional;
import oblate.archive.ArchivedPicture;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;
import oblate.workbench.PanelSettings;
import oblate.workbench.pictures.SystemLabel;

/** The rotation system longitudes are given in, one per planet, kept between sessions. On the event thread only. */
final class SystemChoice {
    private final List<PlanetModel> planets;
    private final PanelSettings settings;

    SystemChoice(List<PlanetModel> planets, PanelSettings settings) {
        this.planets = planets;
        this.settings = settings;
    }

    RotationSystem of(PlanetModel planet) {
        RotationSystem usual = SystemLabel.usual(planet);
        String wish = settings.text("system." + planet.id(), usual.id());
        return planet.globe().systems().stream()
                .filter(s -> s.id().equals(wish))
                .findFirst()
                .orElse(usual);
    }

    Optional<RotationSystem> of(ArchivedPicture picture) {
        return planet(picture.planetId()).map(this::of);
    }

    /** Central meridian of a picture in its planet's chosen system (deg). */
    Optional<Double> meridianDeg(ArchivedPicture picture) {
        return of(picture).map(s -> picture.centralMeridians().get(s.id()));
    }

    Optional<PlanetModel> planet(Optional<String> id) {
        return planets.stream().filter(p -> Optional.of(p.id()).equals(id)).findFirst();
    }

    void choose(PlanetModel planet, RotationSystem system) {
        settings.keep("system." + planet.id(), system.id());
    }
}
