/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ForwardModelTest {
    private static final int SIDE = 61;

    private static double[] parameters(Pattern pattern) {
        double[] p = new double[Slot.PATTERN + pattern.size()];
        p[Slot.X] = 30.2;
        p[Slot.Y] = 29.6;
        p[Slot.RADIUS] = 20.3;
        p[Slot.ANGLE] = 0.3;
        p[Slot.SUN] = 0.9;
        p[Slot.VIEW] = -0.1;
        p[Slot.CORE] = 1.8;
        p[Slot.RING] = 1.2;
        p[Slot.RING_WIDTH] = 1.6;
        p[Slot.HALO] = 0.1;
        p[Slot.HALO_WIDTH] = 3;
        p[Slot.HARD] = 0.08;
        p[Slot.TONE] = 0.9;
        p[Slot.BACK] = 0.02;
        p[Slot.LEAN] = 0.03;
        for (int k = 0; k < pattern.size(); k++) {
            p[Slot.PATTERN + k] = 0.8 + 0.15 * Math.sin(k);
        }
        return p;
    }

    private static ForwardModel model(Pattern pattern) {
        GlobeView view = new GlobeView(TestDiscs.disc(TestDiscs.jupiter(), 10, 3, 3, 2));
        return new ForwardModel(view, false, pattern, new Plane(SIDE, SIDE, new float[SIDE * SIDE]), true, 0.01);
    }

    /** Analytic derivatives against differences of the drawn picture: their overall likeness, because pixels at the limb are averaged over. */
    @Test
    void derivativesMatchDifferences() {
        Pattern pattern = new Pattern(true, 9, 0);
        ForwardModel model = model(pattern);
        double[] p = parameters(pattern);
        model.evaluate(p, false);
        float[][] slopes = Arrays.stream(model.slope).map(float[]::clone).toArray(float[][]::new);
        double[] step = {
            0.05, 0.05, 0.05, 0.01, 0.01, 0.01, 0.02, 0.02, 0.02, 0.02, 0.01, 0.01, 0.01, 0.01, 0.01, 0.005, 0.05, 0.02
        };
        for (int k = 0; k < Slot.PATTERN; k++) {
            double[] q = p.clone();
            q[k] += step[k];
            model.evaluate(q, false);
            float[] above = model.value.clone();
            q[k] = p[k] - step[k];
            model.evaluate(q, false);
            double same = 0;
            double numeric = 0;
            double analytic = 0;
            for (int i = 0; i < above.length; i++) {
                double d = (above[i] - model.value[i]) / (2 * step[k]);
                same += d * slopes[k][i];
                numeric += d * d;
                analytic += (double) slopes[k][i] * slopes[k][i];
            }
            assertThat(same / Math.sqrt(numeric * analytic)).as("slot " + k).isGreaterThan(0.98);
            assertThat(Math.sqrt(analytic / numeric)).as("slot " + k).isCloseTo(1, within(0.08));
        }
    }

    @Test
    void patternDerivativesMatchDifferences() {
        for (Pattern pattern : new Pattern[] {new Pattern(true, 9, 0), new Pattern(false, 3, 0)}) {
            ForwardModel model = model(pattern);
            double[] p = parameters(pattern);
            model.evaluate(p, true);
            int hat = 4;
            double[] q = p.clone();
            q[Slot.PATTERN + hat] += 0.02;
            float[] before = model.value.clone();
            float[] slope = model.patternSlope[pattern.colour(hat)].clone();
            boolean[] own = new boolean[slope.length];
            for (int i = 0; i < own.length; i++) {
                own[i] = model.hatAt(pattern.colour(hat), i) == hat;
            }
            model.evaluate(q, false);
            double same = 0;
            double numeric = 0;
            double analytic = 0;
            for (int i = 0; i < slope.length; i++) {
                double d = (model.value[i] - before[i]) / 0.02;
                double s = own[i] ? slope[i] : 0;
                same += d * s;
                numeric += d * d;
                analytic += s * s;
            }
            assertThat(same / Math.sqrt(numeric * analytic)).isGreaterThan(0.98);
        }
    }

    /** Gaussians add their variances when one smooths another (textbook). */
    @Test
    void blurAddsVariances() {
        float[] in = new float[SIDE * SIDE];
        for (int i = 0; i < in.length; i++) {
            in[i] = (float) Math.exp(-(Math.pow(i % SIDE - 30, 2) + Math.pow(i / SIDE - 30, 2)) / (2 * 9.0));
        }
        float[] out = new float[in.length];
        new GaussianBlur(SIDE, SIDE).blur(in, out, 2);
        for (int i = 0; i < in.length; i++) {
            double d2 = Math.pow(i % SIDE - 30, 2) + Math.pow(i / SIDE - 30, 2);
            assertThat((double) out[i]).isCloseTo(9.0 / 13 * Math.exp(-d2 / 26), within(2e-3));
        }
    }

    /** A smooth spot keeps its place and total at half the size and back, and is widened by what is said. */
    @Test
    void halfTheSizeAndBackWidensByWhatIsSaid() {
        float[] in = new float[SIDE * SIDE];
        double variance = 16;
        for (int i = 0; i < in.length; i++) {
            in[i] = (float) Math.exp(-(Math.pow(i % SIDE - 31.3, 2) + Math.pow(i / SIDE - 28.6, 2)) / (2 * variance));
        }
        HalfSize half = new HalfSize(SIDE, SIDE);
        float[] small = new float[half.width * half.height];
        half.down(in, small);
        float[] out = new float[in.length];
        half.addUp(small, out);
        double wider = variance + HalfSize.VARIANCE;
        for (int i = 0; i < in.length; i++) {
            double d2 = Math.pow(i % SIDE - 31.3, 2) + Math.pow(i / SIDE - 28.6, 2);
            assertThat((double) out[i]).isCloseTo(variance / wider * Math.exp(-d2 / 2 / wider), within(1e-3));
        }
    }

    /** Table of the normal distribution: 0.8413 at 1, 0.0228 at −2, 0.5 at 0. */
    @Test
    void normalCurveMatchesTheTable() {
        assertThat(NormalCurve.below(1)).isCloseTo(0.841345, within(1e-6));
        assertThat(NormalCurve.below(-2)).isCloseTo(0.022750, within(1e-6));
        assertThat(NormalCurve.below(0)).isCloseTo(0.5, within(1e-6));
    }
}
