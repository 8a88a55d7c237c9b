/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * How coefficients stand in memory, and what they reach over.
 *
 * @param name name as usual, e.g. "DE405"
 * @param firstJd Julian date (TDB) at which the first record begins
 * @param daysPerRecord length of a record (days)
 * @param records number of records
 * @param wordsPerRecord doubles in a record
 * @param earthMoonRatio mass of the Earth over that of the Moon
 * @param firstWord place of a body's first coefficient in its record, counted from 0; index 1 Mercury … 9 Pluto, 10 Moon, 11 Sun
 * @param coefficients Chebyshev coefficients of one coordinate in one sub-interval, same index; 0 for a body that is left out
 * @param subIntervals equal parts of a record, same index
 */
record EphemerisLayout(
        String name,
        double firstJd,
        double daysPerRecord,
        int records,
        int wordsPerRecord,
        double earthMoonRatio,
        int[] firstWord,
        int[] coefficients,
        int[] subIntervals) {
    /** Number of the last body: the Sun. */
    static final int BODIES = 11;

    /** Julian date (TDB) at which the last record ends. */
    double lastJd() {
        return firstJd + records * daysPerRecord;
    }
}
