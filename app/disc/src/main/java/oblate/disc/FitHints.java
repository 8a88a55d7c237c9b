/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Optional;

/**
 * What is known about a picture before it is fitted. All parts may be empty.
 *
 * @param poleAngle direction of the pole with its standard error (deg)
 * @param mirrored mirror image or not
 * @param near where the disc lies, roughly: from a picture of the same run, or dragged there by hand; the search starts there
 */
public record FitHints(Optional<Angle> poleAngle, Optional<Boolean> mirrored, Optional<Placement> near) {

    /** Nothing known. */
    public static FitHints none() {
        return new FitHints(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** The pole angle (deg) with its standard error (deg), and mirrored or not. */
    public static FitHints of(double poleAngleDeg, double sigmaDeg, boolean mirrored) {
        return new FitHints(Optional.of(new Angle(poleAngleDeg, sigmaDeg)), Optional.of(mirrored), Optional.empty());
    }

    /**
     * An angle with its standard error.
     *
     * @param valueDeg the angle (deg)
     * @param sigmaDeg its standard error (deg), positive
     */
    public record Angle(double valueDeg, double sigmaDeg) {}
}
