/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Fits every kind of motion the marks can carry and compares them.
 *
 * <p>All are judged with one scatter, the smallest any of them needs: a scatter of its own would let the straight line hide a curve. The criterion is
 * −2 ln L + p ln N + 2p(p + 1)/(N − p − 1) and a toll of 4, 6 or 8 for acceleration, change and oscillation, because the best of many curves follows noise better than one
 * curve does.
 */
final class ModelSearch {
    /** Under so many marks only a straight line is fitted. */
    static final int FEWEST_FOR_CURVES = 12;

    private static final int FEWEST_PER_SIDE = 8;
    /** A change nearer than this share of the arc to either end is not looked for: too few marks would tell it. */
    static final double LEAST_SHARE_PER_SIDE = 0.15;

    private static final int CHANGE_PLACES = 40;
    private static final double SHORTEST_PERIOD_DAYS = 20;
    private static final double LONGEST_PERIOD_SHARE = 0.9;
    private static final double SPACINGS_PER_PERIOD = 6;
    private static final double FREQUENCIES_PER_TURN = 5;
    /** The best of many periods gains 2 ln L of 4.8 on marks of a straight line, where three numbers without a search gain 3. */
    private static final int NUMBERS_OF_PERIOD_SEARCH = 1;

    private static final int GOLDEN_STEPS = 14;
    private static final int MOST_MARKS_IN_SEARCH = 120;
    private static final int SHARPENING_FACTOR = 6;
    private static final double[] START = {4, 2, 1, 1};
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private final Arc arc;
    private final double halfSpan;
    private final OptionalDouble periodDays;
    private final int mostMarks;

    /** @param periodDays period of the oscillation when it is given (days) */
    ModelSearch(Arc arc, OptionalDouble periodDays) {
        this(arc, periodDays, MOST_MARKS_IN_SEARCH);
    }

    /** With at most so many marks taken for the search of dates and periods; the fits themselves take all. */
    ModelSearch(Arc arc, OptionalDouble periodDays, int mostMarks) {
        this.arc = arc;
        this.mostMarks = mostMarks;
        this.periodDays = periodDays;
        halfSpan = Math.max(1e-9, arc.spanDays() / 2);
    }

    /**
     * A kind of motion fitted.
     *
     * @param curve with its own scatter
     * @param criterion by which one kind is chosen, the smaller the better: that of Schwarz and a toll
     * @param schwarz −2 ln L + p ln N + 2p(p + 1)/(N − p − 1), by which all kinds share in the error of the rate
     * @param akaike corrected information criterion of Akaike, −2 ln L + 2p + 2p(p + 1)/(N − p − 1), by which all kinds share in a prediction
     */
    record Fitted(RobustCurve curve, double criterion, double schwarz, double akaike) {}

    /** The kinds of motion, the best first; only the straight line where there are few marks. */
    List<Fitted> run(Line start) {
        RobustCurve line = line(arc, start);
        List<RobustCurve> curves = new ArrayList<>(List.of(line));
        if (arc.size() >= FEWEST_FOR_CURVES) {
            RobustCurve bent = acceleration(arc, line).orElse(null);
            RobustCurve seed = bent != null && bent.logLikelihood() > line.logLikelihood() ? bent : line;
            if (bent != null && bent.used() >= FEWEST_FOR_CURVES) {
                curves.add(bent);
            }
            change(seed).filter(c -> c.used() >= 2 * FEWEST_PER_SIDE).ifPresent(curves::add);
            oscillation(seed).filter(c -> c.used() > FEWEST_FOR_CURVES).ifPresent(curves::add);
        }
        return judged(curves);
    }

    private RobustCurve line(Arc of, Line start) {
        RobustCurve line = new RobustCurve(CurveKind.RATE, of, halfSpan);
        line.theta()[0] = start.at(0);
        line.theta()[1] = start.slope() * halfSpan;
        for (int k = 0; k < 9; k++) {
            line.round(Math.pow(8, 1 - k / 8.0), false);
        }
        line.settle(true, 60);
        return line;
    }

    private Optional<RobustCurve> acceleration(Arc of, RobustCurve line) {
        RobustCurve best = null;
        double bestLog = Double.NEGATIVE_INFINITY;
        for (double first : new double[] {8, 24}) {
            RobustCurve bent = new RobustCurve(CurveKind.ACCELERATION, of, halfSpan);
            bent.theta()[0] = line.theta()[0];
            bent.theta()[1] = line.theta()[1];
            boolean told = true;
            for (int k = 0; k < 9 && told; k++) {
                told = bent.round(Math.pow(first, 1 - k / 8.0), false);
            }
            if (told && bent.settle(true, 60) && bent.logLikelihood() > bestLog) {
                best = bent;
                bestLog = bent.logLikelihood();
            }
        }
        return Optional.ofNullable(best);
    }

    private Optional<RobustCurve> change(RobustCurve seed) {
        double[] days = arc.days().clone();
        Arrays.sort(days);
        if (days.length < 2 * FEWEST_PER_SIDE) {
            return Optional.empty();
        }
        double margin = 2 * LEAST_SHARE_PER_SIDE;
        double low = Math.max(days[FEWEST_PER_SIDE - 1] / halfSpan, days[0] / halfSpan + margin);
        double high =
                Math.min(days[days.length - FEWEST_PER_SIDE] / halfSpan, days[days.length - 1] / halfSpan - margin);
        return low < high ? best(CurveKind.CHANGE, 3, seed, places(low, high, CHANGE_PLACES)) : Optional.empty();
    }

    private Optional<RobustCurve> oscillation(RobustCurve seed) {
        if (periodDays.isPresent()) {
            return best(CurveKind.OSCILLATION, 4, seed, new double[] {halfSpan / periodDays.getAsDouble()});
        }
        double span = 2 * halfSpan;
        double shortest = Math.max(SHORTEST_PERIOD_DAYS, SPACINGS_PER_PERIOD * span / arc.size());
        double low = 1 / (LONGEST_PERIOD_SHARE * span);
        double high = 1 / shortest;
        if (!(low < high)) {
            return Optional.empty();
        }
        int count = Math.min(200, (int) Math.ceil((high - low) * span * FREQUENCIES_PER_TURN) + 3);
        return best(CurveKind.OSCILLATION, 4, seed, places(low * halfSpan, high * halfSpan, count));
    }

    private static double[] places(double low, double high, int count) {
        double[] places = new double[count];
        for (int k = 0; k < count; k++) {
            places[k] = low + (high - low) * k / (count - 1);
        }
        return places;
    }

    /** The likeliest curve over places of its non-linear number, sharpened between the neighbours of the best place. */
    private Optional<RobustCurve> best(CurveKind kind, int index, RobustCurve wholeSeed, double[] places) {
        Arc thinned = arc.thinned(mostMarks);
        RobustCurve seed = of(wholeSeed, thinned);
        RobustCurve best = null;
        double bestLog = Double.NEGATIVE_INFINITY;
        int bestPlace = 0;
        for (int k = 0; k < places.length; k++) {
            RobustCurve tried = new RobustCurve(kind, thinned, halfSpan);
            tried.theta()[index] = places[k];
            if (started(tried, seed)) {
                double log = tried.logLikelihood();
                if (log > bestLog) {
                    best = tried;
                    bestLog = log;
                    bestPlace = k;
                }
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        if (places.length > 1) {
            best = of(best, arc.thinned(SHARPENING_FACTOR * mostMarks));
            best.settle(true, 4);
            bestLog = best.logLikelihood();
            double low = places[Math.max(0, bestPlace - 1)];
            double high = places[Math.min(places.length - 1, bestPlace + 1)];
            best = sharpened(best, bestLog, index, low, high);
        }
        RobustCurve whole = of(best, arc);
        return whole.settle(true, 60) ? Optional.of(whole) : Optional.empty();
    }

    /** The same curve for other marks. */
    private RobustCurve of(RobustCurve curve, Arc other) {
        RobustCurve same = new RobustCurve(curve.kind(), other, halfSpan);
        System.arraycopy(curve.theta(), 0, same.theta(), 0, curve.theta().length);
        same.scatterDeg(curve.scatterDeg());
        return same;
    }

    private static boolean started(RobustCurve curve, RobustCurve seed) {
        curve.scatterDeg(seed.scatterDeg());
        if (!curve.startFrom(seed, START[0])) {
            return false;
        }
        for (double widening : START) {
            if (!curve.round(widening, false)) {
                return false;
            }
        }
        return true;
    }

    private static RobustCurve sharpened(RobustCurve start, double startLog, int index, double from, double to) {
        double low = from;
        double high = to;
        RobustCurve best = start;
        double bestLog = startLog;
        double a = high - GOLDEN * (high - low);
        double b = low + GOLDEN * (high - low);
        double atA = Double.NaN;
        double atB = Double.NaN;
        for (int k = 0; k < GOLDEN_STEPS; k++) {
            double[] at = {a, b};
            double[] log = {atA, atB};
            for (int side = 0; side < 2; side++) {
                if (Double.isNaN(log[side])) {
                    RobustCurve tried = best.copy();
                    tried.theta()[index] = at[side];
                    log[side] = tried.settle(true, 4) ? tried.logLikelihood() : Double.NEGATIVE_INFINITY;
                    if (log[side] > bestLog) {
                        best = tried;
                        bestLog = log[side];
                    }
                }
            }
            if (log[0] >= log[1]) {
                high = b;
                b = a;
                atB = log[0];
                a = high - GOLDEN * (high - low);
                atA = Double.NaN;
            } else {
                low = a;
                a = b;
                atA = log[1];
                b = low + GOLDEN * (high - low);
                atB = Double.NaN;
            }
        }
        return best;
    }

    private List<Fitted> judged(List<RobustCurve> curves) {
        double scatter =
                curves.stream().mapToDouble(RobustCurve::scatterDeg).min().orElse(0);
        List<Fitted> fitted = new ArrayList<>();
        for (RobustCurve curve : curves) {
            RobustCurve common = curve.copy();
            common.scatterDeg(scatter);
            if (common.settle(false, 12)) {
                double log = common.logLikelihood();
                int n = Math.max(curve.used(), 2);
                boolean given = curve.kind() == CurveKind.OSCILLATION && periodDays.isPresent();
                int p = curve.kind().parameters() - (given ? 1 : 0);
                double corrected = n > p + 1 ? 2.0 * p * (p + 1) / (n - p - 1) : 1e3;
                double curveToll =
                        curve.kind() == CurveKind.RATE ? 0 : (given ? CurveKind.CHANGE : curve.kind()).searchToll();
                int searched = curve.kind() == CurveKind.OSCILLATION && !given ? NUMBERS_OF_PERIOD_SEARCH : 0;
                double misfit = -2 * log + corrected;
                double schwarz = misfit + p * Math.log(arc.size());
                fitted.add(new Fitted(curve, schwarz + curveToll, schwarz, misfit + 2 * (p + searched)));
            }
        }
        fitted.sort(Comparator.comparingDouble(Fitted::criterion));
        return fitted;
    }
}
