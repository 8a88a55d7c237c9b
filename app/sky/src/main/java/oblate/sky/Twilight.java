/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.util.Locale;

/** How light it is, by the altitude of the Sun's centre without refraction, as almanacs have it. */
public enum Twilight {
    /** The Sun's upper edge stands over the horizon. */
    DAY(-50 / 60.0),
    /** Down to −6 deg. */
    CIVIL(-6),
    /** Down to −12 deg. */
    NAUTICAL(-12),
    /** Down to −18 deg. */
    ASTRONOMICAL(-18),
    /** Darker it does not get. */
    NIGHT(-90);

    private final double lowestDeg;

    Twilight(double lowestDeg) {
        this.lowestDeg = lowestDeg;
    }

    /** Altitude of the Sun's centre (deg) at which this ends downward; −0.8333 for the day: 34′ of refraction and 16′ of radius. */
    public double lowestDeg() {
        return lowestDeg;
    }

    /** As a person reads it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** For an altitude of the Sun's centre (deg, −90…90), without refraction. */
    public static Twilight of(double sunAltitudeDeg) {
        for (Twilight light : values()) {
            if (sunAltitudeDeg > light.lowestDeg) {
                return light;
            }
        }
        return NIGHT;
    }
}
