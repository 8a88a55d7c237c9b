/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import java.util.Arrays;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * Fits a {@link ForwardModel} to a plane by damped Gauss–Newton steps on all parameters jointly, with weights by zone from the residual's own
 * scatter and Cauchy weights against what the model does not know (moons, spots, captions). One use, one thread.
 */
final class ForwardFit {
    private static final int[] SHAPE = {
        Slot.SUN,
        Slot.VIEW,
        Slot.HARD,
        Slot.CORE,
        Slot.RING,
        Slot.RING_WIDTH,
        Slot.HALO,
        Slot.HALO_WIDTH,
        Slot.TONE,
        Slot.BLACK
    };
    private static final double CONVERGED_PX = 0.008;
    private static final double CAUCHY = 3;
    private static final double BAND_FACTOR = 2;
    private static final double INSIDE_FACTOR = 5;
    /** Knots whose pixels weigh less than this share of the heaviest are off the disc or in the dark. */
    private static final double LIT_SHARE = 0.1;

    private static final int THIN = 2;
    private static final int SECTORS = 36;
    private static final int INNER_SECTORS = 12;
    /** Largest steps: place 2 px, angle 3°, shapes as the notes on the method found good. */
    private static final double[] LARGEST_STEP = {2, 2, 2, Math.toRadians(3), 0.2, 0.2, 0.4, 0.5, 0.25, 0.1, 0.2};

    private final Plane plane;
    private final ForwardModel model;
    private final FitLimits limits;
    private final int size;
    private final float[] residual;
    private final byte[] zone;
    private final double[] zoneSigma = new double[3];
    private final boolean[] frozen;
    private final boolean[] bound;
    private double[] p;
    private double[][] normal;
    private double[] pull;
    private int points;

    /**
     * What came out.
     *
     * @param p parameters
     * @param covariance of centre, radius, angle (px, rad): sandwich over sectors
     * @param angleResponse by how much centre and radius (px) would follow a turn of the angle (per rad), everything else fitted again
     * @param loss mean Cauchy loss of limb band and inside, to compare two solutions of the same plane
     * @param bandLoss the same of the limb band alone, where the unlit sliver shows
     * @param bandSigma scatter of the residual in the limb band, in units of the disc's brightness
     * @param markings relative scatter of the brightness over a globe without belts, where it is lit
     * @param bound which of the first parameters sit on a bound
     * @param points pixels used
     * @param converged whether the steps became small
     */
    record Solution(
            double[] p,
            double[][] covariance,
            double[] angleResponse,
            double loss,
            double bandLoss,
            double bandSigma,
            double markings,
            boolean[] bound,
            int points,
            boolean converged) {}

    ForwardFit(Plane plane, ForwardModel model, FitLimits limits, double[] start) {
        this.plane = plane;
        this.model = model;
        this.limits = limits;
        p = start.clone();
        size = p.length;
        residual = new float[plane.samples().length];
        zone = new byte[residual.length];
        frozen = new boolean[size];
        bound = new boolean[size];
    }

    /** Sets the pattern to what the picture shows at the start's place: brightness over light, inside. */
    void startPattern() {
        model.painter.paint(p);
        Pattern pattern = model.pattern;
        int globe = pattern.globeSize();
        double[] sum = new double[pattern.size()];
        double[] weightSum = new double[pattern.size()];
        int[] hat = new int[4];
        double[] weight = new double[4];
        double total = 0;
        double totalWeight = 0;
        for (int i = 0; i < residual.length; i++) {
            float light = model.painter.light[i];
            float v = plane.samples()[i];
            if (pattern.rings() > 0 && model.painter.ringLight[i] > 0.5 && !Float.isNaN(v)) {
                int k = globe + (int) Math.round(model.painter.ringKnot[i]);
                sum[k] += Math.pow(Math.max(0, v - p[Slot.BACK]), 1 / p[Slot.TONE]);
                weightSum[k]++;
                continue;
            }
            if (light < 0.15 || Float.isNaN(v)) {
                continue;
            }
            double signal = Math.pow(Math.max(0, v - p[Slot.BACK]), 1 / p[Slot.TONE]);
            int n = pattern.hats(model.painter.u[i], model.painter.v[i], hat, weight);
            for (int k = 0; k < n; k++) {
                sum[hat[k]] += weight[k] * signal * light;
                weightSum[hat[k]] += weight[k] * light * light;
            }
            total += signal * light;
            totalWeight += light * light;
        }
        double mean = totalWeight > 0 ? total / totalWeight : 1;
        for (int k = 0; k < sum.length; k++) {
            p[Slot.PATTERN + k] = (sum[k] + (k < globe ? mean : 0)) / (weightSum[k] + 1);
        }
    }

    /** Runs up to so many steps; with {@code placeOnly} blur, photometry and tone stay as they are. */
    Solution run(int steps, boolean placeOnly) {
        for (int k : SHAPE) {
            frozen[k] = placeOnly;
        }
        double damping = 1e-3;
        boolean converged = false;
        model.evaluate(p, true);
        residuals();
        weigh();
        double cost = cost(p);
        accumulate();
        int small = 0;
        for (int step = 0; step < steps && !converged; step++) {
            double[] change = solve(damping);
            double[] before = p;
            p = moved(change);
            model.evaluate(p, step % 3 == 2);
            residuals();
            double now = cost(p);
            if (now <= cost * (1 + 1e-9) || !(cost < Double.MAX_VALUE)) {
                small = tiny(before) ? small + 1 : 0;
                converged = small >= 2;
                damping = Math.max(1e-6, damping / 5);
                weigh();
                cost = cost(p);
                accumulate();
            } else {
                boolean stuck = tiny(before);
                p = before;
                model.evaluate(p, false);
                residuals();
                damping *= 10;
                converged = stuck && damping > 1e-2 || damping > 1e4;
            }
        }
        return solution(converged);
    }

    private boolean tiny(double[] before) {
        double r = p[Slot.RADIUS];
        return Math.abs(p[Slot.X] - before[Slot.X]) < CONVERGED_PX
                && Math.abs(p[Slot.Y] - before[Slot.Y]) < CONVERGED_PX
                && Math.abs(r - before[Slot.RADIUS]) < CONVERGED_PX
                && Math.abs(p[Slot.ANGLE] - before[Slot.ANGLE]) * r < 5 * CONVERGED_PX;
    }

    private void residuals() {
        for (int i = 0; i < residual.length; i++) {
            residual[i] = plane.samples()[i] - model.value[i];
        }
    }

    /** Assigns zones (0 outside, 1 limb band, 2 inside, −1 not used) and takes their scatter. */
    private void weigh() {
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
        return z == 1 ? 1 : THIN * THIN;
    }

    private double cost(double[] at) {
        double sum = limits.priorCost(at);
        for (int i = 0; i < residual.length; i++) {
            if (zone[i] >= 0) {
                double t = residual[i] / (CAUCHY * zoneSigma[zone[i]]);
                sum += thinning(zone[i]) * CAUCHY * CAUCHY * Math.log1p(t * t);
            }
        }
        return sum;
    }

    private double weight(int i) {
        double s = zoneSigma[zone[i]];
        double t = residual[i] / (CAUCHY * s);
        return thinning(zone[i]) / (s * s * (1 + t * t));
    }

    /** Sums the normal equations; a pixel has all shared derivatives and one hat of each colour. */
    private void accumulate() {
        normal = new double[size][size];
        pull = new double[size];
        int colours = model.pattern.colours();
        int[] at = new int[Slot.PATTERN + colours];
        double[] row = new double[Slot.PATTERN + colours];
        for (int i = 0; i < residual.length; i++) {
            if (zone[i] < 0) {
                continue;
            }
            double w = weight(i);
            int m = row(i, at, row);
            for (int j = 0; j < m; j++) {
                double wj = w * row[j];
                double[] line = normal[at[j]];
                pull[at[j]] += wj * residual[i];
                for (int k = 0; k <= j; k++) {
                    line[at[k]] += wj * row[k];
                }
            }
        }
        for (int j = 0; j < size; j++) {
            for (int k = 0; k < j; k++) {
                double both = j < Slot.PATTERN || k < Slot.PATTERN ? normal[j][k] : normal[j][k] + normal[k][j];
                normal[j][k] = both;
                normal[k][j] = both;
            }
        }
        limits.addPriors(p, normal, pull);
    }

    private int row(int i, int[] at, double[] row) {
        for (int k = 0; k < Slot.PATTERN; k++) {
            at[k] = k;
            row[k] = model.slope[k][i];
        }
        int m = Slot.PATTERN;
        for (int c = 0; c < model.patternSlope.length; c++) {
            float s = model.patternSlope[c][i];
            if (s != 0) {
                int hat = model.hatAt(c, i);
                if (hat >= 0) {
                    at[m] = Slot.PATTERN + hat;
                    row[m++] = s;
                }
            }
        }
        return m;
    }

    /** A damped step; parameters that would leave their bounds are held on them and the rest solved again. */
    private double[] solve(double damping) {
        Arrays.fill(bound, false);
        for (int attempt = 0; attempt < SHAPE.length + 3; attempt++) {
            double[] change = solveFree(damping, pull.clone());
            boolean again = false;
            for (int k = 0; k < Slot.PATTERN; k++) {
                if (!frozen[k] && !bound[k] && limits.leaves(k, p[k], change[k])) {
                    bound[k] = true;
                    again = true;
                }
            }
            if (!again) {
                return change;
            }
        }
        return new double[size];
    }

    private double[] solveFree(double damping, double[] b) {
        double[][] a = new double[size][];
        for (int j = 0; j < size; j++) {
            a[j] = normal[j].clone();
            a[j][j] += damping * normal[j][j] + 1e-9;
        }
        for (int j = 0; j < size; j++) {
            if (frozen[j] || bound[j]) {
                Arrays.fill(a[j], 0);
                for (int k = 0; k < size; k++) {
                    a[k][j] = 0;
                }
                a[j][j] = 1;
                b[j] = 0;
            }
        }
        try {
            return new CholeskyDecomposition(new Array2DRowRealMatrix(a, false), 1e-8, 1e-14)
                    .getSolver()
                    .solve(new ArrayRealVector(b, false))
                    .toArray();
        } catch (MathRuntimeException notDefinite) {
            return new double[size];
        }
    }

    private double[] moved(double[] change) {
        double share = 1;
        for (int k = 0; k < LARGEST_STEP.length; k++) {
            share = Math.min(share, LARGEST_STEP[k] / Math.max(1e-12, Math.abs(change[k])));
        }
        double[] to = p.clone();
        for (int k = 0; k < size; k++) {
            to[k] += share * change[k];
        }
        limits.clamp(to);
        return to;
    }

    private Solution solution(boolean converged) {
        model.evaluate(p, true);
        residuals();
        accumulate();
        solve(0);
        double level = 0;
        int n = 0;
        double loss = 0;
        double bandLoss = 0;
        int band = 0;
        int inBand = 0;
        double scale = 2 * Math.max(limits.leastScatter(), 0.01);
        for (int i = 0; i < residual.length; i++) {
            if (zone[i] == 2) {
                level += model.value[i];
                n++;
            }
            if (zone[i] > 0) {
                loss += thinning(zone[i]) * Math.log1p(residual[i] * residual[i] / (scale * scale));
                inBand += thinning(zone[i]);
            }
            if (zone[i] == 1) {
                bandLoss += Math.log1p(residual[i] * residual[i] / (scale * scale));
                band++;
            }
        }
        double brightness = n == 0 ? 1 : Math.max(1e-3, level / n);
        return new Solution(
                p.clone(),
                sandwich(),
                angleResponse(),
                loss / Math.max(1, inBand),
                bandLoss / Math.max(1, band),
                zoneSigma[1] / BAND_FACTOR / brightness,
                markings(),
                Arrays.copyOf(bound, Slot.PATTERN),
                points,
                converged);
    }

    private double markings() {
        if (model.pattern.belts()) {
            return 0;
        }
        double most = 0;
        for (int k = 0; k < model.pattern.globeSize(); k++) {
            most = Math.max(most, normal[Slot.PATTERN + k][Slot.PATTERN + k]);
        }
        double sum = 0;
        double squares = 0;
        int n = 0;
        for (int k = 0; k < model.pattern.globeSize(); k++) {
            if (normal[Slot.PATTERN + k][Slot.PATTERN + k] > LIT_SHARE * most) {
                double v = p[Slot.PATTERN + k];
                sum += v;
                squares += v * v;
                n++;
            }
        }
        double mean = sum / Math.max(1, n);
        return mean > 0 ? Math.sqrt(Math.max(0, squares / n - mean * mean)) / mean : 1;
    }

    private double[] angleResponse() {
        boolean was = frozen[Slot.ANGLE];
        frozen[Slot.ANGLE] = true;
        double[] b = new double[size];
        for (int j = 0; j < size; j++) {
            b[j] = -normal[j][Slot.ANGLE];
        }
        double[] response = Arrays.copyOf(solveFree(0, b), 3);
        frozen[Slot.ANGLE] = was;
        return response;
    }

    /** H⁻¹ B H⁻¹ with B from scores summed over sectors, whose pixels err together; its block of centre, radius and angle. */
    private double[][] sandwich() {
        double[][] scores = new double[SECTORS + INNER_SECTORS][size];
        int colours = model.pattern.colours();
        int[] at = new int[Slot.PATTERN + colours];
        double[] row = new double[Slot.PATTERN + colours];
        for (int i = 0; i < residual.length; i++) {
            if (zone[i] < 0) {
                continue;
            }
            double around =
                    Math.atan2(i / plane.width() - p[Slot.Y], i % plane.width() - p[Slot.X]) / (2 * Math.PI) + 0.5;
            int sector = zone[i] == 2
                    ? SECTORS + Math.min(INNER_SECTORS - 1, (int) (around * INNER_SECTORS))
                    : Math.min(SECTORS - 1, (int) (around * SECTORS));
            double pullHere = weight(i) * residual[i];
            int m = row(i, at, row);
            for (int j = 0; j < m; j++) {
                scores[sector][at[j]] += pullHere * row[j];
            }
        }
        double[][] h = new double[size][];
        for (int j = 0; j < size; j++) {
            h[j] = normal[j].clone();
            h[j][j] += 1e-9;
        }
        for (int j = 0; j < size; j++) {
            if (frozen[j] || bound[j]) {
                for (int k = 0; k < size; k++) {
                    h[j][k] = 0;
                    h[k][j] = 0;
                }
                h[j][j] = 1;
                for (double[] s : scores) {
                    s[j] = 0;
                }
            }
        }
        double[][] out = new double[4][4];
        try {
            RealMatrix inverse = new CholeskyDecomposition(new Array2DRowRealMatrix(h, false), 1e-8, 1e-14)
                    .getSolver()
                    .getInverse();
            for (double[] s : scores) {
                double[] d = inverse.operate(s);
                for (int j = 0; j < 4; j++) {
                    for (int k = 0; k < 4; k++) {
                        out[j][k] += d[j] * d[k];
                    }
                }
            }
        } catch (MathRuntimeException notDefinite) {
            for (int j = 0; j < 4; j++) {
                out[j][j] = 1;
            }
        }
        return out;
    }
}
