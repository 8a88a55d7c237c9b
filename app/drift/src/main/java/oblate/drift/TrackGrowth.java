/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;

/** Grows a piece of track at both ends, mark by mark, with a filter of two states whose rate may wander. Stateless. */
final class TrackGrowth {
    private static final double WANDER_DEG_PER_DAY = 0.012;
    private static final double GATE = 3.5;
    private static final double LOST_DEG = 3;
    private static final int LOCAL_MARKS = 12;
    private static final double LOCAL_DAYS = 40;
    private static final double LONGEST_SILENCE_DAYS = 15;
    private static final double SILENCE_SPACINGS = 6;

    private final LinkData data;

    TrackGrowth(LinkData data) {
        this.data = data;
    }

    /**
     * The marks of a piece with those found beyond its ends.
     *
     * @param free marks that belong to no track, in order of time
     */
    int[] grown(LinkTrack piece, int[] free) {
        List<Integer> all = new ArrayList<>();
        for (int mark : piece.marks) {
            all.add(mark);
        }
        grow(piece, free, 1, all);
        grow(piece, free, -1, all);
        return all.stream().mapToInt(i -> i).sorted().toArray();
    }

    private void grow(LinkTrack piece, int[] free, int way, List<Integer> into) {
        double end = way > 0 ? piece.last : piece.first;
        Line local = local(piece, way, end);
        double x = local.at(end);
        double rate = local.slope();
        double away = end - local.xMiddle();
        double p11 = 1 / local.weightXx() + WANDER_DEG_PER_DAY * WANDER_DEG_PER_DAY * 10;
        double p00 = 1 / local.weight() + away * away * p11;
        double p01 = away * p11;
        double at = end;
        double lastTaken = end;
        double silence = Math.max(LONGEST_SILENCE_DAYS, SILENCE_SPACINGS * piece.spacing());
        for (int k = start(free, end, way); k >= 0 && k < free.length; k += way) {
            int mark = free[k];
            double t = data.day[mark];
            double dt = t - at;
            if (Math.abs(t - lastTaken) > silence) {
                return;
            }
            if (latOff(mark, piece) > GATE || !data.kindsAgree(mark, piece.kind)) {
                continue;
            }
            double q = WANDER_DEG_PER_DAY * WANDER_DEG_PER_DAY * Math.abs(dt);
            double n11 = p11 + q;
            double n01 = p01 + dt * p11 + q * dt / 2;
            double n00 = p00 + 2 * dt * p01 + dt * dt * p11 + q * dt * dt / 3;
            if (n00 > LOST_DEG * LOST_DEG) {
                return;
            }
            double predicted = x + rate * dt;
            double off = RateScan.nearest(data.lon[mark] - predicted);
            double variance = n00 + data.sigma(mark) * data.sigma(mark);
            if (off * off > GATE * GATE * variance) {
                continue;
            }
            double k0 = n00 / variance;
            double k1 = n01 / variance;
            x = predicted + k0 * off;
            rate += k1 * off;
            p00 = (1 - k0) * n00;
            p01 = (1 - k0) * n01;
            p11 = n11 - k1 * n01;
            at = t;
            lastTaken = t;
            into.add(mark);
        }
    }

    private double latOff(int mark, LinkTrack piece) {
        double off = Math.abs(data.lat[mark] - piece.lat) / data.latScatter;
        return Double.isNaN(off) ? 0 : off;
    }

    private int start(int[] free, double end, int way) {
        int low = 0;
        int high = free.length;
        while (low < high) {
            int mid = (low + high) / 2;
            if (way > 0 ? data.day[free[mid]] <= end : data.day[free[mid]] < end) {
                low = mid + 1;
            } else {
                high = mid;
            }
        }
        return way > 0 ? low : low - 1;
    }

    /** The line of the marks near an end. */
    private Line local(LinkTrack piece, int way, double end) {
        int n = piece.marks.length;
        int count = 0;
        while (count < n && count < LOCAL_MARKS) {
            int mark = piece.marks[way > 0 ? n - 1 - count : count];
            if (count >= 5 && Math.abs(data.day[mark] - end) > LOCAL_DAYS) {
                break;
            }
            count++;
        }
        double[] x = new double[count];
        double[] y = new double[count];
        double[] w = new double[count];
        for (int k = 0; k < count; k++) {
            int mark = piece.marks[way > 0 ? n - 1 - k : k];
            double model = piece.at(data.day[mark]);
            x[k] = data.day[mark];
            y[k] = model + RateScan.nearest(data.lon[mark] - model);
            w[k] = 1 / (data.sigma(mark) * data.sigma(mark));
        }
        return Line.fit(x, y, w).orElseGet(() -> new Line(end, piece.at(end), piece.rate(), 1, 1));
    }
}
