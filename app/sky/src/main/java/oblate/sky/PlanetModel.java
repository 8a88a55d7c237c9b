/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.List;
import java.util.Optional;
import oblate.base.Plugin;

/**
 * Extension point: a planet. Its id is the lower-case English name ({@code jupiter}), its label the name as written ({@code Jupiter}).
 *
 * <p>Adding a planet touches no stage: everything the stages need to know is here.
 */
public interface PlanetModel extends Plugin {

    /** Shape, pole, rotation. */
    Globe globe();

    /** Rings, where the planet has some worth drawing. */
    default Optional<Rings> rings() {
        return Optional.empty();
    }

    /** Moons whose places are known, in the order they are listed; empty where the plug-in brings none. */
    default List<MoonFacts> moons() {
        return List.of();
    }

    /** Named bands of latitude from south to north; empty where the trade names none. */
    default List<Region> regions() {
        return List.of();
    }

    /** Starting values for fits and drawing. */
    default Appearance appearance() {
        return new Appearance(0.9, 0xD8C9A8);
    }

    /** System the trade uses for drifts at a planetographic latitude (deg); the IAU's unless the planet says otherwise. */
    default RotationSystem customarySystem(double latGraphicDeg) {
        return globe().iauSystem();
    }
}
