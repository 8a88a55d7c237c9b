/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Marks the archive did not take on pictures that were left since: each waits there until its picture comes back or the archive takes something again. On the
 * event thread only.
 */
final class WaitingMarks {
    private final Map<Long, Waiting> byPicture = new LinkedHashMap<>();

    /**
     * A mark that waits.
     *
     * @param what the mark
     * @param why why the archive did not take it
     */
    record Waiting(InHand what, String why) {}

    void put(InHand what, String why) {
        byPicture.put(what.pictureId(), new Waiting(what, why));
    }

    /** What waits on a picture; it waits no longer. */
    Optional<Waiting> take(long pictureId) {
        return Optional.ofNullable(byPicture.remove(pictureId));
    }

    /** All that waits; none waits any longer. */
    List<Waiting> takeAll() {
        List<Waiting> all = List.copyOf(byPicture.values());
        byPicture.clear();
        return all;
    }
}
