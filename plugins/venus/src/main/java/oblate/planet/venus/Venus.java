/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.venus;

import java.util.List;
import oblate.sky.Appearance;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;

/**
 * Venus: its solid surface. The clouds turn in about four days and are in no system of the IAU.
 */
public final class Venus implements PlanetModel {
    private static final String WGCCRE =
            "IAU WGCCRE 2015 (Archinal et al. 2018, Celest. Mech. Dyn. Astr. 130:22; corrigendum 131:61)";

    private final Globe globe = new Globe(
            2,
            new Spheroid(6051.8, 6051.8, WGCCRE),
            new RotationElements(272.76, 0, 67.16, 0, List.of(), List.of(), List.of(), WGCCRE),
            List.of(new RotationSystem("iau", "IAU", 160.20, -1.4813688, WGCCRE)),
            "iau",
            LongitudeSense.EAST);

    @Override
    public String id() {
        return "venus";
    }

    @Override
    public String label() {
        return "Venus";
    }

    @Override
    public Globe globe() {
        return globe;
    }

    @Override
    public Appearance appearance() {
        return new Appearance(0.85, 0xE9DFC4);
    }
}
