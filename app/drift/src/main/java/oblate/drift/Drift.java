package oblate.drift;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A fitted motion of a feature: a straight line of longitude against time.
 *
 * @param series what was fitted
 * @param model "rate"
 * @param firstUtc first point used
 * @param lastUtc last point used
 * @param epochUtc instant the longitude belongs to, the weighted middle of the arc, where longitude and rate are uncorrelated
 * @param lonDeg longitude at the epoch (deg, 0…360)
 * @param sigmaLonDeg its standard error (deg)
 * @param rateDegPerDay drift (deg per day), positive when longitude grows
 * @param sigmaRateDegPerDay its standard error
 * @param periodS sidereal rotation period of the feature (s)
 * @param sigmaPeriodS its standard error (s)
 * @param speedMS speed relative to the planet's IAU system (m/s, positive in the sense of rotation), at the mean latitude; empty without one
 * @param sigmaSpeedMS its standard error (m/s)
 * @param meanLatDeg weighted mean planetographic latitude (deg); empty without one
 * @param sigmaMeanLatDeg its standard error (deg)
 * @param rmsDeg scatter of the used points about the line (deg)
 * @param scatterDeg scatter beyond the points' own errors that the fit had to allow for (deg)
 * @param states one per point of the series, in its order
 * @param warnings what a person should know, one sentence each: few points, short arc, a second rate fits nearly as well
 */
public record Drift(
        LongitudeSeries series,
        String model,
        Instant firstUtc,
        Instant lastUtc,
        Instant epochUtc,
        double lonDeg,
        double sigmaLonDeg,
        double rateDegPerDay,
        double sigmaRateDegPerDay,
        double periodS,
        double sigmaPeriodS,
        OptionalDouble speedMS,
        OptionalDouble sigmaSpeedMS,
        OptionalDouble meanLatDeg,
        OptionalDouble sigmaMeanLatDeg,
        double rmsDeg,
        double scatterDeg,
        List<PointState> states,
        List<String> warnings) {

    /** Copies the lists. */
    public Drift {
        states = List.copyOf(states);
        warnings = List.copyOf(warnings);
    }

    /** Drift in degrees per 30 days, the trade's unit. */
    public double rateDegPer30Days() {
        return 30 * rateDegPerDay;
    }

    /** Points left out. */
    public int rejected() {
        return (int) states.stream().filter(s -> !s.used()).count();
    }

    /** Longitude (deg, not reduced to one turn) of the line at an instant. */
    public double unwrappedLonDegAt(Instant time) {
        return lonDeg + rateDegPerDay * daysBetween(epochUtc, time);
    }

    /** Standard error (deg) of the line at an instant: longitude and rate are uncorrelated at the epoch. */
    public double sigmaLonDegAt(Instant time) {
        return Math.hypot(sigmaLonDeg, sigmaRateDegPerDay * daysBetween(epochUtc, time));
    }

    /** Standard error of the drift in degrees per 30 days. */
    public double sigmaRateDegPer30Days() {
        return 30 * sigmaRateDegPerDay;
    }

    /** Days of 86 400 s from one instant to another; doubles hold a century to a microsecond. */
    static double daysBetween(Instant from, Instant to) {
        return ((to.getEpochSecond() - from.getEpochSecond()) + (to.getNano() - from.getNano()) * 1e-9) / 86_400;
    }

    /**
     * What the fit made of one point.
     *
     * @param unwrappedLonDeg its longitude on the turn of the line (deg)
     * @param residualDeg measured minus line (deg)
     * @param weight probability that the point is no false one (0…1)
     * @param used false when it was left out; it is shown, never deleted
     */
    public record PointState(double unwrappedLonDeg, double residualDeg, double weight, boolean used) {}
}
