/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.archive.Archive;
import oblate.archive.SeenState;

/** Takes back and says again what was seen of moons; where something else was said meanwhile it is left. Slow: off the event thread. */
final class StateEdits {
    private final Archive archive;

    StateEdits(Archive archive) {
        this.archive = archive;
    }

    EditPerformer.Outcome undo(Edit.StatesSeen edit, EditJournal journal) {
        List<SeenState> said = new ArrayList<>();
        for (Edit.StateChange change : edit.changes()) {
            if (isNewest(change.after())) {
                said.add(change.before()
                        .orElseGet(() -> change.after().takenBack(change.after().seenBy())));
            }
        }
        return told(edit, journal, said);
    }

    EditPerformer.Outcome redo(Edit.StatesSeen edit, EditJournal journal) {
        List<SeenState> said = new ArrayList<>();
        for (Edit.StateChange change : edit.changes()) {
            Optional<SeenState> now = newest(change.after());
            if (now.map(SeenState::state).equals(change.before().map(SeenState::state))) {
                said.add(change.after());
            }
        }
        return told(edit, journal, said);
    }

    private EditPerformer.Outcome told(Edit.StatesSeen edit, EditJournal journal, List<SeenState> said) {
        if (!said.isEmpty()) {
            archive.saySeen(said);
        }
        return PictureEdits.told(edit, journal, edit.weight() - said.size());
    }

    private Optional<SeenState> newest(SeenState about) {
        return archive.seenStates(about.planetId()).stream()
                .filter(about::isAboutTheSame)
                .findFirst();
    }

    /** Whether a word still counts; one that took another back does as long as nothing is said. */
    private boolean isNewest(SeenState word) {
        return newest(word).map(now -> now.state().equals(word.state())).orElse(word.isOpen());
    }
}
