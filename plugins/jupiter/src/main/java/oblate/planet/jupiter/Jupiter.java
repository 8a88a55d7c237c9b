/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.jupiter;

import java.util.List;
import oblate.sky.Appearance;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.MoonFacts;
import oblate.sky.PeriodicTerm;
import oblate.sky.PlanetModel;
import oblate.sky.Region;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;

/**
 * Jupiter, with its three rotation systems. System III is that of the magnetic field and the IAU's; I and II are definitions, for the equatorial current and
 * for the rest.
 */
public final class Jupiter implements PlanetModel {
    private static final String WGCCRE =
            "IAU WGCCRE 2015 (Archinal et al. 2018, Celest. Mech. Dyn. Astr. 130:22; corrigendum 131:61)";
    private static final double SYSTEM_I_BORDER_DEG = 10;
    private static final List<PeriodicTerm> POLE_RA = List.of(
            PeriodicTerm.sine(0.000117, 99.360714, 4850.4046),
            PeriodicTerm.sine(0.000938, 175.895369, 1191.9605),
            PeriodicTerm.sine(0.001432, 300.323162, 262.5475),
            PeriodicTerm.sine(0.000030, 114.012305, 6070.2476),
            PeriodicTerm.sine(0.002150, 49.511251, 64.3000));
    private static final List<PeriodicTerm> POLE_DEC = List.of(
            PeriodicTerm.cosine(0.000050, 99.360714, 4850.4046),
            PeriodicTerm.cosine(0.000404, 175.895369, 1191.9605),
            PeriodicTerm.cosine(0.000617, 300.323162, 262.5475),
            PeriodicTerm.cosine(-0.000013, 114.012305, 6070.2476),
            PeriodicTerm.cosine(0.000926, 49.511251, 64.3000));

    /** Typical planetographic latitudes after the general literature; real edges wander by degrees. */
    private static final List<Region> REGIONS = List.of(
            new Region("South Polar Region", "SPR", -90, -40, true),
            new Region("South South Temperate Belt", "SSTB", -40, -36, true),
            new Region("South Temperate Zone", "STZ", -36, -33, false),
            new Region("South Temperate Belt", "STB", -33, -27, true),
            new Region("South Tropical Zone", "STropZ", -27, -20, false),
            new Region("South Equatorial Belt", "SEB", -20, -7, true),
            new Region("Equatorial Zone", "EZ", -7, 7, false),
            new Region("North Equatorial Belt", "NEB", 7, 17, true),
            new Region("North Tropical Zone", "NTropZ", 17, 24, false),
            new Region("North Temperate Belt", "NTB", 24, 31, true),
            new Region("North Temperate Zone", "NTZ", 31, 35, false),
            new Region("North North Temperate Belt", "NNTB", 35, 39, true),
            new Region("North Polar Region", "NPR", 39, 90, true));

    private final Globe globe = new Globe(
            5,
            new Spheroid(71492, 66854, WGCCRE),
            new RotationElements(268.056595, -0.006499, 64.495303, 0.002413, POLE_RA, POLE_DEC, List.of(), WGCCRE),
            List.of(
                    new RotationSystem("1", "System I", 67.1, 877.900, WGCCRE),
                    new RotationSystem("2", "System II", 43.3, 870.270, WGCCRE),
                    new RotationSystem("3", "System III", 284.95, 870.536, WGCCRE)),
            "3",
            LongitudeSense.WEST);

    @Override
    public String id() {
        return "jupiter";
    }

    @Override
    public String label() {
        return "Jupiter";
    }

    @Override
    public Globe globe() {
        return globe;
    }

    @Override
    public Appearance appearance() {
        return new Appearance(0.95, 0xD8C3A0);
    }

    @Override
    public List<MoonFacts> moons() {
        return GalileanMoons.ALL;
    }

    @Override
    public List<Region> regions() {
        return REGIONS;
    }

    /**
     * System I between the middles of the two equatorial belts, taken as ±10° planetographic, else System II. Where the border lies is common practice and
     * sources disagree by some degrees, so let the user override it for a feature.
     */
    @Override
    public RotationSystem customarySystem(double latGraphicDeg) {
        return globe.system(Math.abs(latGraphicDeg) < SYSTEM_I_BORDER_DEG ? "1" : "2")
                .orElseThrow();
    }
}
