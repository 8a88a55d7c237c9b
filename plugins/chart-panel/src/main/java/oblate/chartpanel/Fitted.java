/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.Optional;
import oblate.base.ProblemException;
import oblate.drift.Drift;
import oblate.drift.DriftFitter;
import oblate.drift.LongitudeSeries;

/**
 * A feature's longitudes and what was fitted to them.
 *
 * @param series longitudes in one system
 * @param drift its drift; empty when there are too few marks
 * @param why when there is no drift, one sentence
 */
public record Fitted(LongitudeSeries series, Optional<Drift> drift, String why) {
    /** Fits a series; one that cannot be fitted is kept with the reason. */
    public static Fitted of(LongitudeSeries series) {
        try {
            return new Fitted(series, Optional.of(new DriftFitter().fit(series)), "");
        } catch (ProblemException e) {
            return new Fitted(series, Optional.empty(), e.getMessage());
        }
    }

    /** Name of the feature. */
    public String name() {
        return series.feature();
    }
}
