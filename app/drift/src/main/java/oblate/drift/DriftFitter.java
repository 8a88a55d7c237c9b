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

    private final Optional<RateWindow> window;

    /** With the window of each planet and system. */
    public DriftFitter() {
        window = Optional.empty();
    }

    /** With a window of one's own, in the system of the series to be fitted. */
    public DriftFitter(RateWindow window) {
        this.window = Optional.of(window);
    }

    /**
     * Fits a straight line.
     *
     * @throws oblate.base.ProblemException with {@link DriftProblem#TOO_FEW} or {@link DriftProblem#ONE_TIME}
     */
    public Drift fit(LongitudeSeries series) {
        int n = series.points().size();
        if (n < 2) {
            throw new ProblemException(DriftProblem.TOO_FEW, series.feature(), n);
        }
        Arc arc = Arc.of(series.points());
        if (Line.fit(arc.days(), arc.days(), ones(n)).isEmpty()) {
            throw new ProblemException(
                    DriftProblem.ONE_TIME,
                    series.feature(),
                    series.points().get(0).time());
        }
        MeanLatitude firstLatitude = MeanLatitude.of(series.points(), ones(n));
        RateWindow searched = window.orElseGet(() -> RateWindow.of(series.planet(), series.system()));
        List<Choice> choices = choices(arc, searched, slowest(series, firstLatitude));
        RobustLine fit = settled(arc, choices.get(0).fit().line());
        return new Assembly(series, arc, fit, rivals(choices), n >= 3 ? leftOut(arc, fit) : OptionalRange.NONE).drift();
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

    /** Turns a fitted line into a drift with its errors and words. */
    private record Assembly(
            LongitudeSeries series, Arc arc, RobustLine fit, List<Double> rivals, OptionalRange leftOut) {
        static final int MANY = 12;

        Drift drift() {
            Line line = fit.line();
            int used = fit.used();
            // With two marks nothing is left over to estimate a scatter from: the stated errors stand alone.
            double inflation = used > 2 ? Math.sqrt(used / (used - 2.0)) : 1;
            double sigmaLon = inflation / Math.sqrt(line.weight());
            double sigmaRate = inflation / Math.sqrt(line.weightXx());
            Instant epoch = arc.instant(line.xMiddle());
            double epochDay = arc.day(epoch);
            double rate = line.slope();
            List<Drift.PointState> states = states(line, turnOffset(line.at(epochDay)));
            Globe globe = series.planet().globe();
            double period = Motion.periodS(globe, series.system(), rate);
            double turn = Math.abs(Motion.turnDegPerDay(globe, series.system(), rate));
            MeanLatitude latitude = MeanLatitude.of(series.points(), fit.goodness());
            OptionalDouble speed = OptionalDouble.empty();
            OptionalDouble sigmaSpeed = OptionalDouble.empty();
            if (latitude.latDeg().isPresent()) {
                double iauRate = Motion.driftInSystem(globe, rate, series.system(), globe.iauSystem());
                double lat = latitude.latDeg().getAsDouble();
                speed = OptionalDouble.of(Motion.speedMS(globe, iauRate, lat));
                sigmaSpeed = OptionalDouble.of(Motion.sigmaSpeedMS(
                        globe, iauRate, sigmaRate, lat, latitude.sigmaDeg().getAsDouble()));
            }
            Instant[] ends = ends();
            return new Drift(
                    series,
                    "rate",
                    ends[0],
                    ends[1],
                    epoch,
                    turned(line.at(epochDay)),
                    sigmaLon,
                    rate,
                    sigmaRate,
                    period,
                    period * sigmaRate / turn,
                    speed,
                    sigmaSpeed,
                    latitude.latDeg(),
                    latitude.sigmaDeg(),
                    rms(line),
                    fit.scatterDeg(),
                    states,
                    new DriftWords(this.series, arc, fit, rivals, leftOut).warnings());
        }

        private static double turned(double lonDeg) {
            double lon = lonDeg % 360;
            double positive = lon < 0 ? lon + 360 : lon;
            return positive >= 360 ? 0 : positive;
        }

        private static double turnOffset(double lonDeg) {
            return turned(lonDeg) - lonDeg;
        }

        private List<Drift.PointState> states(Line line, double offset) {
            List<Drift.PointState> states = new ArrayList<>(arc.size());
            for (int i = 0; i < arc.size(); i++) {
                double residual = RateScan.residual(arc, line, i);
                double good = fit.goodness()[i];
                states.add(
                        new Drift.PointState(line.at(arc.days()[i]) + residual + offset, residual, good, good >= 0.5));
            }
            return states;
        }

        private Instant[] ends() {
            Instant first = Instant.MAX;
            Instant last = Instant.MIN;
            for (int i = 0; i < arc.size(); i++) {
                if (fit.goodness()[i] >= 0.5) {
                    Instant time = series.points().get(i).time();
                    first = time.isBefore(first) ? time : first;
                    last = time.isAfter(last) ? time : last;
                }
            }
            return new Instant[] {first, last};
        }

        private double rms(Line line) {
            double sum = 0;
            for (int i = 0; i < arc.size(); i++) {
                if (fit.goodness()[i] >= 0.5) {
                    double residual = RateScan.residual(arc, line, i);
                    sum += residual * residual;
                }
            }
            return Math.sqrt(sum / fit.used());
        }
    }
}
