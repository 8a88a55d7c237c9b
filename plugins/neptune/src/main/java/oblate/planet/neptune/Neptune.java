/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.neptune;

import java.util.List;
import oblate.sky.Appearance;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.PeriodicTerm;
import oblate.sky.PlanetModel;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;

/**
 * Neptune, with the rotation of the 2015 report (541.14 deg/day, from cloud features), which left the older radio rotation of 536.31 deg/day.
 */
public final class Neptune implements PlanetModel {
    private static final String WGCCRE =
            "IAU WGCCRE 2015 (Archinal et al. 2018, Celest. Mech. Dyn. Astr. 130:22; corrigendum 131:61)";

    private final Globe globe = new Globe(
            8,
            new Spheroid(24764, 24341, WGCCRE),
            new RotationElements(
                    299.36,
                    0,
                    43.46,
                    0,
                    List.of(PeriodicTerm.sine(0.70, 357.85, 52.316)),
                    List.of(PeriodicTerm.cosine(-0.51, 357.85, 52.316)),
                    List.of(PeriodicTerm.sine(-0.48, 357.85, 52.316)),
                    WGCCRE),
            List.of(new RotationSystem("iau", "IAU", 249.978, 541.1397757, WGCCRE)),
            "iau",
            LongitudeSense.WEST);

    @Override
    public String id() {
        return "neptune";
    }

    @Override
    public String label() {
        return "Neptune";
    }

    @Override
    public Globe globe() {
        return globe;
    }

    @Override
    public Appearance appearance() {
        return new Appearance(0.95, 0x7FA6DC);
    }
}
