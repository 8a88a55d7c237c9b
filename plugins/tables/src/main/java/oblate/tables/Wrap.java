/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import java.util.ArrayList;
import java.util.List;

/** Breaks a text into lines of a width, at blanks where there are some. */
final class Wrap {

    private Wrap() {}

    static List<String> lines(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        int used = 0;
        for (String word : tame(text).split(" ", -1)) {
            int wordWidth = TextWidth.of(word);
            if (!line.isEmpty() && used + 1 + wordWidth > width) {
                lines.add(line.toString());
                line.setLength(0);
                used = 0;
            }
            if (!line.isEmpty()) {
                line.append(' ');
                used++;
            }
            used += broken(word, width, used, line, lines);
        }
        lines.add(line.toString());
        return lines;
    }

    /** Appends a word, cutting it where it is longer than a line; gives how much wider the current line became. */
    private static int broken(String word, int width, int used, StringBuilder line, List<String> lines) {
        int now = used;
        for (int cp : word.codePoints().toArray()) {
            int w = TextWidth.of(cp);
            if (now + w > width && !line.isEmpty()) {
                lines.add(line.toString());
                line.setLength(0);
                now = 0;
            }
            line.appendCodePoint(cp);
            now += w;
        }
        return now - used;
    }

    /** Without line ends and control characters, which could move a terminal's cursor. */
    static String tame(String text) {
        StringBuilder tame = new StringBuilder(text.length());
        text.codePoints().forEach(cp -> tame.appendCodePoint(Character.isISOControl(cp) ? ' ' : cp));
        return tame.toString();
    }
}
