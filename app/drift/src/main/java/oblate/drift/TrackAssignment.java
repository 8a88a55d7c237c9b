/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** Gives every mark to the likeliest track. Marks with a feature's name stay where they are. */
final class TrackAssignment {
    static final double GATE = 3.5;
    private static final double LOST_DEG = 2.5;
    private static final double KIND_TOLL = 12;
    private static final double MOST_SIZE_TOLL = 9;
    private static final double LAT_REACH_DEG = 1.3;

    private final LinkData data;
    /** The likeliest track of each mark, or −1, and how much likelier than the next it is (natural logarithm). */
    final int[] best;

    final double[] lead;
    final int[] second;
    final double[] chi;

    TrackAssignment(LinkData data, List<LinkTrack> tracks) {
        this.data = data;
        int n = data.count();
        best = new int[n];
        second = new int[n];
        lead = new double[n];
        chi = new double[n];
        double[] bestLog = new double[n];
        double[] secondLog = new double[n];
        Arrays.fill(best, -1);
        Arrays.fill(second, -1);
        Arrays.fill(bestLog, Double.NEGATIVE_INFINITY);
        Arrays.fill(secondLog, Double.NEGATIVE_INFINITY);
        int[] byLat = byLatitude();
        double[] lats = Arrays.stream(byLat).mapToDouble(i -> data.lat[i]).toArray();
        int known = 0;
        while (known < n && !Double.isNaN(lats[known])) {
            known++;
        }
        double reach = Math.max(LAT_REACH_DEG, GATE * data.latScatter);
        for (int t = 0; t < tracks.size(); t++) {
            LinkTrack track = tracks.get(t);
            boolean anywhere = Double.isNaN(track.lat);
            int from = anywhere ? 0 : below(lats, known, track.lat - reach);
            int to = anywhere ? n : below(lats, known, track.lat + reach);
            for (int k = from; k < to; k++) {
                look(t, track, byLat[k], bestLog, secondLog);
            }
            for (int k = Math.max(to, known); k < n; k++) {
                look(t, track, byLat[k], bestLog, secondLog);
            }
        }
        for (int i = 0; i < n; i++) {
            lead[i] = bestLog[i] - secondLog[i];
        }
    }

    private int[] byLatitude() {
        Integer[] order = new Integer[data.count()];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> data.lat[i]));
        return Arrays.stream(order).mapToInt(i -> i).toArray();
    }

    private static int below(double[] lats, int known, double lat) {
        int low = 0;
        int high = known;
        while (low < high) {
            int mid = (low + high) / 2;
            if (lats[mid] < lat) {
                low = mid + 1;
            } else {
                high = mid;
            }
        }
        return low;
    }

    private void look(int t, LinkTrack track, int mark, double[] bestLog, double[] secondLog) {
        boolean pinned = !data.feature[mark].isEmpty();
        if (pinned && !data.feature[mark].equals(track.name)) {
            return;
        }
        double log = pinned ? 0 : logLikelihood(track, mark);
        if (log > bestLog[mark]) {
            secondLog[mark] = bestLog[mark];
            second[mark] = best[mark];
            bestLog[mark] = log;
            best[mark] = t;
            chi[mark] = pinned ? 0 : Math.abs(track.offset(mark)) / track.sigmaOf(mark);
        } else if (log > secondLog[mark]) {
            secondLog[mark] = log;
            second[mark] = t;
        }
    }

    private double logLikelihood(LinkTrack track, int mark) {
        double day = data.day[mark];
        double slack = track.slack();
        if (day < track.first - slack || day > track.last + slack) {
            return Double.NEGATIVE_INFINITY;
        }
        double off = Math.abs(track.offset(mark));
        if (off > 20 || track.sigmaAt(day) > LOST_DEG) {
            return Double.NEGATIVE_INFINITY;
        }
        double sigma = track.sigmaOf(mark);
        double z = off / sigma;
        double latZ = (data.lat[mark] - track.lat) / data.latScatter;
        if (z > GATE || Math.abs(latZ) > GATE) {
            return Double.NEGATIVE_INFINITY;
        }
        double square = z * z + (Double.isNaN(latZ) ? 0 : latZ * latZ);
        square += data.kindsAgree(mark, track.kind) ? 0 : KIND_TOLL;
        double sizeZ = (data.size[mark] - track.size) / data.sizeScatter;
        square += Double.isNaN(sizeZ) ? 0 : Math.min(MOST_SIZE_TOLL, sizeZ * sizeZ);
        return square > 2 * GATE * GATE ? Double.NEGATIVE_INFINITY : -square / 2 - Math.log(sigma);
    }

    /** Puts the marks into their tracks; tracks with fewer than so many are dropped. */
    List<LinkTrack> applied(List<LinkTrack> tracks, int fewest) {
        List<List<Integer>> marks = new ArrayList<>();
        tracks.forEach(t -> marks.add(new ArrayList<>()));
        for (int i = 0; i < data.count(); i++) {
            if (best[i] >= 0) {
                marks.get(best[i]).add(i);
            }
        }
        List<LinkTrack> kept = new ArrayList<>();
        for (int t = 0; t < tracks.size(); t++) {
            int[] own = trimmed(
                    marks.get(t).stream().mapToInt(i -> i).toArray(),
                    !tracks.get(t).name.isEmpty());
            if (own.length >= fewest || own.length > 0 && !tracks.get(t).name.isEmpty()) {
                tracks.get(t).take(own);
                kept.add(tracks.get(t));
            }
        }
        return kept;
    }

    /** Without one or two lone marks far beyond an end: a false mark there would keep two pieces of one feature apart. */
    private int[] trimmed(int[] marks, boolean named) {
        if (named || marks.length < 8) {
            return marks;
        }
        double[] gaps = new double[marks.length - 1];
        for (int k = 0; k < gaps.length; k++) {
            gaps[k] = data.day[marks[k + 1]] - data.day[marks[k]];
        }
        double far = Math.max(8, 6 * LinkData.median(gaps.clone()));
        int from = 0;
        int to = marks.length;
        for (int lone = 1; lone <= 2; lone++) {
            if (gaps[lone - 1] > far) {
                from = lone;
            }
            if (gaps[gaps.length - lone] > far) {
                to = marks.length - lone;
            }
        }
        return Arrays.copyOfRange(marks, from, to);
    }
}
