/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import oblate.workbench.words.Texts;

/** Which way up discs are shown. */
public enum Bearing {
    NORTH_UP,
    SOUTH_UP,
    AS_TAKEN;

    private static final Texts TEXTS = Texts.of(Bearing.class);

    /** What a person reads. */
    public String words() {
        return TEXTS.word("bearing", this);
    }

    /** The one after, round and round. */
    public Bearing next() {
        return values()[(ordinal() + 1) % values().length];
    }

    /**
     * Angle to turn a picture clockwise by so that it stands this way (deg).
     *
     * @param poleAngleDeg direction of the north pole from straight up, counter-clockwise as displayed (deg)
     */
    public double turnDeg(double poleAngleDeg) {
        return switch (this) {
            case NORTH_UP -> poleAngleDeg;
            case SOUTH_UP -> poleAngleDeg + 180;
            case AS_TAKEN -> 0;
        };
    }
}
