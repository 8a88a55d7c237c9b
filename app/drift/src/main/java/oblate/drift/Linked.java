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
