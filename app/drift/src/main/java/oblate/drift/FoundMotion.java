/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * The kinds of motion compared, with what the best makes of the marks.
 *
 * @param alternatives kinds of motion, the chosen first
 * @param residualDeg of each mark (deg)
 * @param goodness of each mark
 * @param scatterDeg added scatter (deg)
 * @param middleDay where the epoch belongs (day of the arc)
 */
record FoundMotion(
        List<Alternative> alternatives, double[] residualDeg, double[] goodness, double scatterDeg, double middleDay) {

    /**
     * Fits every kind the marks can carry.
     *
     * @param straight the robust straight line
     * @param periodDays period of the oscillation when it is given (days)
     */
    static FoundMotion search(Arc arc, RobustLine straight, OptionalDouble periodDays) {
        Instant zero = Instant.ofEpochSecond((long) arc.zeroEpochS());
        int used = straight.used();
        // With two marks nothing is left over to estimate a scatter from: the stated errors stand alone.
        Curve line = Curve.of(straight.line(), zero, used > 2 ? Math.sqrt(used / (used - 2.0)) : 1);
        if (arc.size() < ModelSearch.FEWEST_FOR_CURVES) {
            return of(arc, List.of(new Alternative(line, 0, 1, 1)), straight);
        }
        List<ModelSearch.Fitted> told = new ArrayList<>();
        List<Curve> curves = new ArrayList<>();
        for (ModelSearch.Fitted each : new ModelSearch(arc, periodDays).run(straight.line())) {
            Optional<Curve> curve = each.curve().kind() == CurveKind.RATE
                    ? Optional.of(line)
                    : Curve.of(each.curve(), zero, periodDays.isPresent());
            curve.ifPresent(c -> {
                told.add(each);
                curves.add(c);
            });
        }
        if (told.isEmpty()) {
            return of(arc, List.of(new Alternative(line, 0, 1, 1)), straight);
        }
        RobustCurve chosen = told.get(0).curve();
        List<Alternative> alternatives = alternatives(told, curves);
        return chosen.kind() == CurveKind.RATE ? of(arc, alternatives, straight) : of(arc, alternatives, chosen);
    }

    private static List<Alternative> alternatives(List<ModelSearch.Fitted> told, List<Curve> curves) {
        double[] belief = shares(told, ModelSearch.Fitted::schwarz);
        double[] weight = shares(told, ModelSearch.Fitted::akaike);
        List<Alternative> alternatives = new ArrayList<>();
        for (int k = 0; k < belief.length; k++) {
            double more = told.get(k).criterion() - told.get(0).criterion();
            alternatives.add(new Alternative(curves.get(k), more, belief[k], weight[k]));
        }
        return List.copyOf(alternatives);
    }

    private static double[] shares(List<ModelSearch.Fitted> told, ToDoubleFunction<ModelSearch.Fitted> criterion) {
        double best = told.stream().mapToDouble(criterion).min().orElse(0);
        double[] shares = told.stream()
                .mapToDouble(f -> Math.exp((best - criterion.applyAsDouble(f)) / 2))
                .toArray();
        double sum = Arrays.stream(shares).sum();
        return Arrays.stream(shares).map(share -> share / sum).toArray();
    }

    private static FoundMotion of(Arc arc, List<Alternative> alternatives, RobustLine fit) {
        double[] residual = new double[arc.size()];
        for (int i = 0; i < residual.length; i++) {
            residual[i] = RateScan.residual(arc, fit.line(), i);
        }
        return new FoundMotion(
                alternatives,
                residual,
                fit.goodness(),
                fit.scatterDeg(),
                fit.line().xMiddle());
    }

    private static FoundMotion of(Arc arc, List<Alternative> alternatives, RobustCurve fit) {
        double[] residual = new double[arc.size()];
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < residual.length; i++) {
            residual[i] = fit.residual(i);
            if (fit.goodness()[i] >= 0.5) {
                first = Math.min(first, arc.days()[i]);
                last = Math.max(last, arc.days()[i]);
            }
        }
        return new FoundMotion(alternatives, residual, fit.goodness().clone(), fit.scatterDeg(), (first + last) / 2);
    }

    Curve curve() {
        return alternatives.get(0).curve();
    }

    boolean isUsed(int i) {
        return goodness[i] >= 0.5;
    }

    int used() {
        int used = 0;
        for (double good : goodness) {
            used += good >= 0.5 ? 1 : 0;
        }
        return used;
    }
}
