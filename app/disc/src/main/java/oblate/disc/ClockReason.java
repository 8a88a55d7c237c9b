/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Locale;

/** Words for a stated time that the moons contradict. */
final class ClockReason {
    private static final double DAY_S = 86_400;
    private static final double HALF_HOUR_S = 1800;
    private static final double LONGEST_CAPTURE_S = 400;

    private ClockReason() {}

    static String words(double offsetS, double sigmaS, boolean rivals) {
        double near = Math.max(60, 4 * sigmaS);
        double halves = Math.rint(offsetS / HALF_HOUR_S);
        String reason;
        if (Math.abs(Math.abs(offsetS) - DAY_S) < near) {
            reason = "probably the date is off by a day";
        } else if (halves != 0 && Math.abs(halves) <= 28 && Math.abs(offsetS - halves * HALF_HOUR_S) < near) {
            reason = String.format(
                    Locale.ROOT, "probably the time zone: %+.1f h from universal time", -halves * HALF_HOUR_S / 3600);
        } else if (Math.abs(offsetS) < LONGEST_CAPTURE_S) {
            reason = "perhaps start or end of the capture was taken for its middle";
        } else {
            reason = "the clock was wrong";
        }
        return String.format(
                Locale.ROOT,
                "The moons fit a time %s %s than the stated one (± %s): %s%s; check the picture's time.",
                span(Math.abs(offsetS)),
                offsetS > 0 ? "later" : "earlier",
                span(sigmaS),
                reason,
                rivals ? ", though other times fit nearly as well" : "");
    }

    private static String span(double s) {
        return s < 120
                ? String.format(Locale.ROOT, "%.0f s", s)
                : s < 7200
                        ? String.format(Locale.ROOT, "%.1f min", s / 60)
                        : String.format(Locale.ROOT, "%.2f h", s / 3600);
    }
}
