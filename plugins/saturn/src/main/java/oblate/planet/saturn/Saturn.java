/* SPDX-License-Identifier: Apache-2.0 */
package oblate.planet.saturn;

import java.util.List;
import java.util.Optional;
import oblate.sky.Appearance;
import oblate.sky.Globe;
import oblate.sky.LongitudeSense;
import oblate.sky.MoonFacts;
import oblate.sky.PlanetModel;
import oblate.sky.Region;
import oblate.sky.Rings;
import oblate.sky.RotationElements;
import oblate.sky.RotationSystem;
import oblate.sky.Spheroid;

/**
 * Saturn, with three rotation systems and its rings. System III is the IAU's, from the radio rotation of 1980; I and II are practice of almanacs.
 */
public final class Saturn implements PlanetModel {
    private static final String WGCCRE =
            "IAU WGCCRE 2015 (Archinal et al. 2018, Celest. Mech. Dyn. Astr. 130:22; corrigendum 131:61)";
    private static final String PRACTICE = "common practice of almanacs after older IAU reports";
    private static final double SYSTEM_I_BORDER_DEG = 18;
    private static final Rings RINGS = new Rings(
            91975,
            136775,
            "inner edge of ring B and outer edge of ring A, spacecraft radii (136 775 km as in common tables; 91 975 km from memory)");

    /** Typical planetographic latitudes after the general literature; real edges wander by degrees and the zones between belts are narrow. */
    private static final List<Region> REGIONS = List.of(
            new Region("South Polar Region", "SPR", -90, -60, true),
            new Region("South South Temperate Zone", "SSTZ", -60, -48, false),
            new Region("South South Temperate Belt", "SSTB", -48, -42, true),
            new Region("South Temperate Zone", "STZ", -42, -38, false),
            new Region("South Temperate Belt", "STB", -38, -33, true),
            new Region("South Tropical Zone", "STropZ", -33, -30, false),
            new Region("South Equatorial Belt", "SEB", -30, -18, true),
            new Region("Equatorial Zone", "EZ", -18, 18, false),
            new Region("North Equatorial Belt", "NEB", 18, 30, true),
            new Region("North Tropical Zone", "NTropZ", 30, 33, false),
            new Region("North Temperate Belt", "NTB", 33, 38, true),
            new Region("North Temperate Zone", "NTZ", 38, 42, false),
            new Region("North North Temperate Belt", "NNTB", 42, 48, true),
            new Region("North North Temperate Zone", "NNTZ", 48, 60, false),
            new Region("North Polar Region", "NPR", 60, 90, true));

    private final Globe globe = new Globe(
            6,
            new Spheroid(60268, 54364, WGCCRE),
            new RotationElements(40.589, -0.036, 83.537, -0.004, List.of(), List.of(), List.of(), WGCCRE),
            List.of(
                    new RotationSystem("1", "System I", 227.2037, 844.3, PRACTICE),
                    new RotationSystem(
                            "2",
                            "System II",
                            105.4857,
                            812.0,
                            PRACTICE + "; rarely used now, no paper known for its constant"),
                    new RotationSystem("3", "System III", 38.90, 810.7939024, WGCCRE)),
            "3",
            LongitudeSense.WEST);

    @Override
    public String id() {
        return "saturn";
    }

    @Override
    public String label() {
        return "Saturn";
    }

    @Override
    public Globe globe() {
        return globe;
    }

    @Override
    public Appearance appearance() {
        return new Appearance(0.95, 0xE3D2A4);
    }

    @Override
    public List<Region> regions() {
        return REGIONS;
    }

    /**
     * System I in the equatorial zone, from the north edge of the SEB to the south edge of the NEB, taken as ±18° planetographic, else System III. Where the border lies is common practice and
     * sources disagree by some degrees, so let the user override it for a feature.
     */
    @Override
    public RotationSystem customarySystem(double latGraphicDeg) {
        return globe.system(Math.abs(latGraphicDeg) < SYSTEM_I_BORDER_DEG ? "1" : "3")
                .orElseThrow();
    }

    @Override
    public List<MoonFacts> moons() {
        return SaturnMoons.ALL;
    }

    @Override
    public Optional<Rings> rings() {
        return Optional.of(RINGS);
    }
}
