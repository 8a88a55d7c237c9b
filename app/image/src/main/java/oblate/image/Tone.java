/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

/**
 * How samples become levels from black to white.
 *
 * @param black sample that is black
 * @param white sample that is white
 * @param gamma 1 leaves levels in proportion; above 1 lifts the dark ones
 */
public record Tone(double black, double white, double gamma) {

    /** Checks the gamma. */
    public Tone {
        if (!(gamma > 0) || !Double.isFinite(black) || !Double.isFinite(white)) {
            throw new IllegalArgumentException("black " + black + ", white " + white + ", gamma " + gamma);
        }
    }

    /** Black and white as the picture itself has them, in proportion. */
    public static Tone plain(PixelGrid grid) {
        return new Tone(grid.low(), grid.high(), 1);
    }

    /**
     * The level of a sample, 0…255.
     *
     * @param sample not NaN
     */
    public int level(double sample) {
        double share = white == black ? (sample > white ? 1 : 0) : (sample - black) / (white - black);
        double bounded = Math.max(0, Math.min(1, share));
        return (int) Math.round(255 * (gamma == 1 ? bounded : Math.pow(bounded, 1 / gamma)));
    }
}
