/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPInputStream;

/**
 * Writes the bundled positions into the JPL binary layout as other ephemerides have it: either byte order, records of twice the length, more constants, nutation,
 * libration, lunar mantle rates and TT − TDB, other numbers, other spans.
 */
final class JplFile {
    private static final int WORDS = 818;
    private static final int BODIES = 11;

    private ByteOrder order = ByteOrder.BIG_ENDIAN;
    private int number = 405;
    private int merged = 1;
    private int constants = 156;
    private boolean angles;
    private boolean newest;
    private double shiftDays;
    private int firstRecord;
    private int records = 1142;
    private double au = 149597870.691;

    JplFile order(ByteOrder wanted) {
        order = wanted;
        return this;
    }

    JplFile number(int wanted) {
        number = wanted;
        return this;
    }

    /** Two records of 32 days in one of 64. */
    JplFile doubled() {
        merged = 2;
        return this;
    }

    JplFile constants(int wanted) {
        constants = wanted;
        return this;
    }

    /** With nutation and libration. */
    JplFile withAngles() {
        angles = true;
        return this;
    }

    /** With what newer files append: mantle rates and TT − TDB. */
    JplFile withNewest() {
        newest = true;
        return this;
    }

    /** As if it all happened later. */
    JplFile later(double days) {
        shiftDays = days;
        return this;
    }

    /** Only these records of the bundled file (32 days each). */
    JplFile only(int first, int count) {
        firstRecord = first;
        records = count;
        return this;
    }

    JplFile au(double wanted) {
        au = wanted;
        return this;
    }

    static byte[] bundled() throws IOException {
        try (InputStream in = new GZIPInputStream(Ephemeris.class.getResourceAsStream("unxp1959p2060.405.gz"))) {
            return in.readAllBytes();
        }
    }

    /** The file. */
    byte[] bytes() throws IOException {
        ByteBuffer from = ByteBuffer.wrap(bundled());
        int[][] table = new int[15][3];
        int next = 3;
        for (int body = 0; body < 15; body++) {
            int n = body < BODIES ? from.getInt(2696 + 12 * body + 4) : extra(body)[0];
            int parts = body < BODIES ? merged * from.getInt(2696 + 12 * body + 8) : extra(body)[1];
            table[body] = new int[] {next, n, n == 0 ? 0 : parts};
            next += n * parts * components(body);
        }
        int words = next - 1;
        int count = records / merged;
        ByteBuffer to = ByteBuffer.allocate((count + 2) * words * 8).order(order);
        double step = 32.0 * merged;
        double first = from.getDouble(2652) + 32.0 * firstRecord + shiftDays;
        head(to, table, first, step, count);
        for (int i = 0; i < count; i++) {
            int at = (i + 2) * words * 8;
            to.putDouble(at, first + i * step).putDouble(at + 8, first + (i + 1) * step);
            for (int body = 0; body < BODIES; body++) {
                int block = 3 * table[body][1] * table[body][2] / merged;
                int source = from.getInt(2696 + 12 * body) - 1;
                for (int half = 0; half < merged; half++) {
                    int record = 2 + firstRecord + i * merged + half;
                    for (int k = 0; k < block; k++) {
                        to.putDouble(
                                at + 8 * (table[body][0] - 1 + half * block + k),
                                from.getDouble(8 * (record * WORDS + source + k)));
                    }
                }
            }
            for (int body = BODIES; body < 15; body++) {
                for (int k = 0; k < table[body][1] * table[body][2] * components(body); k++) {
                    to.putDouble(at + 8 * (table[body][0] - 1 + k), 1e-5 * (k % 7));
                }
            }
        }
        return to.array();
    }

    /** Nutation, libration, mantle rates, TT − TDB: coefficients and sub-intervals. */
    private int[] extra(int body) {
        if (body < 13) {
            return angles ? new int[] {10, 4 * merged} : new int[] {0, 0};
        }
        return newest ? new int[] {body == 13 ? 10 : 13, 8} : new int[] {0, 0};
    }

    private static int components(int body) {
        return body == 11 ? 2 : body == 14 ? 1 : 3;
    }

    private void head(ByteBuffer to, int[][] table, double first, double step, int count) {
        byte[] title = "JPL layout, written for a test".getBytes(StandardCharsets.US_ASCII);
        to.put(0, title);
        to.putDouble(2652, first).putDouble(2660, first + count * step).putDouble(2668, step);
        to.putInt(2676, constants).putDouble(2680, au).putDouble(2688, 81.30056);
        for (int body = 0; body < 12; body++) {
            triple(to, 2696 + 12 * body, table[body]);
        }
        to.putInt(2840, number);
        triple(to, 2844, table[12]);
        int more = 2856 + 6 * Math.max(0, constants - 400);
        triple(to, more, table[13]);
        triple(to, more + 12, table[14]);
    }

    private static void triple(ByteBuffer to, int at, int[] values) {
        to.putInt(at, values[0]).putInt(at + 4, values[1]).putInt(at + 8, values[2]);
    }
}
