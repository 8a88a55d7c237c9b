/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;

/**
 * What a model leaves of a plane, and what each pixel weighs: by zone from the residual's own scatter, and by Cauchy against what the model does not
 * know. One use, one thread.
 */
final class Residuals {
    /** Zones, as {@link #zone} names them. */
    static final int BAND = 1;

    static final int INSIDE = 2;

    private static final double CAUCHY = 3;
    private static final double BAND_FACTOR = 2;
    private static final double INSIDE_FACTOR = 5;
    private static final int THIN = 2;

    private final Plane plane;
    private final ForwardModel model;
    private final FitLimits limits;
    private final float[] residual;
    private final byte[] zone;
    private final double[] zoneSigma = new double[3];
    private int points;

    Residuals(Plane plane, ForwardModel model, FitLimits limits) {
        this.plane = plane;
        this.model = model;
        this.limits = limits;
        residual = new float[plane.samples().length];
        zone = new byte[residual.length];
    }

    /** Takes what the model as it is now leaves of the plane. */
    void take() {
        for (int i = 0; i < residual.length; i++) {
            residual[i] = plane.samples()[i] - model.value[i];
        }
    }

    /** Assigns zones (0 outside, 1 limb band, 2 inside, −1 not used) and takes their scatter. */
    void weigh(double[] p) {
        double band = Math.max(3, Math.min(8, 3 * p[Slot.CORE]));
        float[][] size3 = new float[3][residual.length];
        int[] n = new int[3];
        for (int i = 0; i < residual.length; i++) {
            float d = model.painter.fromLimb[i];
            int z = d > band ? 0 : d < -band ? 2 : 1;
            boolean ringed = model.painter.ringLight.length > 0;
            if (ringed && z == 0 && model.painter.ringLight[i] > 0) {
                z = 2;
            }
            boolean keep = !Float.isNaN(residual[i]) && !(ringed && model.painter.unknown[i]);
            if (z != 1 && keep) {
                keep = i % plane.width() % THIN == 0 && i / plane.width() % THIN == 0;
            }
            zone[i] = (byte) (keep ? z : -1);
            if (keep) {
                size3[z][n[z]++] = Math.abs(residual[i]);
            }
        }
        points = n[0] + n[1] + n[2];
        double floor = limits.leastScatter();
        for (int z = 0; z < 3; z++) {
            Arrays.sort(size3[z], 0, n[z]);
            zoneSigma[z] = n[z] == 0 ? floor : Math.max(floor, 1.4826 * size3[z][n[z] / 2]);
        }
        zoneSigma[0] = Math.max(zoneSigma[0], 0.3 * zoneSigma[1]);
        zoneSigma[1] *= BAND_FACTOR;
        zoneSigma[2] *= INSIDE_FACTOR;
    }

    private static int thinning(int z) {
        return z == BAND ? 1 : THIN * THIN;
    }

    /** The sum that the fit makes small, priors and all. */
    double cost(double[] at) {
        double sum = limits.priorCost(at);
        for (int i = 0; i < residual.length; i++) {
            if (zone[i] >= 0) {
                double t = residual[i] / (CAUCHY * zoneSigma[zone[i]]);
                sum += thinning(zone[i]) * CAUCHY * CAUCHY * Math.log1p(t * t);
            }
        }
        return sum;
    }

    int count() {
        return residual.length;
    }

    float at(int i) {
        return residual[i];
    }

    /** 0 outside, 1 limb band, 2 inside, −1 not used. */
    int zone(int i) {
        return zone[i];
    }

    /** For how many pixels one of a zone stands. */
    int share(int i) {
        return thinning(zone[i]);
    }

    double weight(int i) {
        double s = zoneSigma[zone[i]];
        double t = residual[i] / (CAUCHY * s);
        return thinning(zone[i]) / (s * s * (1 + t * t));
    }

    /** Pixels used. */
    int points() {
        return points;
    }

    /** Scatter in the limb band. */
    double bandSigma() {
        return zoneSigma[BAND] / BAND_FACTOR;
    }
}
