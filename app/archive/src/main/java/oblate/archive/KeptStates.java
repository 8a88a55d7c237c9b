/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import oblate.base.ProblemException;

/** What was seen of moons before and after their touches: said, said anew and taken back by new rows; never changed. */
final class KeptStates {
    private final Ledger ledger;
    private final KeptPictures pictures;
    private final SeenStateRows rows = new SeenStateRows(new GearRows());
    private final HistoryRows history = new HistoryRows();

    KeptStates(Ledger ledger, KeptPictures pictures) {
        this.ledger = ledger;
        this.pictures = pictures;
    }

    int say(List<SeenState> states) {
        return ledger.write((handle, now) -> {
            Map<String, List<SeenState>> known = new HashMap<>();
            int added = 0;
            for (SeenState said : states) {
                said.pictureId().ifPresent(id -> check(pictures.existing(handle, id), said.planetId()));
                List<SeenState> before =
                        known.computeIfAbsent(said.planetId(), p -> new ArrayList<>(rows.current(handle, p)));
                if (said.addsTo(before)) {
                    rows.add(handle, said, now);
                    history.add(handle, now, "seen", said.subject(), said.sentence());
                    before.removeIf(said::isAboutTheSame);
                    if (!said.isOpen()) {
                        before.add(said);
                    }
                    added++;
                }
            }
            return added;
        });
    }

    private static void check(ArchivedPicture picture, String planetId) {
        if (picture.time().isEmpty()) {
            throw new ProblemException(ArchiveProblem.UNDATED_PICTURE, picture.id());
        }
        if (!picture.planetId().equals(Optional.of(planetId))) {
            throw new ProblemException(
                    ArchiveProblem.OTHER_PLANET,
                    picture.id(),
                    picture.planetId().orElse("no known planet"),
                    planetId);
        }
    }

    List<SeenState> current(String planetId) {
        return ledger.read(handle -> rows.current(handle, planetId));
    }

    List<SeenState> all(String planetId) {
        return ledger.read(handle -> rows.all(handle, planetId));
    }
}
