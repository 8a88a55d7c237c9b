/* SPDX-License-Identifier: Apache-2.0 */
package oblate.disc;

/** What the picture shows of the pattern where a fit begins. */
final class PatternStart {
    private PatternStart() {}

    /** Sets the pattern among the parameters to the brightness over light, inside. */
    static void set(Plane plane, ForwardModel model, double[] p) {
        model.painter.paint(p);
        Pattern pattern = model.pattern;
        int globe = pattern.globeSize();
        double[] sum = new double[pattern.size()];
        double[] weightSum = new double[pattern.size()];
        int[] hat = new int[4];
        double[] weight = new double[4];
        double total = 0;
        double totalWeight = 0;
        for (int i = 0; i < plane.samples().length; i++) {
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
}
