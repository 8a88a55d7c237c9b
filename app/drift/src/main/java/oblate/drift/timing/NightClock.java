/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/**
 * What the moons say about the clock of one night and observer: the mean O−P, the clock's own stated error left out of it.
 *
 * @param night date of the evening
 * @param observer whose clock; may be empty
 * @param fastS how far the clock was fast (s), negative when it was slow
 * @param sigmaS standard error (s)
 * @param statedSigmaS uncertainty the pictures state for their times (s), the largest
 * @param timings how many timings it rests on
 * @param moons names of the moons it rests on
 * @param doubts what speaks against it, one phrase each
 */
public record NightClock(
        LocalDate night,
        String observer,
        double fastS,
        double sigmaS,
        double statedSigmaS,
        int timings,
        List<String> moons,
        List<String> doubts) {
    private static final double AGREES = 2;
    private static final double DIFFERS = 3;
    private static final double LONGEST_CAPTURE_S = 400;

    /** Copies the lists. */
    public NightClock {
        moons = List.copyOf(moons);
        doubts = List.copyOf(doubts);
    }

    /** Outcomes. */
    public enum Verdict {
        /** Within two standard errors, the stated one included. */
        AGREES,
        /** Between two and three. */
        UNDECIDED,
        /** Beyond three. */
        DIFFERS
    }

    /** Whether the clock agrees with the moons. */
    public Verdict verdict() {
        double sigmas = Math.abs(fastS) / Math.hypot(sigmaS, statedSigmaS);
        return sigmas <= AGREES ? Verdict.AGREES : sigmas <= DIFFERS ? Verdict.UNDECIDED : Verdict.DIFFERS;
    }

    /** One sentence for people, ASCII. */
    public String words() {
        String who = observer.isEmpty() ? "" : " (" + observer + ")";
        String basis = timings + (timings == 1 ? " timing" : " timings") + " of " + String.join(", ", moons);
        String more = doubts.isEmpty() ? "" : "; " + String.join("; ", doubts);
        return switch (verdict()) {
            case AGREES ->
                String.format(
                        Locale.ROOT,
                        "Night %s%s: the clock agrees with the moons, %s +- %s s (%s)%s.",
                        night,
                        who,
                        signed(fastS),
                        figure(sigmaS, sigmaS),
                        basis,
                        more);
            case UNDECIDED ->
                String.format(
                        Locale.ROOT,
                        "Night %s%s: the clock was perhaps %s, %s +- %s s (%s)%s.",
                        night,
                        who,
                        way(),
                        figure(Math.abs(fastS), sigmaS),
                        figure(sigmaS, sigmaS),
                        basis,
                        more);
            case DIFFERS ->
                String.format(
                        Locale.ROOT,
                        "Night %s%s: the clock ran %s +- %s s %s (%s), or %s%s.",
                        night,
                        who,
                        figure(Math.abs(fastS), sigmaS),
                        figure(sigmaS, sigmaS),
                        way(),
                        basis,
                        otherwise(),
                        more);
        };
    }

    private String way() {
        return fastS > 0 ? "fast" : "slow";
    }

    private String signed(double s) {
        String digits = figure(Math.abs(s), sigmaS);
        return (s < 0 && digits.matches(".*[1-9].*") ? "-" : "+") + digits;
    }

    private String otherwise() {
        if (moons.size() == 1) {
            return moons.get(0) + " alone was taken for another, or its marks lean to one side";
        }
        return Math.abs(fastS) < LONGEST_CAPTURE_S
                ? "the times given are not the middles of the captures"
                : "the times were written down wrong";
    }

    /** With as many decimals as the error deserves. */
    private static String figure(double value, double sigma) {
        return String.format(Locale.ROOT, sigma < 2 ? "%.1f" : "%.0f", value);
    }
}
