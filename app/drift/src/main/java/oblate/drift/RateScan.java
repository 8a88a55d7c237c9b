/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Unwrapping by scanning: the drift sought is the one at which the longitudes pile up once it is taken out. Never steps from mark to mark, so a gap
 * costs nothing.
 */
final class RateScan {
    private static final int MOST_POINTS = 2000;
    private static final int MOST_RATES = 200_000;
    private static final int MOST_CANDIDATES = 24;
    private static final double STEP_TURN_DEG = 30;
    private static final double[] BELLS_DEG = {60, 20, 8};

    private RateScan() {}

    /**
     * A line the longitudes pile up about.
     *
     * @param line the line, sharpened
     * @param pile share of the marks within a bell of 8 deg of it (0…1)
     */
    record Candidate(Line line, double pile) {}

    /** Lines the marks pile up about, best first, at least one; those that put every mark on the same turns are listed once. */
    static List<Candidate> candidates(Arc whole, RateWindow window) {
        Arc arc = whole.thinned(MOST_POINTS);
        double[] weights = weights(arc);
        double width = window.highDegPerDay() - window.lowDegPerDay();
        double wanted = Math.ceil(width * arc.spanDays() / STEP_TURN_DEG) + 2;
        int steps = (int) Math.min(MOST_RATES, Math.max(3, wanted));
        double[] lengths = new double[steps];
        for (int i = 0; i < steps; i++) {
            lengths[i] = sum(arc, weights, rate(window, i, steps))[0];
        }
        List<Integer> peaks = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            boolean higher =
                    (i == 0 || lengths[i] >= lengths[i - 1]) && (i == steps - 1 || lengths[i] >= lengths[i + 1]);
            if (higher) {
                peaks.add(i);
            }
        }
        peaks.sort(Comparator.comparingDouble(i -> -lengths[i]));
        List<Candidate> found = new ArrayList<>();
        for (int peak : peaks.subList(0, Math.min(MOST_CANDIDATES, peaks.size()))) {
            double rate = rate(window, peak, steps);
            Line start = Line.through(sum(arc, weights, rate)[1], rate);
            sharpened(arc, weights, start).ifPresent(line -> addIfNew(found, candidate(arc, weights, line), arc));
        }
        if (found.isEmpty()) {
            double rate = rate(window, peaks.get(0), steps);
            found.add(candidate(arc, weights, Line.through(sum(arc, weights, rate)[1], rate)));
        }
        found.sort(Comparator.comparingDouble(c -> -c.pile()));
        return found;
    }

    private static double rate(RateWindow window, int index, int steps) {
        return window.lowDegPerDay() + (window.highDegPerDay() - window.lowDegPerDay()) * index / (steps - 1);
    }

    /** Weights that spare a mark with a large error, yet do not leave the choice of the turn to a few good ones. */
    private static double[] weights(Arc arc) {
        double meanSquare = 0;
        for (double sigma : arc.sigmaDeg()) {
            meanSquare += sigma * sigma / arc.size();
        }
        double[] weights = new double[arc.size()];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = 1 / (arc.sigmaDeg()[i] * arc.sigmaDeg()[i] + meanSquare);
        }
        return weights;
    }

    /** Length (share of the whole) and direction (deg) of the sum of unit vectors with a rate taken out. */
    private static double[] sum(Arc arc, double[] weights, double rate) {
        double east = 0;
        double north = 0;
        double total = 0;
        for (int i = 0; i < arc.size(); i++) {
            double angle = Math.toRadians(arc.lonDeg()[i] - rate * arc.days()[i]);
            east += weights[i] * Math.cos(angle);
            north += weights[i] * Math.sin(angle);
            total += weights[i];
        }
        return new double[] {Math.hypot(east, north) / total, Math.toDegrees(Math.atan2(north, east))};
    }

    private static Optional<Line> sharpened(Arc arc, double[] weights, Line start) {
        Line line = start;
        double[] y = new double[arc.size()];
        double[] bell = new double[arc.size()];
        for (double widthDeg : BELLS_DEG) {
            for (int round = 0; round < 4; round++) {
                for (int i = 0; i < arc.size(); i++) {
                    double residual = residual(arc, line, i);
                    y[i] = line.at(arc.days()[i]) + residual;
                    bell[i] = weights[i] * bell(residual, widthDeg);
                }
                Optional<Line> next = Line.fit(arc.days(), y, bell);
                if (next.isEmpty()) {
                    return Optional.empty();
                }
                line = next.get();
            }
        }
        return Optional.of(line);
    }

    private static Candidate candidate(Arc arc, double[] weights, Line line) {
        double piled = 0;
        double total = 0;
        for (int i = 0; i < arc.size(); i++) {
            piled += weights[i] * bell(residual(arc, line, i), BELLS_DEG[BELLS_DEG.length - 1]);
            total += weights[i];
        }
        return new Candidate(line, piled / total);
    }

    private static void addIfNew(List<Candidate> found, Candidate candidate, Arc arc) {
        for (Candidate other : found) {
            if (sameTurns(arc, other.line(), candidate.line())) {
                return;
            }
        }
        found.add(candidate);
    }

    private static boolean sameTurns(Arc arc, Line a, Line b) {
        long common = turn(arc, a, 0) - turn(arc, b, 0);
        for (int i = 1; i < arc.size(); i++) {
            if (turn(arc, a, i) - turn(arc, b, i) != common) {
                return false;
            }
        }
        return true;
    }

    private static long turn(Arc arc, Line line, int i) {
        return Math.round((line.at(arc.days()[i]) - arc.lonDeg()[i]) / 360);
    }

    /** Longitude minus line, on the nearest turn (deg, −180…180). */
    static double residual(Arc arc, Line line, int i) {
        return nearest(arc.lonDeg()[i] - line.at(arc.days()[i]));
    }

    /** An angle on the nearest turn (deg, −180…180). */
    static double nearest(double deg) {
        return deg - 360 * Math.rint(deg / 360);
    }

    private static double bell(double residualDeg, double widthDeg) {
        double z = residualDeg / widthDeg;
        return Math.exp(-z * z / 2);
    }
}
