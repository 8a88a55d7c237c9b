/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/** A square complex image and its Fourier transform; the side is a power of two. */
final class Spectrum {
    final int side;
    final double[] re;
    final double[] im;

    Spectrum(int side) {
        this.side = side;
        re = new double[side * side];
        im = new double[side * side];
    }

    Spectrum transform(TransformType type) {
        double[][] line = new double[2][side];
        for (int y = 0; y < side; y++) {
            System.arraycopy(re, y * side, line[0], 0, side);
            System.arraycopy(im, y * side, line[1], 0, side);
            FastFourierTransformer.transformInPlace(line, DftNormalization.STANDARD, type);
            System.arraycopy(line[0], 0, re, y * side, side);
            System.arraycopy(line[1], 0, im, y * side, side);
        }
        for (int x = 0; x < side; x++) {
            for (int y = 0; y < side; y++) {
                line[0][y] = re[y * side + x];
                line[1][y] = im[y * side + x];
            }
            FastFourierTransformer.transformInPlace(line, DftNormalization.STANDARD, type);
            for (int y = 0; y < side; y++) {
                re[y * side + x] = line[0][y];
                im[y * side + x] = line[1][y];
            }
        }
        return this;
    }

    /** Correlations a ⋆ s (real part) and b ⋆ t (imaginary part) of real images given by their transforms. */
    static Spectrum correlations(Spectrum a, Spectrum s, Spectrum b, Spectrum t) {
        Spectrum out = new Spectrum(a.side);
        for (int i = 0; i < out.re.length; i++) {
            double pr = a.re[i] * s.re[i] + a.im[i] * s.im[i];
            double pi = a.im[i] * s.re[i] - a.re[i] * s.im[i];
            double qr = b.re[i] * t.re[i] + b.im[i] * t.im[i];
            double qi = b.im[i] * t.re[i] - b.re[i] * t.im[i];
            out.re[i] = pr - qi;
            out.im[i] = pi + qr;
        }
        return out.transform(TransformType.INVERSE);
    }
}
