/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.FontMetrics;
import java.util.ArrayList;
import java.util.List;

/** Breaks a sentence into lines that fit. */
final class WrappedWords {
    private WrappedWords() {}

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
