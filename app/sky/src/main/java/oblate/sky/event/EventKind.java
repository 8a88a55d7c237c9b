/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.Locale;

/** What a moon does to its planet, or its planet to it. */
public enum EventKind {
    /** The moon before the planet's disc, as the Earth sees it. */
    TRANSIT(false, false),
    /** The moon's shadow on the planet: the moon before the disc, as the Sun sees it. */
    SHADOW_TRANSIT(true, false),
    /** The moon behind the planet, as the Earth sees it. */
    OCCULTATION(false, true),
    /** The moon in the planet's shadow: behind the planet, as the Sun sees it. */
    ECLIPSE(true, true);

    private final boolean fromSun;
    private final boolean behind;

    EventKind(boolean fromSun, boolean behind) {
        this.fromSun = fromSun;
        this.behind = behind;
    }

    /** Whether the line of sight begins at the Sun rather than at the Earth. */
    public boolean fromSun() {
        return fromSun;
    }

    /** Whether the moon stands beyond the planet on that line. */
    public boolean behind() {
        return behind;
    }

    /** Lower-case word as tables have it, e.g. "shadow_transit". */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
