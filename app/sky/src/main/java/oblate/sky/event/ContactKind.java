/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.Locale;

/**
 * The moments of a passage. A contact is where the moon's centre stands at a given distance from the planet's outline: so many radii of the
 * moon, and so many widths of the half-shadow, outside it.
 */
public enum ContactKind {
    /** Outer touch of the moon's disc and the outline, coming. */
    T1(true, 1, 0),
    /** Centre on the outline, coming. */
    INGRESS_CENTRE(true, 0, 0),
    /** Inner touch, coming. */
    T2(true, -1, 0),
    /** Inner touch, leaving. */
    T3(false, -1, 0),
    /** Centre on the outline, leaving. */
    EGRESS_CENTRE(false, 0, 0),
    /** Outer touch, leaving. */
    T4(false, 1, 0),
    /** First touch of the half-shadow; events seen from the Sun. */
    PENUMBRA_T1(true, 1, 1),
    /** Last touch of the half-shadow; events seen from the Sun. */
    PENUMBRA_T4(false, 1, 1),
    /** Whole moon in full shadow, first; eclipses. */
    UMBRA_T2(true, -1, -1),
    /** Whole moon in full shadow, last; eclipses. */
    UMBRA_T3(false, -1, -1),
    /** The shadow's axis comes onto the half of the globe that the Earth sees; shadow transits. */
    SEEN_INGRESS(true, 0, 0),
    /** The shadow's axis leaves the half of the globe that the Earth sees; shadow transits. */
    SEEN_EGRESS(false, 0, 0),
    /** The moon's centre on the edge of the planet's lit part, coming; transits and occultations. */
    LIT_INGRESS(true, 0, 0),
    /** The moon's centre on the edge of the planet's lit part, leaving; transits and occultations. */
    LIT_EGRESS(false, 0, 0);

    private final boolean coming;
    private final int moonRadii;
    private final int penumbraWidths;

    ContactKind(boolean coming, int moonRadii, int penumbraWidths) {
        this.coming = coming;
        this.moonRadii = moonRadii;
        this.penumbraWidths = penumbraWidths;
    }

    /** Whether it stands before the middle of the passage. */
    public boolean coming() {
        return coming;
    }

    int moonRadii() {
        return moonRadii;
    }

    int penumbraWidths() {
        return penumbraWidths;
    }

    /** Whether it is defined by a distance from the outline, rather than by what the Earth sees of the globe. */
    boolean onOutline() {
        return ordinal() <= UMBRA_T3.ordinal();
    }

    boolean belongsTo(EventKind kind) {
        return switch (this) {
            case PENUMBRA_T1, PENUMBRA_T4 -> kind.fromSun();
            case UMBRA_T2, UMBRA_T3 -> kind == EventKind.ECLIPSE;
            case SEEN_INGRESS, SEEN_EGRESS -> kind == EventKind.SHADOW_TRANSIT;
            case LIT_INGRESS, LIT_EGRESS -> !kind.fromSun();
            default -> true;
        };
    }

    /** Name of the column of its time, e.g. "penumbra_t1_utc". */
    public String column() {
        return name().toLowerCase(Locale.ROOT) + "_utc";
    }
}
