/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.tutorial;

import java.util.List;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;

/** An invented planet that stands where Mars stands; copy it and put the figures of yours. */
public final class TutorialPlanet implements PlanetModel {
    private static final String SOURCE = "invented for the tutorial";

    @Override
    public String id() {
        return "tutorial-planet";
    }

    @Override
    public String label() {
        return "Tutorial planet";
    }

    @Override
    public Globe globe() {
        return new Globe(
                4,
                new Spheroid(3000, 2900, SOURCE),
                new RotationElements(317.3, -0.1, 54.4, -0.06, List.of(), List.of(), List.of(), SOURCE),
                List.of(new RotationSystem("iau", "IAU", 176.0, 350.0, SOURCE)),
                "iau",
                LongitudeSense.WEST);
    }
}
