/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Names the tracks that were found and says which links are doubtful, and why. */
final class LinkVerdict {
    private static final double RIVAL_LOG = Math.log(10);
    private static final double OUTLYING = 3;
    private static final double CROSSING_SIGMAS = 3;

    private final LinkData data;
    private final List<LinkTrack> tracks;
    private final TrackAssignment last;

    LinkVerdict(LinkData data, List<LinkTrack> tracks) {
        this.data = data;
        this.tracks = tracks;
        last = new TrackAssignment(data, tracks);
    }

    /** Tracks without a name are numbered from north to south. */
    Linked linked() {
        List<LinkTrack> inOrder = new ArrayList<>(tracks);
        inOrder.sort(Comparator.comparingDouble((LinkTrack t) -> Double.isNaN(t.lat) ? 0 : -t.lat)
                .thenComparingDouble(t -> t.first));
        int digits = Math.max(2, Integer.toString(inOrder.size()).length());
        int number = 0;
        for (LinkTrack track : inOrder) {
            if (track.name.isEmpty()) {
                number++;
                track.name = String.format(Locale.ROOT, "T%0" + digits + "d", number);
            }
        }
        Linked.Link[] links = new Linked.Link[data.count()];
        Arrays.fill(links, Linked.Link.NONE);
        for (int t = 0; t < tracks.size(); t++) {
            LinkTrack track = tracks.get(t);
            for (int mark : track.marks) {
                String why = data.feature[mark].isEmpty() ? doubt(track, mark) : "";
                links[data.original[mark]] = new Linked.Link(track.name, !why.isEmpty(), why);
            }
        }
        List<String> names = inOrder.stream().map(t -> t.name).toList();
        return new Linked(List.of(links), names);
    }

    /** Why a link is doubtful; empty when it is not. */
    private String doubt(LinkTrack track, int mark) {
        if (track.doubtful) {
            return track.reason;
        }
        int rival = last.second[mark];
        if (rival >= 0 && tracks.get(rival) == track) {
            rival = last.best[mark];
        }
        if (rival >= 0 && last.lead[mark] < RIVAL_LOG) {
            return "could as well belong to " + tracks.get(rival).name;
        }
        if (rival >= 0 && tracks.get(rival) != track) {
            LinkTrack other = tracks.get(rival);
            double apart = Math.abs(RateScan.nearest(track.at(data.day[mark]) - other.at(data.day[mark])));
            if (apart < CROSSING_SIGMAS * track.sigmaOf(mark)) {
                return "passes " + other.name;
            }
        }
        return last.chi[mark] > OUTLYING ? "lies far off its track" : "";
    }
}
