/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import oblate.sky.Globe;

/**
 * Turns what was found into a drift with its errors and words.
 *
 * @param rivals rates (deg per day) that pile the marks up nearly as well on other turns
 * @param leftOut rates with each mark left out in turn
 */
record DriftAssembly(LongitudeSeries series, Arc arc, FoundMotion found, List<Double> rivals, RateRange leftOut) {
    static final int MANY = 12;

    Drift drift() {
        Instant epoch = arc.instant(found.middleDay());
        Instant[] ends = ends();
        double rawLon = found.curve().lonDegAt(epoch);
        double offset = turned(rawLon) - rawLon;
        List<Alternative> alternatives = found.alternatives().stream()
                .map(a -> a.with(a.curve().turned(nearestTurn(a.curve(), epoch, rawLon) + offset)))
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

    /**
     * Rate and its standard error. That of a swing belongs to its line; every other holds what the choice among the kinds of motion leaves open about the mean
     * rate from first to last mark used.
     */
    private static double[] rate(DriftModel motion, List<Alternative> alternatives, Instant[] ends) {
        if (motion instanceof DriftModel.Oscillation swing) {
            return new double[] {swing.rateDegPerDay(), swing.sigmaRateDegPerDay()};
        }
        double chosen = alternatives.get(0).curve().meanRateDegPerDay(ends[0], ends[1]);
        double variance = 0;
        for (Alternative each : alternatives) {
            double sigma = each.curve().sigmaMeanRateDegPerDay(ends[0], ends[1]);
            double apart = each.curve().meanRateDegPerDay(ends[0], ends[1]) - chosen;
            variance += each.belief() * (sigma * sigma + apart * apart);
        }
        return new double[] {chosen, Math.sqrt(variance)};
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
