/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/** Breaks a sentence into lines that fit. */
final class WrappedWords {
    private WrappedWords() {}

    /** Fills an area with night and a sentence in its middle. */
    static void paint(Graphics2D g, String text, Dimension area, Palette colours) {
        g.setColor(colours.night());
        g.fillRect(0, 0, area.width, area.height);
        g.setFont(Theme.bodyFont(1));
        g.setColor(colours.nightInk());
        FontMetrics m = g.getFontMetrics();
        List<String> lines = lines(text, m, area.width - 80);
        double y = area.height / 2.0 - lines.size() * m.getHeight() / 2.0;
        for (String line : lines) {
            g.drawString(line, (area.width - m.stringWidth(line)) / 2f, (float) y);
            y += m.getHeight();
        }
    }

    static List<String> lines(String text, FontMetrics metrics, int widthPx) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("\\s+")) {
            if (line.length() > 0 && metrics.stringWidth(line + " " + word) > widthPx) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        if (line.length() > 0) {
            lines.add(line.toString());
        }
        return lines;
    }
}
