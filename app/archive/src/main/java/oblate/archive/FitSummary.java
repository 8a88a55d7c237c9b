/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.List;
import java.util.OptionalDouble;
import oblate.disc.Trust;

/**
 * What a list of pictures needs to know of a picture's current fit.
 *
 * @param pictureId picture it belongs to
 * @param fitId number of the fit
 * @param trust what it thinks of itself
 * @param poleAngleDeg direction of the north pole from straight up, counter-clockwise as displayed (deg, −180…180)
 * @param mirrored whether the picture is a mirror image of the sky
 * @param reasons why it is doubtful, one sentence each
 * @param clockOffsetS time that fits the moons less the stated one (s); empty when they say nothing
 * @param clockSigmaS its standard error (s); empty when they say nothing
 */
public record FitSummary(
        long pictureId,
        long fitId,
        Trust trust,
        double poleAngleDeg,
        boolean mirrored,
        List<String> reasons,
        OptionalDouble clockOffsetS,
        OptionalDouble clockSigmaS) {
    /** The same bounds by which {@code MoonMatcher} calls a clock wrong: in standard errors, and in seconds. */
    private static final double SIGNIFICANT = 4;

    private static final double LEAST_OFFSET_S = 20;

    /** Copies the list. */
    public FitSummary {
        reasons = List.copyOf(reasons);
    }

    /** Whether the moons surely fit another time than the stated one. */
    public boolean clockDisagrees() {
        double offsetS = Math.abs(clockOffsetS.orElse(0));
        return offsetS > LEAST_OFFSET_S && offsetS > SIGNIFICANT * clockSigmaS.orElse(Double.POSITIVE_INFINITY);
    }
}
