/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.mars;

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
 * Mars, with the periodic terms of Kuchynka et al. 2014 that the 2015 report took over. The polar radius is the mean of the north (3373.19 km) and
 * south (3379.21 km) ones.
 */
public final class Mars implements PlanetModel {
    private static final String WGCCRE =
            "IAU WGCCRE 2015 (Archinal et al. 2018, Celest. Mech. Dyn. Astr. 130:22; corrigendum 131:61)";
    private static final List<PeriodicTerm> POLE_RA = List.of(
            PeriodicTerm.sine(0.000068, 198.991226, 19139.4819985),
            PeriodicTerm.sine(0.000238, 226.292679, 38280.8511281),
            PeriodicTerm.sine(0.000052, 249.663391, 57420.7251593),
            PeriodicTerm.sine(0.000009, 266.183510, 76560.6367950),
            PeriodicTerm.sine(0.419057, 79.398797, 0.5042615));
    private static final List<PeriodicTerm> POLE_DEC = List.of(
            PeriodicTerm.cosine(0.000051, 122.433576, 19139.9407476),
            PeriodicTerm.cosine(0.000141, 43.058401, 38280.8753272),
            PeriodicTerm.cosine(0.000031, 57.663379, 57420.7517205),
            PeriodicTerm.cosine(0.000005, 79.476401, 76560.6495004),
            PeriodicTerm.cosine(1.591274, 166.325722, 0.5042615));
    private static final List<PeriodicTerm> MERIDIAN = List.of(
            PeriodicTerm.sine(0.000145, 129.071773, 19140.0328244),
            PeriodicTerm.sine(0.000157, 36.352167, 38281.0473591),
            PeriodicTerm.sine(0.000040, 56.668646, 57420.9295360),
            PeriodicTerm.sine(0.000001, 67.364003, 76560.2552215),
            PeriodicTerm.sine(0.000001, 104.792680, 95700.4387578),
            PeriodicTerm.sine(0.584542, 95.391654, 0.5042615));

    private final Globe globe = new Globe(
            4,
            new Spheroid(3396.19, 3376.20, WGCCRE),
            new RotationElements(317.269202, -0.10927547, 54.432516, -0.05827105, POLE_RA, POLE_DEC, MERIDIAN, WGCCRE),
            List.of(new RotationSystem("iau", "IAU", 176.049863, 350.891982443297, WGCCRE)),
            "iau",
            LongitudeSense.WEST);

    @Override
    public String id() {
        return "mars";
    }

    @Override
    public String label() {
        return "Mars";
    }

    @Override
    public Globe globe() {
        return globe;
    }

    @Override
    public Appearance appearance() {
        return new Appearance(0.75, 0xD99A6C);
    }
}
