/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/**
 * What the moons beside a planet say about a picture's time.
 *
 * @param verdict whether the stated time agrees
 * @param moons how many moons it rests on
 * @param offsetS time that fits the moons less the stated one (s); NaN when they say nothing
 * @param sigmaS its standard error (s); NaN when they say nothing
 * @param words one sentence for people, with the likely reason of a disagreement
 */
public record ClockFinding(Verdict verdict, int moons, double offsetS, double sigmaS, String words) {

    /** Outcomes. */
    public enum Verdict {
        AGREES,
        DISAGREES,
        UNDECIDED
    }
}
