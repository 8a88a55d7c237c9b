/* SPDX-License-Identifier: Apache-2.0 */
package oblate.format.fits;

import java.io.IOException;
import java.math.BigInteger;

/**
 * From a stored number to a sample: zero + scale × stored, or a fraction of the full range for the unsigned kinds.
 *
 * @param natural whether samples become fractions of the full range
 * @param zero BZERO
 * @param scale BSCALE
 * @param full full range of the unsigned kind
 * @param hasBlank whether one stored number marks missing pixels
 * @param blank that number
 */
record Scaling(boolean natural, double zero, double scale, double full, boolean hasBlank, long blank) {

    static Scaling of(FitsHeader header, int bitpix, boolean tiles) throws IOException {
        double zero = header.real("BZERO", 0);
        double scale = header.real("BSCALE", 1);
        if (!Double.isFinite(zero) || !Double.isFinite(scale) || scale == 0) {
            throw new IOException("BZERO " + zero + " and BSCALE " + scale + " give no samples");
        }
        double full =
                switch (bitpix) {
                    case 8 -> 255.0;
                    case 16 -> 65535.0;
                    case 32 -> 4294967295.0;
                    default -> 0;
                };
        double unsignedZero =
                switch (bitpix) {
                    case 16 -> 32768.0;
                    case 32 -> 2147483648.0;
                    default -> 0;
                };
        String blankKey = tiles && header.has("ZBLANK") ? "ZBLANK" : "BLANK";
        boolean hasBlank = bitpix > 0 && header.has(blankKey);
        return new Scaling(
                full > 0 && zero == unsignedZero && scale == 1, zero, scale, full, hasBlank, header.whole(blankKey, 0));
    }

    float whole(long stored) {
        if (hasBlank && stored == blank) {
            return Float.NaN;
        }
        if (natural) {
            return (float) ((stored + zero) / full);
        }
        if (zero == 0x1p63 && scale == 1) {
            return BigInteger.valueOf(stored).add(BigInteger.ONE.shiftLeft(63)).floatValue();
        }
        return (float) (zero + scale * stored);
    }

    float real(double stored) {
        return (float) (zero + scale * stored);
    }
}
