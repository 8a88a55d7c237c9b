/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * A stretch of time.
 *
 * @param from its beginning
 * @param to its end, not before the beginning
 */
public record TimeSpan(UtcTime from, UtcTime to) {

    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException when the end lies before the beginning
     */
    public TimeSpan {
        if (to.compareTo(from) < 0) {
            throw new IllegalArgumentException(from + " to " + to);
        }
    }

    /** Length by the clock (s), leap seconds not counted. */
    public double clockSeconds() {
        return to.clockSecondsSince(from);
    }

    /** Whether a time lies in it, ends included. */
    public boolean contains(UtcTime time) {
        return time.compareTo(from) >= 0 && time.compareTo(to) <= 0;
    }
}
