/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky.event;

import java.util.function.DoubleFunction;
import oblate.sky.Vec3;

/**
 * A smooth motion kept as Chebyshev pieces, each made when first asked for. Not safe for many threads.
 *
 * <p>Why: a sum of a hundred cosines costs microseconds, ten coefficients tens of nanoseconds. Pieces begin at whole multiples of their length,
 * whatever the span, so that two searches that overlap use the same pieces and find the same times to the last digit.
 *
 * <p>How good: with {@value #NODES} nodes over an eighth of a turn the interpolation of r·exp(iωt) errs by 2 r (π/16)^n / n! = 5e-14 r; a term
 * at five times the frequency (hundreds of km) by 1e-7 of itself. Both are below a metre, 0.1 ms of any moon's time.
 */
final class Track {
    private static final int NODES = 10;
    private static final double[][] COSINES = cosines();

    private final DoubleFunction<Vec3> motion;
    private final double pieceDays;
    private final long firstPiece;
    private final double[][] pieces;

    /**
     * @param motion place (any unit) at a time (days)
     * @param pieceDays length of a piece (days)
     * @param fromDay start of the span (days)
     * @param toDay its end
     */
    Track(DoubleFunction<Vec3> motion, double pieceDays, double fromDay, double toDay) {
        this.motion = motion;
        this.pieceDays = pieceDays;
        firstPiece = (long) Math.floor(fromDay / pieceDays);
        long last = (long) Math.floor(toDay / pieceDays);
        pieces = new double[Math.toIntExact(last - firstPiece + 1)][];
    }

    /** Place at a time (days) of the span. */
    Vec3 at(double day) {
        double inPieces = day / pieceDays;
        double floor = Math.floor(inPieces);
        int index = (int) ((long) floor - firstPiece);
        double[] c = pieces[index];
        if (c == null) {
            c = piece(floor * pieceDays);
            pieces[index] = c;
        }
        return sum(c, 2 * (inPieces - floor) - 1);
    }

    /** Clenshaw's recurrence for Σ cₖ Tₖ(x), the three coordinates side by side. */
    private static Vec3 sum(double[] c, double x) {
        double twice = 2 * x;
        double x1 = 0;
        double x2 = 0;
        double y1 = 0;
        double y2 = 0;
        double z1 = 0;
        double z2 = 0;
        for (int k = 3 * NODES - 3; k > 0; k -= 3) {
            double bx = twice * x1 - x2 + c[k];
            double by = twice * y1 - y2 + c[k + 1];
            double bz = twice * z1 - z2 + c[k + 2];
            x2 = x1;
            y2 = y1;
            z2 = z1;
            x1 = bx;
            y1 = by;
            z1 = bz;
        }
        return new Vec3(x * x1 - x2 + c[0], x * y1 - y2 + c[1], x * z1 - z2 + c[2]);
    }

    private double[] piece(double start) {
        double[] c = new double[3 * NODES];
        for (int j = 0; j < NODES; j++) {
            Vec3 place = motion.apply(start + (COSINES[1][j] + 1) / 2 * pieceDays);
            for (int k = 0; k < NODES; k++) {
                double weight = (k == 0 ? 1.0 : 2.0) / NODES * COSINES[k][j];
                c[3 * k] += weight * place.x();
                c[3 * k + 1] += weight * place.y();
                c[3 * k + 2] += weight * place.z();
            }
        }
        return c;
    }

    /** Tₖ at the j-th node. */
    private static double[][] cosines() {
        double[][] t = new double[NODES][NODES];
        for (int k = 0; k < NODES; k++) {
            for (int j = 0; j < NODES; j++) {
                t[k][j] = Math.cos(k * Math.PI * (j + 0.5) / NODES);
            }
        }
        return t;
    }
}
