/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.util.ArrayList;
import java.util.List;

/**
 * Marks joined into tracks.
 *
 * @param links one per mark, in the order of the marks
 * @param tracks names of the tracks, in order
 */
public record Linked(List<Link> links, List<String> tracks) {

    /** Copies the lists. */
    public Linked {
        links = List.copyOf(links);
        tracks = List.copyOf(tracks);
    }

    /**
     * Where a mark belongs.
     *
     * @param track name of its track; empty when it belongs to none
     * @param doubtful whether another answer is nearly as good
     * @param reason why it is doubtful, or why it was settled by hand; else empty
     */
    public record Link(String track, boolean doubtful, String reason) {
        /** Of no track. */
        static final Link NONE = new Link("", false, "");
    }

    /** With some links settled by hand; a track left without marks is gone, a name not known before is a new track. */
    public Linked settled(List<Settlement> settlements) {
        List<Link> changed = new ArrayList<>(links);
        for (Settlement one : settlements) {
            if (one.track().equalsIgnoreCase(SettleFile.OPEN)) {
                continue;
            }
            changed.set(one.mark(), new Link(one.track(), false, "settled by hand: " + one.reason()));
        }
        List<String> named = new ArrayList<>(tracks);
        changed.stream()
                .map(Link::track)
                .filter(t -> !t.isEmpty() && !tracks.contains(t))
                .distinct()
                .sorted()
                .forEach(named::add);
        named.removeIf(t -> changed.stream().noneMatch(l -> l.track().equals(t)));
        return new Linked(changed, named);
    }

    /** Numbers of the marks (from 0) of a track. */
    public List<Integer> marksOf(String track) {
        List<Integer> marks = new ArrayList<>();
        for (int i = 0; i < links.size(); i++) {
            if (links.get(i).track().equals(track)) {
                marks.add(i);
            }
        }
        return marks;
    }
}
