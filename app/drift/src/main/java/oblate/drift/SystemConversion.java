/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;
import oblate.sky.Globe;
import oblate.sky.RotationSystem;
import oblate.sky.Sky;

/**
 * Brings series and drifts into another rotation system of their planet. Safe for many threads.
 *
 * <p>Each longitude is converted at its own instant, with the light time removed: two systems move apart by up to 7.6 deg a day, so no fixed number will do.
 */
public final class SystemConversion {
    private final Sky sky;

    /**
     * @param sky knows where the systems stand at an instant
     */
    public SystemConversion(Sky sky) {
        this.sky = sky;
    }

    /**
     * The series in another system, its points in the same order.
     *
     * @throws oblate.base.ProblemException when a time is outside the ephemeris
     */
    public LongitudeSeries inSystem(LongitudeSeries series, RotationSystem to) {
        if (to.equals(series.system())) {
            return series;
        }
        List<LongitudePoint> points = new ArrayList<>(series.points().size());
        for (LongitudePoint point : series.points()) {
            double lon = sky.disc(series.planet(), point.time()).convertLonDeg(point.lonDeg(), series.system(), to);
            points.add(new LongitudePoint(
                    point.time(), lon, point.sigmaDeg(), point.latGraphicDeg(), point.sigmaLatDeg()));
        }
        return new LongitudeSeries(series.feature(), series.planet(), to, points);
    }

    /**
     * The drift in another system: the rate by the exact difference of the systems' rates, the longitude at the epoch converted there, the rest as it is.
     *
     * <p>A fit to the converted series gives the same within 1 part in 10 000 of the systems' difference: rates count days of UTC at the Earth, and the light
     * time changes by up to that share.
     *
     * @throws oblate.base.ProblemException when a time is outside the ephemeris
     */
    public Drift inSystem(Drift drift, RotationSystem to) {
        LongitudeSeries from = drift.series();
        if (to.equals(from.system())) {
            return drift;
        }
        Globe globe = from.planet().globe();
        LongitudeSeries series = inSystem(from, to);
        double lon = sky.disc(from.planet(), drift.epochUtc()).convertLonDeg(drift.lonDeg(), from.system(), to);
        double rate = Motion.driftInSystem(globe, drift.rateDegPerDay(), from.system(), to);
        double more = rate - drift.rateDegPerDay();
        double moved = lon - drift.lonDeg();
        List<Alternative> alternatives = drift.alternatives().stream()
                .map(a -> a.with(
                        a.curve().inSystem(drift.epochUtc(), a.curve().lonDegAt(drift.epochUtc()) + moved, more)))
                .toList();
        List<Drift.PointState> states = new ArrayList<>(drift.states().size());
        for (int i = 0; i < drift.states().size(); i++) {
            Drift.PointState state = drift.states().get(i);
            double days =
                    Drift.daysBetween(drift.epochUtc(), from.points().get(i).time());
            states.add(new Drift.PointState(
                    state.unwrappedLonDeg() + moved + more * days, state.residualDeg(), state.weight(), state.used()));
        }
        return new Drift(
                series,
                alternatives.get(0).curve().model(drift.epochUtc()),
                alternatives,
                drift.firstUtc(),
                drift.lastUtc(),
                drift.epochUtc(),
                lon,
                drift.sigmaLonDeg(),
                rate,
                drift.sigmaRateDegPerDay(),
                drift.periodS(),
                drift.sigmaPeriodS(),
                drift.speedMS(),
                drift.sigmaSpeedMS(),
                drift.meanLatDeg(),
                drift.sigmaMeanLatDeg(),
                drift.rmsDeg(),
                drift.scatterDeg(),
                states,
                drift.warnings());
    }
}
