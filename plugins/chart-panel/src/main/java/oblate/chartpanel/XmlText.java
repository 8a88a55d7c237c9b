/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/** Lets only characters through that XML 1.0 allows (section 2.2); a name out of a hostile file cannot spoil the document. */
final class XmlText extends FilterWriter {
    private static final char REPLACEMENT = '\uFFFD';

    XmlText(Writer out) {
        super(out);
    }

    private static char allowed(char c) {
        boolean fine = c >= ' ' && c != '\uFFFE' && c != '\uFFFF' || c == '\t' || c == '\n' || c == '\r';
        return fine ? c : REPLACEMENT;
    }

    @Override
    public void write(int c) throws IOException {
        out.write(allowed((char) c));
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
        char[] clean = new char[length];
        for (int i = 0; i < length; i++) {
            clean[i] = allowed(text[from + i]);
        }
        out.write(clean, 0, length);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        write(text.toCharArray(), from, length);
    }
}
