/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import oblate.workbench.Bearing;
import oblate.workbench.words.Texts;

/** What is up in the drawing. */
enum Facing {
    /** The planet's north pole. */
    NORTH_UP("facing.north"),
    /** The planet's south pole. */
    SOUTH_UP("facing.south"),
    /** The sky's north: the planet stands as tilted as it is. */
    SKY_NORTH_UP("facing.skynorth"),
    /** The sky's south. */
    SKY_SOUTH_UP("facing.skysouth");

    private static final Texts TEXTS = Texts.of(Facing.class);

    private final String key;

    Facing(String key) {
        this.key = key;
    }

    /** What a person reads. */
    @Override
    public String toString() {
        return TEXTS.text(key);
    }

    /** The one that goes with the window's; pictures as taken have no like here and give the sky's north. */
    static Facing like(Bearing bearing) {
        return switch (bearing) {
            case NORTH_UP -> NORTH_UP;
            case SOUTH_UP -> SOUTH_UP;
            case AS_TAKEN -> SKY_NORTH_UP;
        };
    }

    /**
     * How far the planet's north pole is turned from straight up, counter-clockwise in the sky's sense (deg).
     *
     * @param northPolePaDeg position angle of the pole, from the sky's north through east (deg)
     */
    double poleTurnDeg(double northPolePaDeg) {
        return switch (this) {
            case NORTH_UP -> 0;
            case SOUTH_UP -> 180;
            case SKY_NORTH_UP -> northPolePaDeg;
            case SKY_SOUTH_UP -> northPolePaDeg + 180;
        };
    }
}
