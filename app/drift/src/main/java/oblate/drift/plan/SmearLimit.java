/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.util.Locale;
import oblate.sky.RotationSmear;

/**
 * How far the planet's rotation may carry the middle of the disc during a capture.
 *
 * @param amount positive, in the measure's unit
 * @param measure what is limited
 * @param scaleArcsecPerPx pixel scale (arcsec per pixel); only for pixels, else 1
 */
public record SmearLimit(double amount, Measure measure, double scaleArcsecPerPx) {

    /** What is limited. */
    public enum Measure {
        /** Degrees of longitude. */
        DEG,
        /** Pixels across the picture. */
        PX
    }

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException when one is not positive
     */
    public SmearLimit {
        if (!(amount > 0 && scaleArcsecPerPx > 0)) {
            throw new IllegalArgumentException(amount + " at " + scaleArcsecPerPx);
        }
    }

    /** So many degrees of longitude (deg). */
    public static SmearLimit ofDeg(double deg) {
        return new SmearLimit(deg, Measure.DEG, 1);
    }

    /** So many pixels (px) at a scale (arcsec per pixel). */
    public static SmearLimit ofPx(double px, double scaleArcsecPerPx) {
        return new SmearLimit(px, Measure.PX, scaleArcsecPerPx);
    }

    /** Longest capture within the limit (s); infinite when nothing on the disc moves that far. */
    public double longestS(RotationSmear smear) {
        return measure == Measure.DEG ? smear.secondsForDeg(amount) : smear.secondsForArcsec(amount * scaleArcsecPerPx);
    }

    /** In words, such as "1 px of 0.1 arcsec". */
    public String said() {
        String number = String.format(Locale.ROOT, "%s", amount == Math.rint(amount) ? (Object) (long) amount : amount);
        return measure == Measure.DEG ? number + " deg of rotation" : number + " px of " + scaleArcsecPerPx + " arcsec";
    }
}
