/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.util.Optional;
import oblate.archive.Feature;
import oblate.archive.NewMark;
import oblate.archive.StoredMark;

/**
 * A mark as a hand left it, which the archive does not have yet.
 *
 * @param old the row it is to replace; empty for a mark that has none
 * @param mark place and name as they are to be
 * @param name the feature it is to be named after, when it is being named
 */
record InHand(Optional<StoredMark> old, NewMark mark, Optional<Feature> name) {
    static InHand fresh(NewMark mark) {
        return new InHand(Optional.empty(), mark, Optional.empty());
    }

    static InHand moved(StoredMark old, NewMark to) {
        return new InHand(Optional.of(old), to, Optional.empty());
    }

    InHand at(NewMark to) {
        return new InHand(old, to, name);
    }

    boolean isFresh() {
        return old.isEmpty();
    }

    /** Whether it is another place or name of this row. */
    boolean isOf(long markId) {
        return old.filter(o -> o.id() == markId).isPresent();
    }

    long pictureId() {
        return mark.pictureId();
    }
}
