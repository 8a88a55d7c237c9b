/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.plan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import oblate.drift.Drift;
import oblate.drift.Prediction;
import oblate.sky.MeridianCrossing;
import oblate.sky.MeridianCrossings;
import oblate.sky.MovingLongitude;
import oblate.sky.Sky;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;

/** When a followed feature crosses the central meridian, with the error of its prediction carried into time. */
final class FeatureCrossings {
    /** At twice this standard error the feature may be anywhere (deg): half a turn to either side. */
    static final double USELESS_SIGMA_DEG = 90;

    private static final long HALF_DAY_S = 43_200;
    private static final long HOUR_S = 3_600;

    private final Drift drift;
    private final MeridianCrossings crossings;

    FeatureCrossings(Sky sky, Drift drift) {
        this.drift = drift;
        crossings = new MeridianCrossings(
                sky, drift.series().planet(), drift.series().system());
    }

    /**
     * Crossings in a night. The motion is taken for a straight one over the night to find them, then over the two hours about each to time it.
     */
    List<MeridianCrossing> in(TimeSpan night) {
        UtcTime middle = night.from().plusClockSeconds(night.clockSeconds() / 2);
        List<MeridianCrossing> timed = new ArrayList<>();
        for (MeridianCrossing rough : crossings.between(straight(middle, HALF_DAY_S), night)) {
            UtcTime about = rough.time();
            TimeSpan hours = new TimeSpan(about.plusClockSeconds(-HOUR_S), about.plusClockSeconds(HOUR_S));
            List<MeridianCrossing> fine = crossings.between(straight(about, HOUR_S), hours);
            timed.add(fine.isEmpty() ? rough : fine.get(0));
        }
        return timed;
    }

    /** Where the feature is expected. */
    Prediction at(UtcTime time) {
        return drift.at(time.toInstant());
    }

    /** Whether the prediction says nothing any more. */
    boolean isUseless(UtcTime time) {
        return !(at(time).sigmaLonDeg() < USELESS_SIGMA_DEG);
    }

    private MovingLongitude straight(UtcTime about, long halfS) {
        Instant time = about.toInstant();
        Prediction before = drift.at(time.minusSeconds(halfS));
        Prediction after = drift.at(time.plusSeconds(halfS));
        double degPerDay = (after.lonDeg() - before.lonDeg()) / (2 * halfS) * 86_400;
        Prediction then = drift.at(time);
        return new MovingLongitude(then.lonDeg(), degPerDay, about, then.sigmaLonDeg(), 0);
    }
}
