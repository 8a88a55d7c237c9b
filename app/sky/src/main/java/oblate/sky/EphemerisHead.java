/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import oblate.base.ProblemException;

/**
 * The first record of a file in the JPL binary layout.
 *
 * <p>At byte 252 the names of up to 400 constants; at 2652 first and last Julian date and days per record (doubles); at 2676 the number of constants; at 2680 the
 * astronomical unit (km) and the Earth–Moon mass ratio (doubles); at 2696 twelve triples of whole numbers (first word counted from 1, coefficients, sub-intervals)
 * for Mercury … Pluto, Moon, Sun and nutation; at 2840 the number of the ephemeris; at 2844 the triple of the libration. Newer files go on with the names of
 * constants past the 400th, then triples for the rates of the lunar mantle and for TT − TDB.
 */
final class EphemerisHead {
    /** Bytes up to the end of the libration's triple. */
    static final int BYTES = 2856;

    private static final int NUMBER_AT = 2840;
    private static final int TABLE_AT = 2696;
    private static final int LIBRATION_AT = 2844;
    private static final int NAMED_IN_PLACE = 400;
    private static final int NAME_BYTES = 6;
    private static final int PLUTO = 9;
    private static final int NUTATION = 12;
    private static final int LARGEST_RECORD_WORDS = 50_000;

    private final String fileName;
    private final ByteBuffer bytes;

    /**
     * @param bytes the beginning of the file, {@link #BYTES} or more; its byte order is found and set
     * @throws ProblemException {@link SkyProblem#BAD_EPHEMERIS} when this is no such head
     */
    EphemerisHead(String fileName, ByteBuffer bytes) {
        this.fileName = fileName;
        this.bytes = bytes;
        // The number of the ephemeris is a small whole number in the right byte order only.
        bytes.order(
                isSmall(bytes.order(ByteOrder.BIG_ENDIAN).getInt(NUMBER_AT))
                        ? ByteOrder.BIG_ENDIAN
                        : ByteOrder.LITTLE_ENDIAN);
        checkNumbers();
        for (int body = 1; body <= EphemerisLayout.BODIES; body++) {
            checkBody(body);
        }
    }

    private static boolean isSmall(int number) {
        return number > 0 && number < 100_000;
    }

    private void checkNumbers() {
        boolean sane = isSmall(bytes.getInt(NUMBER_AT))
                && firstJd() > -1e7
                && lastJd() > firstJd()
                && lastJd() < 1e7
                && daysPerRecord() >= 1
                && daysPerRecord() <= 1000;
        if (!sane || !(earthMoonRatio() > 81 && earthMoonRatio() < 82)) {
            throw bad(fileName, "its head is not that of an ephemeris");
        }
        double au = bytes.getDouble(2680);
        if (!(Math.abs(au - Starlight.AU_KM) < 10)) {
            throw bad(fileName, "its head gives the astronomical unit as " + au + " km");
        }
        double records = (lastJd() - firstJd()) / daysPerRecord();
        if (records != Math.rint(records)) {
            throw bad(fileName, "its span is not a whole number of records");
        }
    }

    private void checkBody(int body) {
        int word = firstWord(body);
        int n = coefficients(body);
        int parts = subIntervals(body);
        // Pluto may be left out; what an apparent place needs may not.
        boolean absent = n == 0 && body == PLUTO;
        if (!absent && (word < 2 || word > LARGEST_RECORD_WORDS || n < 2 || n > 40 || parts < 1 || parts > 64)) {
            throw bad(fileName, "its table of coefficients is broken at body " + body);
        }
        if (absent) {
            return;
        }
        int end = word + 3 * n * parts;
        for (int other = 1; other < body; other++) {
            int otherEnd = firstWord(other) + 3 * coefficients(other) * subIntervals(other);
            if (coefficients(other) > 0 && word < otherEnd && firstWord(other) < end) {
                throw bad(fileName, "its table of coefficients gives bodies " + other + " and " + body + " one place");
            }
        }
    }

    /** Number of the ephemeris with "DE" before it. */
    String name() {
        return "DE" + number();
    }

    int number() {
        return bytes.getInt(NUMBER_AT);
    }

    double firstJd() {
        return bytes.getDouble(2652);
    }

    double lastJd() {
        return bytes.getDouble(2660);
    }

    double daysPerRecord() {
        return bytes.getDouble(2668);
    }

    double earthMoonRatio() {
        return bytes.getDouble(2688);
    }

    ByteOrder order() {
        return bytes.order();
    }

    /** Records of coefficients the head promises. */
    long records() {
        return Math.round((lastJd() - firstJd()) / daysPerRecord());
    }

    /** Place of a body's first coefficient in a record, counted from 0. */
    int firstWord(int body) {
        return bytes.getInt(tableAt(body)) - 1;
    }

    int coefficients(int body) {
        return bytes.getInt(tableAt(body) + 4);
    }

    int subIntervals(int body) {
        return bytes.getInt(tableAt(body) + 8);
    }

    private static int tableAt(int body) {
        return TABLE_AT + 12 * (body - 1);
    }

    /** Lengths a record can have (words): without and with what newer files append; the records themselves tell which. */
    List<Integer> possibleRecordWords() {
        int plain = endWord(LIBRATION_AT, 3);
        for (int body = 1; body <= NUTATION; body++) {
            plain = Math.max(plain, endWord(tableAt(body), body == NUTATION ? 2 : 3));
        }
        int constants = bytes.getInt(2676);
        long more = BYTES + (long) NAME_BYTES * Math.max(0, constants - NAMED_IN_PLACE);
        if (constants < 0 || more + 24 > bytes.capacity()) {
            return List.of(plain);
        }
        int newer = Math.max(plain, Math.max(endWord((int) more, 3), endWord((int) more + 12, 1)));
        return newer == plain ? List.of(plain) : List.of(newer, plain);
    }

    private int endWord(int at, int components) {
        long end = bytes.getInt(at) - 1L + (long) bytes.getInt(at + 4) * bytes.getInt(at + 8) * components;
        return bytes.getInt(at + 4) > 0 && end > 0 && end <= LARGEST_RECORD_WORDS ? (int) end : 0;
    }

    static ProblemException bad(String fileName, String why) {
        return new ProblemException(SkyProblem.BAD_EPHEMERIS, fileName, why);
    }
}
