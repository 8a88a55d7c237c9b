/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One longitude of a feature.
 *
 * @param time mid-time of the picture, UTC
 * @param lonDeg planetographic longitude in the series' system (deg, any turn)
 * @param sigmaDeg its standard error (deg), positive
 * @param latGraphicDeg planetographic latitude (deg), if measured
 * @param sigmaLatDeg its standard error (deg), if measured
 */
public record LongitudePoint(
        Instant time, double lonDeg, double sigmaDeg, OptionalDouble latGraphicDeg, OptionalDouble sigmaLatDeg) {

    /**
     * Checks the ranges, so that no later figure can come out as no number.
     *
     * @throws IllegalArgumentException when a number is not finite, a standard error is not positive, or the latitude lies beyond a pole
     */
    public LongitudePoint {
        Objects.requireNonNull(time);
        if (!Double.isFinite(lonDeg)
                || !isSigma(sigmaDeg)
                || latGraphicDeg.isPresent() && !(Math.abs(latGraphicDeg.getAsDouble()) <= 90)
                || sigmaLatDeg.isPresent() && !isSigma(sigmaLatDeg.getAsDouble())) {
            throw new IllegalArgumentException(lonDeg + " ± " + sigmaDeg + ", " + latGraphicDeg + " ± " + sigmaLatDeg);
        }
    }

    private static boolean isSigma(double value) {
        return value > 0 && Double.isFinite(value);
    }
}
