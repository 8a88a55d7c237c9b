package oblate.chartpanel;

import java.awt.Color;
import java.awt.Font;
import java.util.Optional;

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
 * @param light whether the background is light, which rules out pale colours
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
        boolean light) {
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
                true);
    }
}
