package oblate.drift;

/** Fits drifts: unwraps by scanning rates, fits robustly, estimates the scatter, states honest errors. Stateless. */
public final class DriftFitter {

    /**
     * Fits a straight line.
     *
     * @throws oblate.base.ProblemException with {@link DriftProblem#TOO_FEW} or {@link DriftProblem#ONE_TIME}
     */
    public Drift fit(LongitudeSeries series) {
        throw new UnsupportedOperationException(series + "");
    }
}
