/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import oblate.base.ProblemException;

/**
 * Positions of Sun, Moon and planets from a file in the JPL binary layout, held whole in memory. Immutable and safe for many threads.
 *
 * <p>Why not the reader of a library: a sweep over pictures asks for dates in any order, and readers that keep a window of the file re-read it
 * for each. Here a position is one Chebyshev sum by Clenshaw's recurrence, well under a microsecond at any date.
 *
 * <p>Layout: records of equal length; the first holds titles and, at fixed places, span, Earth–Moon mass ratio and a table of where each body's
 * coefficients stand; the third and later ones hold start, end (Julian dates TDB) and coefficients (km), x then y then z per sub-interval.
 */
public final class Ephemeris {
    static final int EARTH_MOON_BARYCENTRE = 3;
    static final int MOON = 10;
    static final int SUN = 11;

    private static final double J2000_JD = 2451545.0;
    private static final long MAX_BYTES = 512L << 20;
    private static final int HEADER_BYTES = 2856;
    private static final int BODIES = 11;

    private final String name;
    private final double firstJd;
    private final double lastJd;
    private final double daysPerRecord;
    private final double earthMoonRatio;
    private final int wordsPerRecord;
    private final int[] firstWord = new int[BODIES + 1];
    private final int[] coefficients = new int[BODIES + 1];
    private final int[] subIntervals = new int[BODIES + 1];
    private final double[] words;
    private final int records;

    private Ephemeris(String fileName, ByteBuffer bytes) {
        name = "DE" + bytes.getInt(2840);
        firstJd = bytes.getDouble(2652);
        lastJd = bytes.getDouble(2660);
        daysPerRecord = bytes.getDouble(2668);
        earthMoonRatio = bytes.getDouble(2688);
        for (int body = 1; body <= BODIES; body++) {
            int at = 2696 + 12 * (body - 1);
            firstWord[body] = bytes.getInt(at) - 1;
            coefficients[body] = bytes.getInt(at + 4);
            subIntervals[body] = bytes.getInt(at + 8);
        }
        wordsPerRecord = wordsPerRecord(bytes);
        words = dataWords(fileName, bytes);
        records = words.length / wordsPerRecord;
    }

    /** DE405 for 1959-12-10 to 2060-01-30, as it comes with the program. */
    public static Ephemeris bundled() {
        String name = "unxp1959p2060.405.gz";
        try (InputStream in = Ephemeris.class.getResourceAsStream(name)) {
            return read(in, name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Another file in the JPL binary layout, of either byte order, gzipped or not.
     *
     * @throws ProblemException {@link SkyProblem#BAD_EPHEMERIS} when it cannot be used
     */
    public static Ephemeris read(Path file) {
        String name = file.getFileName().toString();
        try (InputStream in = Files.newInputStream(file)) {
            return read(in, name);
        } catch (IOException e) {
            throw bad(name, "it cannot be read (" + e.getMessage() + ")");
        }
    }

    static Ephemeris read(InputStream in, String fileName) throws IOException {
        byte[] all;
        if (fileName.toLowerCase(Locale.ROOT).endsWith(".gz")) {
            try (GZIPInputStream unzipped = new GZIPInputStream(in, 1 << 16)) {
                all = readLimited(unzipped, fileName);
            } catch (EOFException e) {
                throw bad(fileName, "it is cut short");
            }
        } else {
            all = readLimited(in, fileName);
        }
        if (all.length < 3 * HEADER_BYTES) {
            throw bad(fileName, "it has only " + all.length + " bytes");
        }
        ByteBuffer bytes = ByteBuffer.wrap(all);
        // The number of the ephemeris is a small whole number in the right byte order only.
        bytes.order(isSmall(bytes.getInt(2840)) ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
        checkHeader(fileName, bytes);
        return new Ephemeris(fileName, bytes);
    }

    private static byte[] readLimited(InputStream in, String fileName) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream(8 << 20);
        byte[] chunk = new byte[1 << 16];
        for (int n = in.read(chunk); n >= 0; n = in.read(chunk)) {
            all.write(chunk, 0, n);
            if (all.size() > MAX_BYTES) {
                throw bad(fileName, "it is larger than 512 MB");
            }
        }
        return all.toByteArray();
    }

    private static boolean isSmall(int number) {
        return number > 0 && number < 100_000;
    }

    private static void checkHeader(String fileName, ByteBuffer bytes) {
        double first = bytes.getDouble(2652);
        double last = bytes.getDouble(2660);
        double step = bytes.getDouble(2668);
        double ratio = bytes.getDouble(2688);
        boolean sane =
                isSmall(bytes.getInt(2840)) && first > 0 && last > first && last < 1e8 && step >= 1 && step <= 1000;
        if (!sane || !(ratio > 80 && ratio < 83)) {
            throw bad(fileName, "its head is not that of an ephemeris");
        }
        for (int body = 1; body <= BODIES; body++) {
            int at = 2696 + 12 * (body - 1);
            int word = bytes.getInt(at);
            int n = bytes.getInt(at + 4);
            int parts = bytes.getInt(at + 8);
            // Pluto may be left out; what an apparent place needs may not.
            boolean absent = n == 0 && body == 9;
            if (!absent && (word < 3 || word > 10_000 || n < 2 || n > 40 || parts < 1 || parts > 64)) {
                throw bad(fileName, "its table of coefficients is broken at body " + body);
            }
        }
    }

    private static int wordsPerRecord(ByteBuffer bytes) {
        int end = 0;
        for (int i = 0; i < 12; i++) {
            end = Math.max(end, endWord(bytes, 2696 + 12 * i, i == 11 ? 2 : 3));
        }
        end = Math.max(end, endWord(bytes, 2844, 3));
        int constants = bytes.getInt(2676);
        int more = 2856 + 6 * (constants - 400);
        if (constants > 400 && constants < 10_000 && more + 24 < bytes.capacity()) {
            // Newer files: names of more than 400 constants, then lunar mantle rates and TT − TDB.
            end = Math.max(end, endWord(bytes, more, 3));
            end = Math.max(end, endWord(bytes, more + 12, 1));
        }
        return end;
    }

    private static int endWord(ByteBuffer bytes, int at, int components) {
        long end = bytes.getInt(at) - 1L + (long) bytes.getInt(at + 4) * bytes.getInt(at + 8) * components;
        return bytes.getInt(at + 4) > 0 && end > 0 && end < 100_000 ? (int) end : 0;
    }

    private double[] dataWords(String fileName, ByteBuffer bytes) {
        int expected = (int) Math.round((lastJd - firstJd) / daysPerRecord);
        long needed = (expected + 2L) * wordsPerRecord * 8;
        if (expected < 1 || needed > bytes.capacity()) {
            throw bad(fileName, "it should have " + needed + " bytes and has " + bytes.capacity());
        }
        double[] data = new double[expected * wordsPerRecord];
        bytes.position(2 * wordsPerRecord * 8);
        bytes.slice().order(bytes.order()).asDoubleBuffer().get(data);
        for (int i = 0; i < expected; i++) {
            double start = data[i * wordsPerRecord];
            if (start != firstJd + i * daysPerRecord || data[i * wordsPerRecord + 1] != start + daysPerRecord) {
                throw bad(fileName, "its record " + (i + 3) + " does not begin where the one before ends");
            }
        }
        return data;
    }

    private static ProblemException bad(String fileName, String why) {
        return new ProblemException(SkyProblem.BAD_EPHEMERIS, fileName, why);
    }

    /** Name as usual, e.g. "DE405". */
    public String name() {
        return name;
    }

    /** First instant, days of TDB from J2000. */
    double firstTdbDay() {
        return firstJd - J2000_JD;
    }

    /** Last instant, days of TDB from J2000. */
    double lastTdbDay() {
        return lastJd - J2000_JD;
    }

    /** Earth's centre from the solar system's barycentre (km, ICRF axes) at a number of days of TDB from J2000. */
    Vec3 earthKm(double tdbDays) {
        WorkVec3 place = new WorkVec3();
        earth(tdbDays, place, new WorkVec3(), new WorkVec3(), new WorkVec3());
        return place.frozen();
    }

    /** Earth's centre (km) and velocity (km per day), barycentric, ICRF axes; the Moon's from the Earth's centre beside them. */
    void earth(double tdbDays, WorkVec3 place, WorkVec3 velocity, WorkVec3 moonPlace, WorkVec3 moonVelocity) {
        body(EARTH_MOON_BARYCENTRE, tdbDays, place, velocity);
        body(MOON, tdbDays, moonPlace, moonVelocity);
        double moonShare = 1 / (1 + earthMoonRatio);
        place.add(-moonShare, moonPlace);
        velocity.add(-moonShare, moonVelocity);
    }

    /**
     * A body from the solar system's barycentre (km, ICRF axes), the Moon from the Earth's centre.
     *
     * @param body 1 Mercury … 9 Pluto (3: Earth–Moon barycentre; 4 to 9: the system's barycentre), 10 Moon, 11 Sun
     * @param tdbDays days of TDB from J2000, within the span
     */
    Vec3 bodyKm(int body, double tdbDays) {
        WorkVec3 place = new WorkVec3();
        body(body, tdbDays, place, new WorkVec3());
        return place.frozen();
    }

    /**
     * As {@link #bodyKm}, with the velocity: Σ cₖ Tₖ(x) and its derivative, −1 ≤ x ≤ 1, by Clenshaw's recurrence.
     *
     * @param place set to the place (km)
     * @param velocity set to the velocity (km per day)
     */
    void body(int body, double tdbDays, WorkVec3 place, WorkVec3 velocity) {
        double fromFirst = tdbDays - firstTdbDay();
        int record = Math.max(0, Math.min((int) (fromFirst / daysPerRecord), records - 1));
        int parts = subIntervals[body];
        double inParts = (fromFirst - record * daysPerRecord) / daysPerRecord * parts;
        int part = Math.max(0, Math.min((int) inParts, parts - 1));
        double x2 = 2 * (2 * (inParts - part) - 1);
        double perDay = 2 * parts / daysPerRecord;
        int n = coefficients[body];
        int at = record * wordsPerRecord + firstWord[body] + 3 * n * part;
        place.x = sum(at, n, x2);
        velocity.x = perDay * slope(at, n, x2);
        at += n;
        place.y = sum(at, n, x2);
        velocity.y = perDay * slope(at, n, x2);
        at += n;
        place.z = sum(at, n, x2);
        velocity.z = perDay * slope(at, n, x2);
    }

    private double sum(int at, int n, double x2) {
        double b1 = 0;
        double b2 = 0;
        for (int k = at + n - 1; k > at; k--) {
            double b = x2 * b1 + (words[k] - b2);
            b2 = b1;
            b1 = b;
        }
        return 0.5 * x2 * b1 + (words[at] - b2);
    }

    /** The derivative is Σ k cₖ Uₖ₋₁(x), with Chebyshev's polynomials of the second kind. */
    private double slope(int at, int n, double x2) {
        double b1 = 0;
        double b2 = 0;
        for (int k = n - 1; k > 0; k--) {
            double b = x2 * b1 + (k * words[at + k] - b2);
            b2 = b1;
            b1 = b;
        }
        return b1;
    }
}
