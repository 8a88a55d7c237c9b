/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.time.Instant;
import java.util.Optional;

/**
 * A fitted curve of longitude against time with the covariance of its numbers: any longitude, rate or change of longitude comes with its standard error.
 * Immutable.
 */
public final class Curve {
    private final CurveKind kind;
    private final Instant zeroUtc;
    private final double halfSpanDays;
    private final double[] theta;
    private final double[][] covariance;

    private Curve(CurveKind kind, Instant zeroUtc, double halfSpanDays, double[] theta, double[][] covariance) {
        this.kind = kind;
        this.zeroUtc = zeroUtc;
        this.halfSpanDays = halfSpanDays;
        this.theta = theta;
        this.covariance = covariance;
    }

    /** Empty when the marks do not tell all its numbers. */
    static Optional<Curve> of(RobustCurve fit, Instant zeroUtc, boolean periodGiven) {
        return fit.covariance(periodGiven)
                .map(c -> new Curve(
                        fit.kind(), zeroUtc, fit.halfSpan(), fit.theta().clone(), c));
    }

    /** The straight line of a fit whose errors are enlarged by a factor. */
    static Curve of(Line line, Instant zeroUtc, double inflation) {
        double atZero = line.at(0);
        double rateVariance = inflation * inflation / line.weightXx();
        double middleVariance = inflation * inflation / line.weight();
        double x = line.xMiddle();
        double[][] covariance = {
            {middleVariance + x * x * rateVariance, -x * rateVariance}, {-x * rateVariance, rateVariance}
        };
        return new Curve(CurveKind.RATE, zeroUtc, 1, new double[] {atZero, line.slope()}, covariance);
    }

    /** The same curve moved by so many degrees and by so many degrees a day from the curve's own zero. */
    private Curve moved(double byDeg, double byDegPerDay) {
        double[] moved = theta.clone();
        moved[0] += byDeg;
        moved[1] += byDegPerDay * halfSpanDays;
        return new Curve(kind, zeroUtc, halfSpanDays, moved, covariance);
    }

    /** On another turn. */
    Curve turned(double byDeg) {
        return moved(byDeg, 0);
    }

    /** With another rate and, at an instant, another longitude (deg): the curve in another system. */
    Curve inSystem(Instant at, double lonDeg, double rateMoreDegPerDay) {
        Curve faster = moved(0, rateMoreDegPerDay);
        return faster.moved(lonDeg - faster.lonDegAt(at), 0);
    }

    /** "rate", "acceleration", "change" or "oscillation". */
    public String modelId() {
        return kind.id();
    }

    /** How many numbers were fitted for this kind of motion. */
    public int parameters() {
        return kind.parameters();
    }

    CurveKind kind() {
        return kind;
    }

    /** Longitude (deg) so many days after the curve's own zero. */
    double lonDegAtDay(double day) {
        return kind.value(day / halfSpanDays, theta);
    }

    /** Standard error of the longitude (deg) so many days after the curve's own zero. */
    double sigmaLonDegAtDay(double day) {
        return Math.sqrt(variance(gradient(day / halfSpanDays)));
    }

    /** Days from the curve's own zero. */
    double dayAt(Instant time) {
        return Drift.daysBetween(zeroUtc, time);
    }

    private double u(Instant time) {
        return dayAt(time) / halfSpanDays;
    }

    /** Longitude (deg, not reduced to one turn). */
    public double lonDegAt(Instant time) {
        return kind.value(u(time), theta);
    }

    /** Standard error of the longitude (deg), as the fit alone states it. */
    public double sigmaLonDegAt(Instant time) {
        return Math.sqrt(variance(gradient(u(time))));
    }

    /** Rate at an instant (deg per day). */
    public double rateDegPerDayAt(Instant time) {
        return kind.slope(u(time), theta) / halfSpanDays;
    }

    /** Mean rate between two instants (deg per day). */
    public double meanRateDegPerDay(Instant from, Instant to) {
        return (lonDegAt(to) - lonDegAt(from)) / Drift.daysBetween(from, to);
    }

    /** Standard error of the mean rate between two instants (deg per day). */
    public double sigmaMeanRateDegPerDay(Instant from, Instant to) {
        double[] first = gradient(u(from));
        double[] last = gradient(u(to));
        for (int k = 0; k < last.length; k++) {
            last[k] -= first[k];
        }
        return Math.sqrt(variance(last)) / Math.abs(Drift.daysBetween(from, to));
    }

    private double[] gradient(double u) {
        double[] g = new double[kind.parameters()];
        kind.gradient(u, theta, g);
        return g;
    }

    private double variance(double[] g) {
        double sum = 0;
        for (int i = 0; i < g.length; i++) {
            for (int j = 0; j < g.length; j++) {
                sum += g[i] * covariance[i][j] * g[j];
            }
        }
        return Math.max(0, sum);
    }

    private double sigma(double... g) {
        double[] all = new double[kind.parameters()];
        System.arraycopy(g, 0, all, 0, g.length);
        return Math.sqrt(variance(all));
    }

    /** Its numbers, those that belong to an instant at an epoch. */
    DriftModel model(Instant epoch) {
        return switch (kind) {
            case RATE -> new DriftModel.ConstantRate(theta[1] / halfSpanDays, sigma(0, 1) / halfSpanDays);
            case ACCELERATION ->
                new DriftModel.Acceleration(
                        rateDegPerDayAt(epoch),
                        sigma(0, 1, 2 * u(epoch)) / halfSpanDays,
                        2 * theta[2] / (halfSpanDays * halfSpanDays),
                        2 * sigma(0, 0, 1) / (halfSpanDays * halfSpanDays));
            case CHANGE ->
                new DriftModel.RateChange(
                        instant(theta[3]),
                        sigma(0, 0, 0, 1) * halfSpanDays,
                        theta[1] / halfSpanDays,
                        sigma(0, 1) / halfSpanDays,
                        (theta[1] + theta[2]) / halfSpanDays,
                        sigma(0, 1, 1) / halfSpanDays);
            case OSCILLATION -> oscillation(epoch);
        };
    }

    private DriftModel oscillation(Instant epoch) {
        double sine = theta[2];
        double cosine = theta[3];
        double frequency = theta[4];
        double amplitude = Math.max(1e-12, Math.hypot(sine, cosine));
        // sine · sin + cosine · cos = amplitude · sin(2π f (u − zero)), so zero = −atan2(cosine, sine) / 2πf + k / f.
        double turn = 2 * Math.PI * frequency;
        double zero = -Math.atan2(cosine, sine) / turn;
        zero += Math.rint((u(epoch) - zero) * frequency) / frequency;
        double square = amplitude * amplitude;
        double period = halfSpanDays / frequency;
        return new DriftModel.Oscillation(
                theta[1] / halfSpanDays,
                sigma(0, 1) / halfSpanDays,
                amplitude,
                sigma(0, 0, sine / amplitude, cosine / amplitude),
                period,
                sigma(0, 0, 0, 0, 1) * period / frequency,
                instant(zero),
                sigma(0, 0, cosine / square / turn, -sine / square / turn, -zero / frequency) * halfSpanDays);
    }

    private Instant instant(double u) {
        return zeroUtc.plusSeconds(Math.round(u * halfSpanDays * 86_400));
    }
}
