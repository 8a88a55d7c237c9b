/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The mean of values that share causes of error. Each value counts by its own error, the clock left out, with Huber's weights against false ones; the mean's
 * error is then worked out with everything that is shared. A mean that used the shared parts for its weights too (Aitken) would be a little better when they are
 * exactly right, and can fall outside its own values when they are not.
 *
 * @param meanS the mean (s)
 * @param errors its error in parts
 * @param outlying numbers of values that stand off more than {@link #FAR} of their own standard errors, from 0
 */
record Pool(double meanS, ErrorParts errors, List<Integer> outlying) {
    /** From here on a value counts less (standard errors): Huber 1964 has 1.5 to 2; a generous value leaves honest data as they are. */
    private static final double HUBER = 2.5;

    /** From here on a value is said to stand off (standard errors). */
    static final double FAR = 5;

    private static final int STEPS = 40;
    private static final double LEAST_OWN_S = 1e-3;
    /** Own errors are enlarged when the sum of squares exceeds its mean by so many of its own standard errors. */
    private static final double TOO_MUCH_SCATTER = 3;

    /**
     * One value.
     *
     * @param valueS O−P (s)
     * @param errors its errors
     */
    record Value(double valueS, ErrorParts errors) {

        double apartS() {
            return Math.max(LEAST_OWN_S, errors.apartS());
        }

        private double weight() {
            double sigma =
                    Math.max(LEAST_OWN_S, errors.without(ErrorParts.CLOCK).totalS());
            return 1 / (sigma * sigma);
        }
    }

    static Pool of(List<Value> values) {
        double[] trust = new double[values.size()];
        Arrays.fill(trust, 1);
        double mean = values.size() < 3 ? mean(values, trust) : median(values);
        for (int step = 0; step < STEPS; step++) {
            double before = mean;
            for (int i = 0; i < trust.length; i++) {
                double z = Math.abs(off(values.get(i), mean));
                trust[i] = z <= HUBER ? 1 : HUBER / z;
            }
            mean = mean(values, trust);
            if (Math.abs(mean - before) < 1e-6) {
                break;
            }
        }
        List<Integer> outlying = new ArrayList<>();
        for (int i = 0; i < trust.length; i++) {
            if (Math.abs(off(values.get(i), mean)) > FAR) {
                outlying.add(i);
            }
        }
        return new Pool(mean, errors(values, trust, widening(values, trust, mean)), outlying);
    }

    private static double off(Value value, double mean) {
        return (value.valueS() - mean) / value.apartS();
    }

    private static double mean(List<Value> values, double[] trust) {
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < trust.length; i++) {
            double w = trust[i] * values.get(i).weight();
            sum += w * values.get(i).valueS();
            weights += w;
        }
        return sum / weights;
    }

    /** The weighted median: a start that few false values cannot pull away. */
    private static double median(List<Value> values) {
        List<Value> sorted = new ArrayList<>(values);
        sorted.sort(java.util.Comparator.comparingDouble(Value::valueS));
        double half = sorted.stream().mapToDouble(Value::weight).sum() / 2;
        double sum = 0;
        for (Value value : sorted) {
            sum += value.weight();
            if (sum >= half) {
                return value.valueS();
            }
        }
        return sorted.get(sorted.size() - 1).valueS();
    }

    /** How much the own errors must be enlarged for the scatter there is; never below 1. */
    private static double widening(List<Value> values, double[] trust, double mean) {
        int free = values.size() - 1;
        if (free < 1) {
            return 1;
        }
        double square = 0;
        for (int i = 0; i < trust.length; i++) {
            double z = off(values.get(i), mean);
            square += trust[i] * z * z;
        }
        square /= free;
        return square > 1 + TOO_MUCH_SCATTER * Math.sqrt(2.0 / free) ? Math.sqrt(square) : 1;
    }

    /** What is each value's own adds in squares, what is shared with its sign. */
    private static ErrorParts errors(List<Value> values, double[] trust, double widening) {
        double weights = 0;
        for (int i = 0; i < trust.length; i++) {
            weights += trust[i] * values.get(i).weight();
        }
        double own = 0;
        Map<String, Double> shared = new LinkedHashMap<>();
        for (int i = 0; i < trust.length; i++) {
            Value value = values.get(i);
            double share = trust[i] * value.weight() / weights;
            double widened =
                    widening > 1 ? widening * value.apartS() : value.errors().ownS();
            double mine = share * widened / Math.sqrt(trust[i]);
            own += mine * mine;
            value.errors().shared().forEach((cause, s) -> shared.merge(cause, share * s, Double::sum));
        }
        return new ErrorParts(Math.sqrt(own), shared);
    }
}
