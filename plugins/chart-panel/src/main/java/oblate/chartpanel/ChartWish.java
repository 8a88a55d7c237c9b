/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.Color;
import java.awt.Font;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/**
 * How a chart is to look.
 *
 * @param title written above; may be empty
 * @param system label of the longitudes' system
 * @param growsLeft whether longitude grows to the left, as on maps with north up of planets that turn as the Earth does
 * @param alone name of the one feature shown; empty for all
 * @param ground background
 * @param ink text and axes
 * @param quiet grid lines
 * @param font font of the labels
 * @param colours of the features, in turn; after the last the shape of the points changes
 */
public record ChartWish(
        String title,
        String system,
        boolean growsLeft,
        Optional<String> alone,
        Color ground,
        Color ink,
        Color quiet,
        Font font,
        List<Color> colours) {
    /** Okabe–Ito without black and, on light grounds, without yellow. */
    private static final List<Color> ON_DARK =
            colours(0x56B4E9, 0xE69F00, 0x00A57A, 0xE0662A, 0xCC79A7, 0x3D8FD1, 0xF0E442);

    private static final List<Color> ON_RED = colours(0xD8402F, 0xA83226, 0xF05040);

    private static final List<Color> ON_LIGHT = colours(0x0072B2, 0xD55E00, 0x009E73, 0xB0588A, 0x2F94CC, 0xC98500);

    /** Copies the list. */
    public ChartWish {
        colours = List.copyOf(colours);
    }

    private static List<Color> colours(int... rgb) {
        return IntStream.of(rgb).mapToObj(Color::new).toList();
    }

    /** The look of the window's theme; without colours, those that read on its ground. */
    static ChartWish of(Palette palette, List<Color> colours) {
        return new ChartWish(
                "",
                "",
                true,
                Optional.empty(),
                palette.ground(),
                palette.quietInk(),
                palette.line(),
                Theme.bodyFont(-1),
                colours.isEmpty() ? coloursOn(palette.ground()) : colours);
    }

    /** The same look with a title and the label of a system. */
    public ChartWish of(String newTitle, String newSystem) {
        return new ChartWish(newTitle, newSystem, growsLeft, alone, ground, ink, quiet, font, colours);
    }

    /** Colours that read on a ground: in the dim red look, shades of red. */
    public static List<Color> coloursOn(Color ground) {
        if (isRed(ground)) {
            return ON_RED;
        }
        return ground.getRed() + ground.getGreen() + ground.getBlue() > 380 ? ON_LIGHT : ON_DARK;
    }

    private static boolean isRed(Color ground) {
        return ground.getRed() < 40 && ground.getRed() > 2 * ground.getBlue();
    }

    /** Whether everything is drawn in shades of dim red. */
    boolean redLight() {
        return isRed(ground);
    }

    /** For paper: black on white. */
    public static ChartWish forPaper(String title, String system) {
        return new ChartWish(
                title,
                system,
                true,
                Optional.empty(),
                Color.WHITE,
                new Color(0x1F2328),
                new Color(0xDCD9D2),
                new Font(Font.SANS_SERIF, Font.PLAIN, 12),
                ON_LIGHT);
    }
}
