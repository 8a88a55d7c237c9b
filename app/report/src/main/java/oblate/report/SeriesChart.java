/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import oblate.drift.Drift;
import oblate.drift.LongitudeSeries;

/**
 * A chart of features' marks and the motions fitted to them.
 *
 * @param kind what is drawn
 * @param features at least one, all of one planet; but for {@link Kind#SPEED} in one system
 * @param until instant up to which each fitted motion is predicted, with one standard error on both sides; {@link Kind#LONGITUDE} only
 * @param timeAxis which way time runs; {@link Kind#SPEED} has no time
 * @param gapDays fitted lines are dotted where there is no mark for longer (days, positive)
 */
public record SeriesChart(Kind kind, List<Feature> features, Optional<Instant> until, TimeAxis timeAxis, double gapDays)
        implements ChartContent {
    /** Gap from which lines are dotted when nobody says otherwise (days). */
    public static final double USUAL_GAP_DAYS = 14;

    /** Copies the list. */
    public SeriesChart {
        features = List.copyOf(features);
        if (features.isEmpty() || !(gapDays > 0)) {
            throw new IllegalArgumentException(features.size() + " features, gap of " + gapDays + " days");
        }
    }

    /** What is drawn. */
    public enum Kind {
        /** Longitude against date. */
        LONGITUDE,
        /** Planetographic latitude against date, with its mean and its slope. */
        LATITUDE,
        /** Observed minus fitted longitude against date, each feature by itself. */
        RESIDUALS,
        /** Speed against planetographic latitude. */
        SPEED
    }

    /** Which way time runs. */
    public enum TimeAxis {
        /** Downward, as charts of drifts are often drawn. */
        DOWN,
        /** To the right. */
        RIGHT
    }

    /**
     * A feature.
     *
     * @param series its longitudes
     * @param drift what was fitted to them; empty when nothing could be
     */
    public record Feature(LongitudeSeries series, Optional<Drift> drift) {}
}
