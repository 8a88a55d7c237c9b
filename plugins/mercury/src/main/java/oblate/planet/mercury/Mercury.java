/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.mercury;

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
 * Mercury. The periodic terms are its forced libration; the report gives their rates per day.
 */
public final class Mercury implements PlanetModel {
    private static final String WGCCRE =
            "IAU WGCCRE 2015 (Archinal et al. 2018, Celest. Mech. Dyn. Astr. 130:22; corrigendum 131:61)";

    private final Globe globe = new Globe(
            1,
            new Spheroid(2440.53, 2438.26, WGCCRE),
            new RotationElements(
                    281.0103,
                    -0.0328,
                    61.4155,
                    -0.0049,
                    List.of(),
                    List.of(),
                    List.of(
                            libration(0.01067257, 174.7910857, 4.092335),
                            libration(-0.00112309, 349.5821714, 8.184670),
                            libration(-0.00011040, 164.3732571, 12.277005),
                            libration(-0.00002539, 339.1643429, 16.369340),
                            libration(-0.00000571, 153.9554286, 20.461675)),
                    WGCCRE),
            List.of(new RotationSystem("iau", "IAU", 329.5988, 6.1385108, WGCCRE)),
            "iau",
            LongitudeSense.WEST);

    @Override
    public String id() {
        return "mercury";
    }

    @Override
    public String label() {
        return "Mercury";
    }

    @Override
    public Globe globe() {
        return globe;
    }

    @Override
    public Appearance appearance() {
        return new Appearance(0.7, 0xA9A29A);
    }

    private static PeriodicTerm libration(double coefficientDeg, double phaseDeg, double rateDegPerDay) {
        return PeriodicTerm.sine(coefficientDeg, phaseDeg, rateDegPerDay * 36525);
    }
}
