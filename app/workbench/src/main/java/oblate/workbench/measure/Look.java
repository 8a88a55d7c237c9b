/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import oblate.image.Tone;
import oblate.workbench.words.Texts;

/**
 * How a picture is shown. For the eye only: pixels on the disk and what is measured do not change.
 *
 * @param tone black, white and gamma
 * @param channel the colour shown
 * @param sharpen amount of sharpening, 0…3, 0 for none
 * @param red in red only, as a darkroom lamp would show it
 */
record Look(Tone tone, Channel channel, double sharpen, boolean red) {
    private static final Texts TEXTS = Texts.of(Look.class);
    /** Which colour of a picture is shown. */
    enum Channel {
        ALL,
        RED,
        GREEN,
        BLUE;

        String words() {
            return TEXTS.word("channel", this);
        }

        Channel next() {
            return values()[(ordinal() + 1) % values().length];
        }
    }
}
