/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * Smallest and largest rate found with each mark left out in turn.
 *
 * @param present false where it was not looked for
 * @param lowDegPerDay smallest rate (deg per day)
 * @param highDegPerDay largest rate (deg per day)
 */
record RateRange(boolean present, double lowDegPerDay, double highDegPerDay) {
    static final RateRange NONE = new RateRange(false, 0, 0);
}
