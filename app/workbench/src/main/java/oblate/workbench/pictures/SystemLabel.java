/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Short names of rotation systems. */
public final class SystemLabel {
    /** Latitude that stands for most of a planet when one system must be shown without a feature (deg). */
    private static final double TYPICAL_LAT_DEG = 30;

    private SystemLabel() {}

    /** {@code I}, {@code II}, {@code III}, or the label where the trade has no numbers. */
    public static String brief(RotationSystem system) {
        return system.label().replace("System ", "");
    }

    /** The system shown when nothing says which: that of most latitudes. */
    public static RotationSystem usual(PlanetModel planet) {
        return planet.customarySystem(TYPICAL_LAT_DEG);
    }
}
