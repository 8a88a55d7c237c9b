/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

/**
 * An instant in the time scales this stage computes with.
 *
 * @param utc the instant as the clock shows it
 * @param ttMinusUtcS TT − UTC (s)
 * @param ttDays days of TT from J2000
 * @param tdbDays days of TDB from J2000
 */
record Moment(UtcTime utc, double ttMinusUtcS, double ttDays, double tdbDays) {
    private static final long J2000_EPOCH_DAY = 10957;

    static Moment of(UtcTime utc, LeapSeconds leapSeconds) {
        double ttMinusUtcS = leapSeconds.ttMinusUtcS(utc);
        double ttDays = ttDays(utc, ttMinusUtcS);
        return new Moment(utc, ttMinusUtcS, ttDays, ttDays + tdbMinusTtS(ttDays) / 86400);
    }

    /** Days of TT from J2000. */
    static double ttDays(UtcTime utc, double ttMinusUtcS) {
        return utc.epochDay() - J2000_EPOCH_DAY - 0.5 + (utc.secondOfDay() + ttMinusUtcS) / 86400;
    }

    /** The reading of the UTC clock at a number of days of TDB from J2000; inverse of {@link #of}, leap seconds apart. */
    static UtcTime utcAt(double tdbDays, LeapSeconds leapSeconds) {
        UtcTime guess = atDays(tdbDays);
        for (int i = 0; i < 2; i++) {
            double ttMinusUtcS = leapSeconds.ttMinusUtcS(guess);
            guess = atDays(tdbDays - (tdbMinusTtS(tdbDays) + ttMinusUtcS) / 86400);
        }
        return guess;
    }

    private static UtcTime atDays(double days) {
        double whole = Math.floor(days + 0.5);
        double seconds = Math.min((days + 0.5 - whole) * 86400, Math.nextDown(86400.0));
        return new UtcTime(J2000_EPOCH_DAY + (long) whole, seconds);
    }

    /** TDB − TT (s), largest terms, good to 0.01 ms: Kaplan 2005, U.S. Naval Observatory Circular 179, eq. 2.6. */
    static double tdbMinusTtS(double ttDays) {
        double t = ttDays / 36525;
        return 0.001657 * Math.sin(628.3076 * t + 6.2401)
                + 0.000022 * Math.sin(575.3385 * t + 4.2970)
                + 0.000014 * Math.sin(1256.6152 * t + 6.1969)
                + 0.000005 * Math.sin(606.9777 * t + 4.0212)
                + 0.000005 * Math.sin(52.9691 * t + 0.4444)
                + 0.000002 * Math.sin(21.3299 * t + 5.5431)
                + 0.000010 * t * Math.sin(628.3076 * t + 4.2490);
    }
}
