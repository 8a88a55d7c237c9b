/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import oblate.sky.Globe;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Fits drifts: unwraps by scanning rates, fits robustly, estimates the scatter, states honest errors. Stateless. */
public final class DriftFitter {
    private static final double RIVAL_SHARE = 0.9;
    /** Lines this near in log-likelihood are as good as each other; the slower one is taken. */
    private static final double EVEN_LOG_LIKELIHOOD = 3;

    private static final int MOST_RIVALS = 8;
    /** A toll keeps noise from being called a curve; a prediction must reckon with the curve all the same. */
    private static final double PREDICTION_SHARE_OF_TOLL = 0.5;

    private final Optional<RateWindow> window;
    private final OptionalDouble periodDays;
    private final double toll;

    /** With the window of each planet and system. */
    public DriftFitter() {
        this(Optional.empty(), OptionalDouble.empty(), 0);
    }

    /** With a window of one's own, in the system of the series to be fitted. */
    public DriftFitter(RateWindow window) {
        this(Optional.of(window), OptionalDouble.empty(), 0);
    }

    private DriftFitter(Optional<RateWindow> window, OptionalDouble periodDays, double toll) {
        this.window = window;
        this.periodDays = periodDays;
        this.toll = toll;
    }

    /**
     * The same, with the period of an oscillation given instead of fitted.
     *
     * @param days period (days), positive
     */
    public DriftFitter withPeriodDays(double days) {
        if (!(days > 0) || !Double.isFinite(days)) {
            throw new IllegalArgumentException("period of " + days + " d");
        }
        return new DriftFitter(window, OptionalDouble.of(days), toll);
    }

    /** The same, asking more of every curve: for hundreds of features fitted unseen. */
    DriftFitter withToll(double more) {
        return new DriftFitter(window, periodDays, more);
    }

    /**
     * Fits every kind of motion the marks can carry and chooses one.
     *
     * @throws oblate.base.ProblemException with {@link DriftProblem#TOO_FEW} or {@link DriftProblem#ONE_TIME}
     */
    public Drift fit(LongitudeSeries series) {
        int n = series.points().size();
        if (n < 2) {
            throw new ProblemException(DriftProblem.TOO_FEW, named(series), n);
        }
        Arc arc = Arc.of(series.points());
        if (Line.fit(arc.days(), arc.days(), ones(n)).isEmpty()) {
            throw new ProblemException(
                    DriftProblem.ONE_TIME, named(series), series.points().get(0).time());
        }
        MeanLatitude firstLatitude = MeanLatitude.of(series.points(), ones(n));
        RateWindow searched = window.orElseGet(() -> RateWindow.of(series.planet(), series.system()));
        List<Choice> choices = choices(arc, searched, slowest(series, firstLatitude));
        RobustLine fit = settled(arc, choices.get(0).fit().line());
        return new Assembly(
                        series, arc, found(arc, fit), rivals(choices), n >= 3 ? leftOut(arc, fit) : OptionalRange.NONE)
                .drift();
    }

    private static String named(LongitudeSeries series) {
        return series.feature().isEmpty() ? "without a name" : "\"" + series.feature() + "\"";
    }

    /** A line with its fit to a thinned arc. */
    record Choice(RateScan.Candidate candidate, RobustLine fit) {}

    /** Smallest and largest rate (deg per day) found with each mark left out in turn. */
    record OptionalRange(boolean present, double low, double high) {
        static final OptionalRange NONE = new OptionalRange(false, 0, 0);
    }

    /** The lines that come near the best one in piling up the marks, the likeliest first; of even ones the slower in the customary system. */
    private static List<Choice> choices(Arc arc, RateWindow window, double stillDegPerDay) {
        List<RateScan.Candidate> candidates = RateScan.candidates(arc, window);
        double best = candidates.get(0).pile();
        Arc thinned = arc.thinned(2000);
        List<Choice> choices = new ArrayList<>();
        for (RateScan.Candidate candidate : candidates) {
            if (candidate.pile() >= RIVAL_SHARE * best && choices.size() < MOST_RIVALS) {
                choices.add(new Choice(candidate, RobustLine.fit(thinned, candidate.line())));
            }
        }
        double likeliest = Double.NEGATIVE_INFINITY;
        for (Choice choice : choices) {
            likeliest = Math.max(likeliest, choice.fit().logLikelihood());
        }
        double floor = likeliest - EVEN_LOG_LIKELIHOOD;
        choices.sort((a, b) -> {
            boolean aEven = a.fit().logLikelihood() >= floor;
            boolean bEven = b.fit().logLikelihood() >= floor;
            if (aEven && bEven) {
                return Double.compare(
                        Math.abs(a.candidate().line().slope() - stillDegPerDay),
                        Math.abs(b.candidate().line().slope() - stillDegPerDay));
            }
            return aEven || bEven
                    ? Boolean.compare(bEven, aEven)
                    : Double.compare(b.fit().logLikelihood(), a.fit().logLikelihood());
        });
        return choices;
    }

    /** Drift in the series' system (deg per day) of a feature at rest in the system customary at its latitude. */
    private static double slowest(LongitudeSeries series, MeanLatitude latitude) {
        PlanetModel planet = series.planet();
        RotationSystem still = latitude.latDeg().isPresent()
                ? planet.customarySystem(latitude.latDeg().getAsDouble())
                : series.system();
        return Motion.driftInSystem(planet.globe(), 0, still, series.system());
    }

    private static List<Double> rivals(List<Choice> choices) {
        return choices.stream().skip(1).map(c -> c.fit().line().slope()).toList();
    }

    /** The robust fit, or, where it would leave too little to stand on, the fit to all marks. */
    private static RobustLine settled(Arc arc, Line start) {
        RobustLine robust = RobustLine.fit(arc, start);
        boolean enough = robust.used() >= Math.max(3, (arc.size() + 1) / 2);
        return enough || arc.size() < RobustLine.FEWEST_FOR_REJECTION ? robust : RobustLine.fitAll(arc, start);
    }

    private static OptionalRange leftOut(Arc arc, RobustLine fit) {
        if (fit.used() >= Assembly.MANY) {
            return OptionalRange.NONE;
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < arc.size(); i++) {
            Arc rest = arc.without(i);
            if (Line.fit(rest.days(), rest.days(), ones(rest.size())).isPresent()) {
                double rate = settled(rest, fit.line()).line().slope();
                low = Math.min(low, rate);
                high = Math.max(high, rate);
            }
        }
        return low <= high ? new OptionalRange(true, low, high) : OptionalRange.NONE;
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        java.util.Arrays.fill(ones, 1);
        return ones;
    }

    /** The kinds of motion compared, the best first, with what the best makes of the marks. */
    private Found found(Arc arc, RobustLine fit) {
        Instant zero = Instant.ofEpochSecond((long) arc.zeroEpochS());
        int used = fit.used();
        // With two marks nothing is left over to estimate a scatter from: the stated errors stand alone.
        Curve line = Curve.of(fit.line(), zero, used > 2 ? Math.sqrt(used / (used - 2.0)) : 1);
        List<Alternative> kept = new ArrayList<>();
        Optional<RobustCurve> chosen = Optional.empty();
        if (arc.size() >= ModelSearch.FEWEST_FOR_CURVES) {
            List<ModelSearch.Fitted> fitted = new ModelSearch(arc, toll, periodDays).run(fit.line());
            double best = Double.NaN;
            for (ModelSearch.Fitted each : fitted) {
                boolean straight = each.curve().kind() == CurveKind.RATE;
                Optional<Curve> curve =
                        straight ? Optional.of(line) : Curve.of(each.curve(), zero, periodDays.isPresent());
                if (curve.isPresent()) {
                    best = kept.isEmpty() ? each.criterion() : best;
                    chosen = kept.isEmpty() && !straight ? Optional.of(each.curve()) : chosen;
                    double more = each.criterion() - best;
                    double belief = Math.exp(-(more
                                    - PREDICTION_SHARE_OF_TOLL
                                            * each.curve().kind().searchToll())
                            / 2);
                    kept.add(new Alternative(curve.get(), more, belief));
                }
            }
        }
        if (kept.isEmpty()) {
            kept.add(new Alternative(line, 0, 1));
        }
        double sum = kept.stream().mapToDouble(Alternative::weight).sum();
        List<Alternative> shared = kept.stream()
                .map(a -> new Alternative(a.curve(), a.criterion(), a.weight() / sum))
                .toList();
        return chosen.map(c -> Found.of(arc, shared, c)).orElseGet(() -> Found.of(arc, shared, fit));
    }

    /**
     * What was found.
     *
     * @param alternatives kinds of motion, the chosen first
     * @param residualDeg of each mark (deg)
     * @param goodness of each mark
     * @param scatterDeg added scatter (deg)
     * @param middleDay where the epoch belongs (day of the arc)
     */
    record Found(
            List<Alternative> alternatives,
            double[] residualDeg,
            double[] goodness,
            double scatterDeg,
            double middleDay) {

        static Found of(Arc arc, List<Alternative> alternatives, RobustLine fit) {
            double[] residual = new double[arc.size()];
            for (int i = 0; i < residual.length; i++) {
                residual[i] = RateScan.residual(arc, fit.line(), i);
            }
            return new Found(
                    alternatives,
                    residual,
                    fit.goodness(),
                    fit.scatterDeg(),
                    fit.line().xMiddle());
        }

        static Found of(Arc arc, List<Alternative> alternatives, RobustCurve fit) {
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
            return new Found(alternatives, residual, fit.goodness().clone(), fit.scatterDeg(), (first + last) / 2);
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

    /** Turns what was found into a drift with its errors and words. */
    private record Assembly(LongitudeSeries series, Arc arc, Found found, List<Double> rivals, OptionalRange leftOut) {
        static final int MANY = 12;

        Drift drift() {
            Instant epoch = arc.instant(found.middleDay());
            Instant[] ends = ends();
            double rawLon = found.curve().lonDegAt(epoch);
            double offset = turned(rawLon) - rawLon;
            List<Alternative> alternatives = found.alternatives().stream()
                    .map(a -> new Alternative(
                            a.curve().turned(nearestTurn(a.curve(), epoch, rawLon) + offset),
                            a.criterion(),
                            a.weight()))
                    .toList();
            Curve curve = alternatives.get(0).curve();
            DriftModel motion = curve.model(epoch);
            double[] rate = rate(motion, alternatives, ends);
            Globe globe = series.planet().globe();
            double period = Motion.periodS(globe, series.system(), rate[0]);
            double turn = Math.abs(Motion.turnDegPerDay(globe, series.system(), rate[0]));
            MeanLatitude latitude = MeanLatitude.of(series.points(), found.goodness());
            OptionalDouble speed = OptionalDouble.empty();
            OptionalDouble sigmaSpeed = OptionalDouble.empty();
            if (latitude.latDeg().isPresent()) {
                double iauRate = Motion.driftInSystem(globe, rate[0], series.system(), globe.iauSystem());
                double lat = latitude.latDeg().getAsDouble();
                speed = OptionalDouble.of(Motion.speedMS(globe, iauRate, lat));
                sigmaSpeed = OptionalDouble.of(Motion.sigmaSpeedMS(
                        globe, iauRate, rate[1], lat, latitude.sigmaDeg().getAsDouble()));
            }
            return new Drift(
                    series,
                    motion,
                    alternatives,
                    ends[0],
                    ends[1],
                    epoch,
                    turned(rawLon),
                    curve.sigmaLonDegAt(epoch),
                    rate[0],
                    rate[1],
                    period,
                    period * rate[1] / turn,
                    speed,
                    sigmaSpeed,
                    latitude.latDeg(),
                    latitude.sigmaDeg(),
                    rms(),
                    found.scatterDeg(),
                    states(offset),
                    new DriftWords(series, arc, found, rate[0], rivals, leftOut).warnings());
        }

        /** Rate and its standard error; that of a mean rate holds what the choice among curves leaves open. */
        private static double[] rate(DriftModel motion, List<Alternative> alternatives, Instant[] ends) {
            if (motion instanceof DriftModel.ConstantRate line) {
                return new double[] {line.rateDegPerDay(), line.sigmaRateDegPerDay()};
            }
            if (motion instanceof DriftModel.Oscillation swing) {
                return new double[] {swing.rateDegPerDay(), swing.sigmaRateDegPerDay()};
            }
            double chosen = alternatives.get(0).curve().meanRateDegPerDay(ends[0], ends[1]);
            double variance = 0;
            double weights = 0;
            for (Alternative each : alternatives) {
                if (each.curve().kind() != CurveKind.RATE) {
                    double sigma = each.curve().sigmaMeanRateDegPerDay(ends[0], ends[1]);
                    double apart = each.curve().meanRateDegPerDay(ends[0], ends[1]) - chosen;
                    variance += each.weight() * (sigma * sigma + apart * apart);
                    weights += each.weight();
                }
            }
            return new double[] {chosen, Math.sqrt(variance / weights)};
        }

        private static double nearestTurn(Curve curve, Instant epoch, double lon) {
            return 360 * Math.rint((lon - curve.lonDegAt(epoch)) / 360);
        }

        private static double turned(double lonDeg) {
            double lon = lonDeg % 360;
            double positive = lon < 0 ? lon + 360 : lon;
            return positive >= 360 ? 0 : positive;
        }

        private List<Drift.PointState> states(double offset) {
            List<Drift.PointState> states = new ArrayList<>(arc.size());
            for (int i = 0; i < arc.size(); i++) {
                double residual = found.residualDeg()[i];
                double lon = found.curve().lonDegAt(series.points().get(i).time()) + residual + offset;
                states.add(new Drift.PointState(lon, residual, found.goodness()[i], found.isUsed(i)));
            }
            return states;
        }

        private Instant[] ends() {
            Instant first = Instant.MAX;
            Instant last = Instant.MIN;
            for (int i = 0; i < arc.size(); i++) {
                if (found.isUsed(i)) {
                    Instant time = series.points().get(i).time();
                    first = time.isBefore(first) ? time : first;
                    last = time.isAfter(last) ? time : last;
                }
            }
            return new Instant[] {first, last};
        }

        private double rms() {
            double sum = 0;
            for (int i = 0; i < arc.size(); i++) {
                if (found.isUsed(i)) {
                    sum += found.residualDeg()[i] * found.residualDeg()[i];
                }
            }
            return Math.sqrt(sum / found.used());
        }
    }
}
