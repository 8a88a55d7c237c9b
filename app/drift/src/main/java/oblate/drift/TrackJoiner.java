/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;

/** Joins pieces of one feature: those that meet in the gap between them, and those that run along the same path. */
final class TrackJoiner {
    private static final double LAT_DEG = 0.9;
    private static final double MEETING_SIGMAS = 3;
    private static final double FLOOR_DEG = 0.3;
    private static final double FLOOR_DEG_PER_DAY = 0.05;
    private static final double LONGEST_GAP_DAYS = 45;
    private static final double KEPT_SHARE = 0.9;
    private static final double SAME_PATH_SIGMAS = 2;
    private static final double CLEAR_SIGMAS = 2;

    private final LinkData data;

    TrackJoiner(LinkData data) {
        this.data = data;
    }

    /** Joins whatever can be joined, the best meeting first. */
    List<LinkTrack> joined(List<LinkTrack> tracks) {
        List<LinkTrack> left = new ArrayList<>(tracks);
        java.util.Set<String> refused = new java.util.HashSet<>();
        while (true) {
            LinkTrack bestA = null;
            LinkTrack bestB = null;
            double best = Double.POSITIVE_INFINITY;
            for (LinkTrack a : left) {
                for (LinkTrack b : left) {
                    if (a != b && a.first <= b.first && mayBeOne(a, b) && !refused.contains(key(a, b))) {
                        double distance = distance(a, b);
                        if (distance < best) {
                            best = distance;
                            bestA = a;
                            bestB = b;
                        }
                    }
                }
            }
            if (bestA == null) {
                return left;
            }
            if (merged(bestA, bestB)) {
                left.remove(bestB);
            } else {
                refused.add(key(bestA, bestB));
            }
        }
    }

    private static String key(LinkTrack a, LinkTrack b) {
        return System.identityHashCode(a) + ":" + a.marks.length + ":" + System.identityHashCode(b) + ":"
                + b.marks.length;
    }

    private boolean mayBeOne(LinkTrack a, LinkTrack b) {
        boolean named = !a.name.isEmpty() && !b.name.isEmpty();
        boolean kinds = a.kind.isEmpty() || b.kind.isEmpty() || a.kind.equals(b.kind);
        return !named && kinds && !(Math.abs(a.lat - b.lat) > LAT_DEG);
    }

    /** How far apart (in what is allowed) the two are; infinite when they cannot be one. */
    private double distance(LinkTrack a, LinkTrack b) {
        double gap = b.first - a.last;
        double overlap = Math.min(a.last, b.last) - b.first;
        if (overlap > 0.3 * Math.min(a.span(), b.span())) {
            return alongside(a, b, b.first, Math.min(a.last, b.last));
        }
        if (gap > LONGEST_GAP_DAYS) {
            return Double.POSITIVE_INFINITY;
        }
        double middle = (a.last + b.first) / 2;
        double off = Math.abs(RateScan.nearest(a.at(middle) - b.at(middle)));
        double allowed = Math.hypot(Math.min(3, a.sigmaAt(middle)), Math.min(3, b.sigmaAt(middle)))
                + FLOOR_DEG
                + FLOOR_DEG_PER_DAY * Math.max(0, gap);
        return off > MEETING_SIGMAS * allowed ? Double.POSITIVE_INFINITY : off / allowed + Math.max(0, gap) / 30;
    }

    private double alongside(LinkTrack a, LinkTrack b, double from, double to) {
        double most = 0;
        for (int k = 0; k <= 4; k++) {
            double day = from + (to - from) * k / 4;
            double off = Math.abs(RateScan.nearest(a.at(day) - b.at(day)));
            double allowed = Math.hypot(a.sigmaAt(day), b.sigmaAt(day)) + Math.hypot(data.sigma(b.marks[0]), FLOOR_DEG);
            most = Math.max(most, off / allowed);
        }
        return most > SAME_PATH_SIGMAS ? Double.POSITIVE_INFINITY : most / 10;
    }

    /** Makes one of two when a single curve holds nearly all marks of both. */
    private boolean merged(LinkTrack a, LinkTrack b) {
        int[] all = new int[a.marks.length + b.marks.length];
        System.arraycopy(a.marks, 0, all, 0, a.marks.length);
        System.arraycopy(b.marks, 0, all, a.marks.length, b.marks.length);
        double middle = (a.last + b.first) / 2;
        double gap = b.first - a.last;
        Line start = start(a, b);
        LinkTrack one = new LinkTrack(data, all, start);
        one.fit();
        if (kept(one, a.marks) < KEPT_SHARE || kept(one, b.marks) < KEPT_SHARE) {
            return false;
        }
        double own = Math.hypot(a.sigmaAt(middle), b.sigmaAt(middle));
        double off = Math.abs(RateScan.nearest(a.at(middle) - b.at(middle)));
        if (gap > 0 && (off > CLEAR_SIGMAS * own || own > 1)) {
            a.doubtful = true;
            a.reason = String.format(
                    java.util.Locale.ROOT,
                    "joined over a gap of %.0f days; the two parts miss each other by %.1f deg",
                    gap,
                    off);
        }
        if (a.name.isEmpty()) {
            a.name = b.name;
        }
        a.take(all);
        a.adopt(one);
        return true;
    }

    /** A line through the middles of both on turns that fit. */
    private static Line start(LinkTrack a, LinkTrack b) {
        double dayA = (a.first + a.last) / 2;
        double dayB = (b.first + b.last) / 2;
        double meeting = (a.last + b.first) / 2;
        double turn = 360 * Math.rint((a.at(meeting) - b.at(meeting)) / 360);
        double lonA = a.at(dayA);
        double lonB = b.at(dayB) + turn;
        double slope = Math.abs(dayB - dayA) > 1 ? (lonB - lonA) / (dayB - dayA) : a.rate();
        return new Line(dayA, lonA, slope, 1, 1);
    }

    private static double kept(LinkTrack one, int[] marks) {
        int inside = 0;
        for (int mark : marks) {
            inside += Math.abs(one.offset(mark)) < TrackAssignment.GATE * one.sigmaOf(mark) ? 1 : 0;
        }
        return (double) inside / marks.length;
    }
}
