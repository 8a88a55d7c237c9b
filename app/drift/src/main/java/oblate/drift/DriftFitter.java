/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Optional;
import java.util.OptionalDouble;
import oblate.base.ProblemException;
import oblate.sky.PlanetModel;
import oblate.sky.RotationSystem;

/** Fits drifts: unwraps by scanning rates, fits robustly, estimates the scatter, states honest errors. Stateless. */
public final class DriftFitter {
    private final Optional<RateWindow> window;
    private final OptionalDouble periodDays;

    /** With the window of each planet and system. */
    public DriftFitter() {
        this(Optional.empty(), OptionalDouble.empty());
    }

    /** With a window of one's own, in the system of the series to be fitted. */
    public DriftFitter(RateWindow window) {
        this(Optional.of(window), OptionalDouble.empty());
    }

    private DriftFitter(Optional<RateWindow> window, OptionalDouble periodDays) {
        this.window = window;
        this.periodDays = periodDays;
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
        return new DriftFitter(window, OptionalDouble.of(days));
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
        TurnChoice turns = TurnChoice.of(arc, searched, slowest(series, firstLatitude));
        RobustLine fit = settled(arc, turns.best());
        return new DriftAssembly(
                        series,
                        arc,
                        FoundMotion.search(arc, fit, periodDays),
                        turns.rivals(),
                        n >= 3 ? leftOut(arc, fit) : RateRange.NONE)
                .drift();
    }

    private static String named(LongitudeSeries series) {
        return series.feature().isEmpty() ? "without a name" : "\"" + series.feature() + "\"";
    }

    /** Drift in the series' system (deg per day) of a feature at rest in the system customary at its latitude. */
    private static double slowest(LongitudeSeries series, MeanLatitude latitude) {
        PlanetModel planet = series.planet();
        RotationSystem still = latitude.latDeg().isPresent()
                ? planet.customarySystem(latitude.latDeg().getAsDouble())
                : series.system();
        return Motion.driftInSystem(planet.globe(), 0, still, series.system());
    }

    /** The robust fit, or, where it would leave too little to stand on, the fit to all marks. */
    private static RobustLine settled(Arc arc, Line start) {
        RobustLine robust = RobustLine.fit(arc, start);
        boolean enough = robust.used() >= Math.max(3, (arc.size() + 1) / 2);
        return enough || arc.size() < RobustLine.FEWEST_FOR_REJECTION ? robust : RobustLine.fitAll(arc, start);
    }

    private static RateRange leftOut(Arc arc, RobustLine fit) {
        if (fit.used() >= DriftAssembly.MANY) {
            return RateRange.NONE;
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
        return low <= high ? new RateRange(true, low, high) : RateRange.NONE;
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        java.util.Arrays.fill(ones, 1);
        return ones;
    }
}
