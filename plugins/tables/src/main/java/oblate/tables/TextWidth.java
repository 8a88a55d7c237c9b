/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

/** Columns a text takes on a terminal: two for wide East Asian signs, none for combining marks. Stateless. */
final class TextWidth {

    private TextWidth() {}

    static int of(String text) {
        return text.codePoints().map(TextWidth::of).sum();
    }

    static int of(int codePoint) {
        int type = Character.getType(codePoint);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT) {
            return 0;
        }
        boolean wide = codePoint >= 0x1100 && codePoint <= 0x115F
                || codePoint >= 0x2E80 && codePoint <= 0xA4CF
                || codePoint >= 0xAC00 && codePoint <= 0xD7A3
                || codePoint >= 0xF900 && codePoint <= 0xFAFF
                || codePoint >= 0xFE30 && codePoint <= 0xFE6F
                || codePoint >= 0xFF00 && codePoint <= 0xFF60
                || codePoint >= 0xFFE0 && codePoint <= 0xFFE6
                || codePoint >= 0x1F300 && codePoint <= 0x1FAFF
                || codePoint >= 0x20000 && codePoint <= 0x3FFFD;
        return wide ? 2 : 1;
    }

    static String padRight(String text, int width) {
        return text + " ".repeat(Math.max(0, width - of(text)));
    }

    static String padLeft(String text, int width) {
        return " ".repeat(Math.max(0, width - of(text))) + text;
    }
}
