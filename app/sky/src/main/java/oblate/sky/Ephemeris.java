/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/**
 * Positions of Sun, Moon and planets from a file in the JPL binary layout ({@link EphemerisFile}), held in memory. Immutable and safe for many threads.
 *
 * <p>Why not the reader of a library: a sweep over pictures asks for dates in any order, and readers that keep a window of the file re-read it
 * for each. Here a position is one Chebyshev sum by Clenshaw's recurrence, well under a microsecond at any date.
 */
public final class Ephemeris {
    static final int EARTH_MOON_BARYCENTRE = 3;
    static final int MOON = 10;
    static final int SUN = 11;
    static final String BUNDLED = "bundled";

    private static final double J2000_JD = 2451545.0;

    private final String name;
    private final String origin;
    private final double firstJd;
    private final double lastJd;
    private final double daysPerRecord;
    private final double earthMoonRatio;
    private final int wordsPerRecord;
    private final int[] firstWord;
    private final int[] coefficients;
    private final int[] subIntervals;
    private final double[] words;

    /**
     * From coefficients already read and checked.
     *
     * @param origin where they came from, for people: a file's name
     * @param layout how they stand
     * @param words the records one after the other; not copied, so not to be changed any more
     */
    Ephemeris(String origin, EphemerisLayout layout, double[] words) {
        this.origin = origin;
        name = layout.name();
        firstJd = layout.firstJd();
        lastJd = layout.lastJd();
        daysPerRecord = layout.daysPerRecord();
        earthMoonRatio = layout.earthMoonRatio();
        wordsPerRecord = layout.wordsPerRecord();
        firstWord = layout.firstWord();
        coefficients = layout.coefficients();
        subIntervals = layout.subIntervals();
        this.words = words;
    }

    /** DE405 for 1959-12-10 to 2060-01-30, as it comes with the program. */
    public static Ephemeris bundled() {
        String name = "unxp1959p2060.405.gz";
        try (InputStream in = Ephemeris.class.getResourceAsStream(name)) {
            return EphemerisFile.read(in, name, BUNDLED);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Another file in the JPL binary layout, of either byte order, gzipped or not, checked before use.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#BAD_EPHEMERIS} when it cannot be used
     */
    public static Ephemeris read(Path file) {
        return EphemerisFile.read(file);
    }

    /** Name as usual, e.g. "DE405". */
    public String name() {
        return name;
    }

    /** Where the coefficients came from: the name of a file, or {@code bundled}. */
    public String origin() {
        return origin;
    }

    /** Whether these are the positions that come with the program. */
    public boolean isBundled() {
        return origin.equals(BUNDLED);
    }

    /** Whether a body's coefficients are there; only Pluto's may be missing. */
    boolean has(int body) {
        return coefficients[body] > 0;
    }

    /** Length of a record (days). */
    double daysPerRecord() {
        return daysPerRecord;
    }

    /** Julian date (TDB) of a number of days of TDB from J2000. */
    double jd(double tdbDays) {
        return tdbDays + J2000_JD;
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
        return bodyKm(EARTH_MOON_BARYCENTRE, tdbDays).plus(-1 / (1 + earthMoonRatio), bodyKm(MOON, tdbDays));
    }

    /**
     * A body from the solar system's barycentre (km, ICRF axes), the Moon from the Earth's centre.
     *
     * @param body 1 Mercury … 9 Pluto (3: Earth–Moon barycentre; 4 to 9: the system's barycentre), 10 Moon, 11 Sun
     * @param tdbDays days of TDB from J2000, within the span
     */
    Vec3 bodyKm(int body, double tdbDays) {
        double fromFirst = tdbDays - firstTdbDay();
        int records = words.length / wordsPerRecord;
        int record = Math.max(0, Math.min((int) (fromFirst / daysPerRecord), records - 1));
        int parts = subIntervals[body];
        double inParts = (fromFirst - record * daysPerRecord) / daysPerRecord * parts;
        int part = Math.max(0, Math.min((int) inParts, parts - 1));
        double x = 2 * (inParts - part) - 1;
        int n = coefficients[body];
        int at = record * wordsPerRecord + firstWord[body] + 3 * n * part;
        return new Vec3(chebyshev(at, n, x), chebyshev(at + n, n, x), chebyshev(at + 2 * n, n, x));
    }

    /** A body (km) at the very start of a record (counted from 0), by that record's coefficients. */
    Vec3 atRecordStart(int body, int record) {
        return atEnd(body, record, 0, -1);
    }

    /** A body (km) at the very end of a record (counted from 0), by that record's coefficients. */
    Vec3 atRecordEnd(int body, int record) {
        return atEnd(body, record, subIntervals[body] - 1, 1);
    }

    private Vec3 atEnd(int body, int record, int part, double x) {
        int n = coefficients[body];
        int at = record * wordsPerRecord + firstWord[body] + 3 * n * part;
        return new Vec3(chebyshev(at, n, x), chebyshev(at + n, n, x), chebyshev(at + 2 * n, n, x));
    }

    /** Clenshaw's recurrence for Σ cₖ Tₖ(x), −1 ≤ x ≤ 1. */
    private double chebyshev(int at, int n, double x) {
        double b1 = 0;
        double b2 = 0;
        for (int k = n - 1; k > 0; k--) {
            double b = 2 * x * b1 - b2 + words[at + k];
            b2 = b1;
            b1 = b;
        }
        return x * b1 - b2 + words[at];
    }
}
