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
    private final int records;

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
        records = layout.records();
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

    /** Number of records. */
    int records() {
        return records;
    }

    /** Equal parts of a record, each with coefficients of its own. */
    int parts(int body) {
        return subIntervals[body];
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

    /** A body (km) by the coefficients of one sub-interval of a record, both counted from 0, at −1 (its start) … 1 (its end). */
    Vec3 inPart(int body, int record, int part, double x) {
        int n = coefficients[body];
        int at = record * wordsPerRecord + firstWord[body] + 3 * n * part;
        return new Vec3(sum(at, n, 2 * x), sum(at + n, n, 2 * x), sum(at + 2 * n, n, 2 * x));
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
