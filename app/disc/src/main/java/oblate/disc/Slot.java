/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * Places of the forward model's parameters in its vector. Lengths are pixels of the plane that is fitted; angles are radians. The values of the
 * brightness pattern follow from {@link #PATTERN} on.
 */
final class Slot {
    /** Centre of the globe, right. */
    static final int X = 0;
    /** Centre, down. */
    static final int Y = 1;
    /** Equatorial radius. */
    static final int RADIUS = 2;
    /** Pole angle. */
    static final int ANGLE = 3;
    /** Exponent of the incidence cosine. */
    static final int SUN = 4;
    /** Exponent of the emission cosine. */
    static final int VIEW = 5;
    /** Width (sigma) of the narrow part of the blur. */
    static final int CORE = 6;
    /** Strength of the negative ring that sharpening leaves. */
    static final int RING = 7;
    /** Its width, in core widths. */
    static final int RING_WIDTH = 8;
    /** Strength of the wide halo. */
    static final int HALO = 9;
    /** Tone exponent. */
    static final int TONE = 10;
    /** Background at the centre. */
    static final int BACK = 11;
    /** Its slope per radius, right. */
    static final int BACK_X = 12;
    /** Its slope per radius, down. */
    static final int BACK_Y = 13;
    /** Relative brightness slope along the equator, per radius. */
    static final int LEAN = 14;
    /** Brightness that the finishing took for black and cut away. */
    static final int BLACK = 15;
    /** Width of the halo, in core widths. */
    static final int HALO_WIDTH = 16;
    /** Share of the light that does not vanish towards the limb. */
    static final int HARD = 17;
    /** First value of the pattern. */
    static final int PATTERN = 18;

    private Slot() {}
}
