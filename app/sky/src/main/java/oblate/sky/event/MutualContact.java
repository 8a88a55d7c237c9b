/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.Locale;

/** The moments of an event between two moons. */
public enum MutualContact {
    /** First touch of the half-shadow; eclipses. */
    PENUMBRA_T1,
    /** Outer touch of the discs, or of the shadow at half light, coming. */
    T1,
    /** First touch of the full shadow; eclipses it reaches. */
    UMBRA_T1,
    /** Inner touch, coming: the smaller disc is wholly within the other from now on. */
    T2,
    /** Inner touch, leaving. */
    T3,
    /** Last touch of the full shadow; eclipses. */
    UMBRA_T4,
    /** Outer touch, leaving. */
    T4,
    /** Last touch of the half-shadow; eclipses. */
    PENUMBRA_T4;

    /** Name of the column of its time. */
    public String column() {
        return name().toLowerCase(Locale.ROOT) + "_utc";
    }
}
