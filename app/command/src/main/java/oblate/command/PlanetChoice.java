/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.ArchivedPicture;
import oblate.archive.PictureSearch;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Settles which planet and system a command is about. */
final class PlanetChoice {
    private final Services services;

    PlanetChoice(Services services) {
        this.services = services;
    }

    /** The planet that was named, or the only one the archive holds. */
    PlanetModel of(Archive archive, Optional<String> word) {
        if (word.isPresent()) {
            return services.planet(word.get());
        }
        List<String> held = archive.pictures(PictureSearch.all()).stream()
                .map(ArchivedPicture::planetId)
                .flatMap(Optional::stream)
                .distinct()
                .toList();
        if (held.size() == 1) {
            return services.planet(held.get(0));
        }
        throw new UsageException(
                held.isEmpty()
                        ? "the archive holds no picture of a known planet; add --planet PLANET"
                        : "the archive holds " + String.join(", ", held) + "; choose one with --planet PLANET");
    }

    /** The system a person means: 1, 2, 3 or iau, also written I, II, III. */
    static RotationSystem system(PlanetModel planet, String word) {
        String id =
                switch (word.toUpperCase(java.util.Locale.ROOT)) {
                    case "I" -> "1";
                    case "II" -> "2";
                    case "III" -> "3";
                    case "IAU" -> planet.globe().iauSystemId();
                    default -> word;
                };
        List<String> known =
                planet.globe().systems().stream().map(RotationSystem::id).toList();
        return planet.globe()
                .system(id)
                .orElseThrow(() -> new UsageException(
                        "system \"" + word + "\" is not one of " + planet.label() + "; " + Nearest.hint(word, known)));
    }
}
