/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/** Stops a record that grows without end, such as after a quote that is never closed, before it fills the memory. */
final class GuardedReader extends FilterReader {
    static final int LONGEST_RECORD = 100_000;

    private int length;
    private boolean quoted;

    GuardedReader(Reader in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        int c = super.read();
        if (c >= 0) {
            count((char) c);
        }
        return c;
    }

    @Override
    public int read(char[] buffer, int offset, int wanted) throws IOException {
        int got = super.read(buffer, offset, wanted);
        for (int i = 0; i < got; i++) {
            count(buffer[offset + i]);
        }
        return got;
    }

    private void count(char c) throws RecordTooLongException {
        if (c == '"') {
            quoted = !quoted;
        }
        length = !quoted && (c == '\n' || c == '\r') ? 0 : length + 1;
        if (length > LONGEST_RECORD) {
            throw new RecordTooLongException();
        }
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    /** The record is longer than any row of marks. */
    static final class RecordTooLongException extends IOException {
        private static final long serialVersionUID = 1L;

        RecordTooLongException() {
            super("one row has more than " + LONGEST_RECORD + " characters; is a quote left open?");
        }
    }
}
