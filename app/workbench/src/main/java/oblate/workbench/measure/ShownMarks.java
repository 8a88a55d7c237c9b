/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.archive.NewMark;
import oblate.archive.StoredMark;

/** The marks of a picture as they are to be shown: the one in the hand is where the hand holds it, also when it has no row yet. */
final class ShownMarks {
    /** Number of a mark that has no row yet. */
    static final long NOT_KEPT = -1;

    private ShownMarks() {}

    static List<StoredMark> of(OpenPicture picture, Optional<InHand> hand) {
        List<StoredMark> shown = new ArrayList<>();
        picture.marks()
                .forEach(m -> shown.add(hand.filter(h -> h.isOf(m.id()))
                        .map(h -> with(m, h.mark()))
                        .orElse(m)));
        hand.filter(InHand::isFresh).ifPresent(f -> shown.add(fresh(picture, f.mark())));
        return shown;
    }

    private static StoredMark fresh(OpenPicture picture, NewMark mark) {
        Instant mid = picture.picture().time().orElseThrow().midUtc();
        return new StoredMark(NOT_KEPT, mark, Map.of(), Optional.empty(), mid, mid, Optional.empty(), Optional.empty());
    }

    private static StoredMark with(StoredMark m, NewMark moved) {
        return new StoredMark(
                m.id(),
                moved,
                m.longitudes(),
                m.featureName(),
                m.midUtc(),
                m.madeUtc(),
                m.supersededBy(),
                m.withdrawnReason());
    }
}
