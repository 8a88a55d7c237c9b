/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.uranus;

import java.util.List;
import oblate.sky.Appearance;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.PlanetModel;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;

/**
 * Uranus. By the IAU's rule the north pole lies north of the solar system's invariable plane, so it turns backward and longitude grows eastward.
 */
public final class Uranus implements PlanetModel {
    private static final String WGCCRE =
            "IAU WGCCRE 2015 (Archinal et al. 2018, Celest. Mech. Dyn. Astr. 130:22; corrigendum 131:61)";

    private final Globe globe = new Globe(
            7,
            new Spheroid(25559, 24973, WGCCRE),
            new RotationElements(257.311, 0, -15.175, 0, List.of(), List.of(), List.of(), WGCCRE),
            List.of(new RotationSystem("iau", "IAU", 203.81, -501.1600928, WGCCRE)),
            "iau",
            LongitudeSense.EAST);

    @Override
    public String id() {
        return "uranus";
    }

    @Override
    public String label() {
        return "Uranus";
    }

    @Override
    public Globe globe() {
        return globe;
    }

    @Override
    public Appearance appearance() {
        return new Appearance(0.95, 0xB5DCE0);
    }
}
