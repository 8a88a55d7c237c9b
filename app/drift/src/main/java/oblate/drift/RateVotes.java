/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

/**
 * Votes of marks for lines: every mark votes, at every rate, for the longitudes in the middle of the time that would bring a feature to it. Where many votes meet, there is
 * a track.
 */
final class RateVotes {
    private static final double LON_STEP_SIGMAS = 0.6;
    private static final double RATE_STEP_SIGMAS = 1.2;
    private static final int REACH_BINS = 2;
    private static final int MOST_CELLS = 16_000_000;

    private final LinkData data;
    private final double middle;
    private final double lowRate;
    private final double rateStep;
    private final int rates;
    private final int bins;
    private final int[] votes;
    private final int[] rowMost;
    private int voters;

    /**
     * @param from first day
     * @param to last day
     * @param sigmaDeg usual standard error
     */
    RateVotes(LinkData data, double from, double to, RateWindow window, double sigmaDeg) {
        this.data = data;
        middle = (from + to) / 2;
        bins = (int) Math.max(24, Math.min(3600, Math.ceil(360 / (LON_STEP_SIGMAS * sigmaDeg))));
        double half = Math.max(0.5, (to - from) / 2);
        double width = window.highDegPerDay() - window.lowDegPerDay();
        int wanted =
                (int) Math.ceil(Math.min(1e6, width / (RATE_STEP_SIGMAS * 360 / bins / LON_STEP_SIGMAS / half))) + 1;
        rates = Math.max(2, Math.min(wanted, MOST_CELLS / bins));
        lowRate = window.lowDegPerDay();
        rateStep = width / (rates - 1);
        votes = new int[rates * bins];
        rowMost = new int[rates];
    }

    /** A meeting of votes. */
    record Peak(int cell, int votes, double rateDegPerDay, double lonDeg) {}

    int voters() {
        return voters;
    }

    void add(int mark) {
        vote(mark, 1);
        voters++;
    }

    void remove(int mark) {
        vote(mark, -1);
        voters--;
    }

    private void vote(int mark, int weight) {
        double days = data.day[mark] - middle;
        double lon = data.lon[mark];
        double perDeg = bins / 360.0;
        for (int r = 0; r < rates; r++) {
            double at = (lon - (lowRate + r * rateStep) * days) * perDeg;
            at -= bins * Math.floor(at / bins);
            int bin = (int) at;
            int row = r * bins;
            for (int k = bin - REACH_BINS; k <= bin + REACH_BINS; k++) {
                int wrapped = k < 0 ? k + bins : k >= bins ? k - bins : k;
                votes[row + wrapped] += weight;
            }
            if (weight > 0) {
                // An upper bound is enough here; it is made exact when the row leads.
                rowMost[r] = Math.max(rowMost[r], 1);
            }
        }
    }

    /** To be called once after the last vote was added. */
    void counted() {
        for (int r = 0; r < rates; r++) {
            rowMost[r] = most(r);
        }
    }

    private int most(int row) {
        int most = 0;
        for (int k = row * bins; k < (row + 1) * bins; k++) {
            most = Math.max(most, votes[k]);
        }
        return most;
    }

    /** The meeting of most votes; rows only ever lose votes, so their old maxima are upper bounds. */
    Peak best() {
        while (true) {
            int lead = 0;
            for (int r = 1; r < rates; r++) {
                lead = rowMost[r] > rowMost[lead] ? r : lead;
            }
            int exact = most(lead);
            if (exact == rowMost[lead]) {
                return peak(lead, exact);
            }
            rowMost[lead] = exact;
        }
    }

    private Peak peak(int row, int most) {
        int first = -1;
        int run = 0;
        for (int k = 0; k < bins; k++) {
            if (votes[row * bins + k] == most) {
                first = first < 0 ? k : first;
                run++;
            } else if (first >= 0) {
                break;
            }
        }
        double bin = first + run / 2.0;
        return new Peak(row * bins + first, most, lowRate + row * rateStep, bin * 360 / bins);
    }

    /** Takes a meeting out that came to nothing. */
    void forget(Peak peak) {
        int row = peak.cell() / bins * bins;
        for (int k = -REACH_BINS; k <= REACH_BINS; k++) {
            votes[row + Math.floorMod(peak.cell() - row + k, bins)] = 0;
        }
    }

    /** The line of a meeting, in days of the data. */
    Line line(Peak peak) {
        return new Line(middle, peak.lonDeg(), peak.rateDegPerDay(), 1, 1);
    }

    /** How many meetings of so many votes chance alone would make. */
    double byChance(int n) {
        double mean = voters * (2 * REACH_BINS + 1.0) / bins;
        int least = n - 1;
        if (least <= mean) {
            return votes.length;
        }
        double log = -mean + least * Math.log(mean);
        for (int k = 2; k <= least; k++) {
            log -= Math.log(k);
        }
        double series = 1;
        double term = 1;
        for (int k = 1; k < 200 && term > 1e-12; k++) {
            term *= mean / (least + k);
            series += term;
        }
        return Math.exp(log) * series * votes.length;
    }
}
