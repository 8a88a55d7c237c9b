/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** An invented feature whose motion is known: marks over an apparition with gaps and false ones among them. */
record SimulatedFeature(
        LongitudeSeries series,
        CurveKind kind,
        double[] theta,
        double halfSpan,
        boolean[] isFalse,
        double strength,
        double boundRate) {

    /** Longitude (deg) at a day after {@link Sets#START}. */
    double lonDegAt(double day) {
        return kind.value(day / halfSpan - 1, theta);
    }

    /** The rate a drift states for this kind of motion (deg per day). */
    double rate(Drift drift) {
        if (kind == CurveKind.RATE || drift.model().equals("oscillation") && kind == CurveKind.OSCILLATION) {
            return theta[1] / halfSpan;
        }
        double first = Drift.daysBetween(Sets.START, drift.firstUtc());
        double last = Drift.daysBetween(Sets.START, drift.lastUtc());
        return (lonDegAt(last) - lonDegAt(first)) / (last - first);
    }

    /** Of a kind, with a strength (squared signal to noise of what no straight line can follow) between bounds. */
    static SimulatedFeature of(SplittableRandom random, CurveKind kind, double least, double most, double sigmaFactor) {
        while (true) {
            SimulatedFeature made = drawn(random, kind, sigmaFactor);
            boolean told = Double.isFinite(made.boundRate);
            if (told && (kind == CurveKind.RATE || made.strength >= least && made.strength <= most)) {
                return made;
            }
        }
    }

    private static SimulatedFeature drawn(SplittableRandom random, CurveKind kind, double sigmaFactor) {
        double span = random.nextDouble(60, 200);
        double half = span / 2;
        int n = random.nextInt(30, 90);
        double rate = random.nextDouble(-1.7, 1.2);
        double[] theta = new double[kind.parameters()];
        theta[0] = random.nextDouble(0, 360);
        theta[1] = rate * half;
        switch (kind) {
            default -> {}
            case ACCELERATION -> theta[2] = sign(random) * random.nextDouble(0.0005, 0.008) * half * half / 2;
            case CHANGE -> {
                theta[2] = sign(random) * random.nextDouble(0.05, 0.6) * half;
                theta[3] = random.nextDouble(-0.4, 0.4);
            }
            case OSCILLATION -> {
                double amplitude = random.nextDouble(0.6, 3);
                double angle = random.nextDouble(0, 2 * Math.PI);
                theta[2] = amplitude * Math.cos(angle);
                theta[3] = amplitude * Math.sin(angle);
                theta[4] = half / random.nextDouble(Math.min(30, 0.4 * span), 0.7 * span);
            }
        }
        double gapFrom = random.nextDouble(0.1, 0.8) * span;
        double gap = random.nextDouble(4, 23);
        double falseShare = random.nextDouble(0, 0.06);
        List<LongitudePoint> points = new ArrayList<>();
        List<Boolean> wrong = new ArrayList<>();
        while (points.size() < n) {
            double day = random.nextDouble(0, span);
            if (day > gapFrom && day < gapFrom + gap) {
                continue;
            }
            double sigma = random.nextDouble(0.5, 1);
            double lon = kind.value(day / half - 1, theta) + Sets.gauss(random) * sigma * sigmaFactor;
            boolean bad = random.nextDouble() < falseShare;
            lon += bad ? sign(random) * random.nextDouble(6, 25) : 0;
            points.add(Sets.point(day, ((lon % 360) + 360) % 360, sigma));
            wrong.add(bad);
        }
        boolean[] isFalse = new boolean[n];
        for (int i = 0; i < n; i++) {
            isFalse[i] = wrong.get(i);
        }
        return finished(kind, theta, half, points, isFalse, sigmaFactor);
    }

    private static SimulatedFeature finished(
            CurveKind kind,
            double[] theta,
            double half,
            List<LongitudePoint> points,
            boolean[] isFalse,
            double factor) {
        Normal all = new Normal(kind.parameters());
        double[] g = new double[kind.parameters()];
        double[] x = new double[points.size()];
        double[] y = new double[x.length];
        double[] w = new double[x.length];
        double first = Double.MAX_VALUE;
        double last = -Double.MAX_VALUE;
        for (int i = 0; i < x.length; i++) {
            LongitudePoint p = points.get(i);
            x[i] = Drift.daysBetween(Sets.START, p.time()) / half - 1;
            y[i] = kind.value(x[i], theta);
            w[i] = isFalse[i] ? 0 : 1 / (p.sigmaDeg() * p.sigmaDeg() * factor * factor);
            kind.gradient(x[i], theta, g);
            all.add(g, 0, w[i]);
            first = isFalse[i] ? first : Math.min(first, x[i]);
            last = isFalse[i] ? last : Math.max(last, x[i]);
        }
        Line line = Line.fit(x, y, w).orElseThrow();
        double strength = 0;
        for (int i = 0; i < x.length; i++) {
            strength += w[i] * Math.pow(y[i] - line.at(x[i]), 2);
        }
        double[][] c = all.inverse().orElse(null);
        double[] d = new double[kind.parameters()];
        if (kind == CurveKind.RATE || kind == CurveKind.OSCILLATION) {
            d[1] = 1 / half;
        } else {
            double[] a = new double[kind.parameters()];
            kind.gradient(first, theta, a);
            kind.gradient(last, theta, d);
            for (int k = 0; k < d.length; k++) {
                d[k] = (d[k] - a[k]) / (last - first) / half;
            }
        }
        double variance = c == null ? Double.NaN : 0;
        for (int i = 0; c != null && i < d.length; i++) {
            for (int j = 0; j < d.length; j++) {
                variance += d[i] * c[i][j] * d[j];
            }
        }
        LongitudeSeries series = Sets.jupiter("2", points);
        return new SimulatedFeature(series, kind, theta, half, isFalse, strength, Math.sqrt(variance));
    }

    private static int sign(SplittableRandom random) {
        return random.nextBoolean() ? 1 : -1;
    }
}
