/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.Arrays;
import java.util.List;

/** Finds pieces of tracks among free marks of one band of latitude: by votes over the whole time first, then over parts of it. */
final class PieceSearch {
    private static final double GATE = 3.5;
    private static final int FIT_ROUNDS = 5;
    private static final int MOST_FRUITLESS = 40;
    private static final double LEAST_PART_DAYS = 8;

    private final LinkData data;
    private final double threshold;
    private final int fewest;
    private final int[] owner;

    /**
     * @param threshold how many meetings made by chance are let in
     * @param fewest marks of a piece
     * @param owner number of the track of each mark, or −1; what is found is written there by the caller
     */
    PieceSearch(LinkData data, double threshold, int fewest, int[] owner) {
        this.data = data;
        this.threshold = threshold;
        this.fewest = fewest;
        this.owner = owner;
    }

    /** Finds pieces in a band, taking their marks into {@code owner} as numbers from {@code tracks.size()} on, and grows them. */
    void search(int[] band, RateWindow window, List<LinkTrack> tracks) {
        int[] free = free(band);
        if (free.length < fewest) {
            return;
        }
        double from = data.day[free[0]];
        double to = data.day[free[free.length - 1]];
        for (int parts = 1; parts <= 3; parts++) {
            double length = (to - from) / parts;
            if (parts > 1 && length < LEAST_PART_DAYS) {
                return;
            }
            for (int half = 0; half < 2 * parts - 1; half++) {
                double start = from + half * length / 2;
                part(band, start, start + length, window, tracks);
            }
        }
    }

    private int[] free(int[] band) {
        return Arrays.stream(band).filter(i -> owner[i] < 0).toArray();
    }

    private void part(int[] band, double from, double to, RateWindow window, List<LinkTrack> tracks) {
        int[] free = Arrays.stream(band)
                .filter(i -> owner[i] < 0 && data.day[i] >= from && data.day[i] <= to)
                .toArray();
        if (free.length < fewest) {
            return;
        }
        double usual =
                LinkData.median(Arrays.stream(free).mapToDouble(data::sigma).toArray());
        RateVotes votes = new RateVotes(data, from, to, window, usual);
        for (int mark : free) {
            votes.add(mark);
        }
        votes.counted();
        int fruitless = 0;
        while (fruitless < MOST_FRUITLESS) {
            RateVotes.Peak peak = votes.best();
            if (peak.votes() < fewest || votes.byChance(peak.votes()) > threshold) {
                return;
            }
            int[] marks = piece(free, votes.line(peak));
            if (marks.length < Math.max(fewest, peak.votes() / 2) || onOneDay(marks)) {
                votes.forget(peak);
                fruitless++;
                continue;
            }
            LinkTrack track = new LinkTrack(data, marks, votes.line(peak));
            int[] others = Arrays.stream(free(band))
                    .filter(i -> Arrays.binarySearch(marks, i) < 0)
                    .toArray();
            track.take(new TrackGrowth(data).grown(track, others));
            for (int mark : track.marks) {
                owner[mark] = tracks.size();
                if (data.day[mark] >= from && data.day[mark] <= to) {
                    votes.remove(mark);
                }
            }
            tracks.add(track);
        }
    }

    private boolean onOneDay(int[] marks) {
        return data.day[marks[marks.length - 1]] - data.day[marks[0]] < 1;
    }

    /** The free marks of a line, which is fitted to them in rounds. */
    private int[] piece(int[] free, Line start) {
        Line line = start;
        int[] marks = {};
        for (int round = 0; round < FIT_ROUNDS; round++) {
            Line now = line;
            int[] near = Arrays.stream(free)
                    .filter(i -> owner[i] < 0
                            && Math.abs(RateScan.nearest(data.lon[i] - now.at(data.day[i]))) < GATE * data.sigma(i))
                    .toArray();
            if (near.length < fewest) {
                return new int[0];
            }
            double[] x = new double[near.length];
            double[] y = new double[near.length];
            double[] w = new double[near.length];
            for (int k = 0; k < near.length; k++) {
                x[k] = data.day[near[k]];
                double model = now.at(x[k]);
                y[k] = model + RateScan.nearest(data.lon[near[k]] - model);
                w[k] = 1 / (data.sigma(near[k]) * data.sigma(near[k]));
            }
            line = Line.fit(x, y, w).orElse(now);
            boolean same = Arrays.equals(near, marks);
            marks = near;
            if (same) {
                break;
            }
        }
        return marks;
    }
}
