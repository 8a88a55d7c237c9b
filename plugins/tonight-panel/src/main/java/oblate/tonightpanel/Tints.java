/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tonightpanel;

import java.awt.Color;
import oblate.sky.Twilight;
import oblate.workbench.look.Palette;

/** Colours of the night's drawing, mixed from a theme's. Immutable. */
record Tints(Palette palette) {
    private static final int WINDOW_ALPHA = 34;
    private static final int BEST_ALPHA = 66;

    /** Background for a kind of light: in every theme the darker the later. */
    Color light(Twilight twilight) {
        double dark = twilight.ordinal() / (double) Twilight.NIGHT.ordinal();
        if (isDark()) {
            return mixed(
                    mixed(palette.ink(), palette.ground(), 0.24),
                    mixed(palette.ground(), palette.night(), 0.5),
                    1 - dark);
        }
        return mixed(palette.ink(), palette.raised(), 0.17 * dark);
    }

    /** Lines that tell the kinds of light apart without shades. */
    Color lightLine() {
        return alpha(palette.quietInk(), 60);
    }

    Color window() {
        return isDark()
                ? alpha(palette.accent(), WINDOW_ALPHA)
                : alpha(mixed(palette.accent(), palette.raised(), 0.13), 200);
    }

    Color best() {
        return isDark()
                ? alpha(palette.accent(), BEST_ALPHA)
                : alpha(mixed(palette.accent(), palette.raised(), 0.34), 220);
    }

    boolean isDark() {
        Color g = palette.ground();
        return g.getRed() + g.getGreen() + g.getBlue() < 3 * 128;
    }

    static Color alpha(Color colour, int alpha) {
        return new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), alpha);
    }

    /** So much of the first, the rest of the second. */
    static Color mixed(Color a, Color b, double share) {
        return new Color(
                (int) Math.round(a.getRed() * share + b.getRed() * (1 - share)),
                (int) Math.round(a.getGreen() * share + b.getGreen() * (1 - share)),
                (int) Math.round(a.getBlue() * share + b.getBlue() * (1 - share)));
    }
}
