/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import oblate.archive.ArchivedPicture;
import oblate.workbench.look.StateGlyph.State;

/** How far a picture has come. */
public final class PictureState {
    private PictureState() {}

    /** A time conflict, or no time or planet at all, comes before everything else. */
    public static State of(ArchivedPicture picture) {
        if (!picture.timeConflicts().isEmpty()
                || picture.time().isEmpty()
                || picture.planetId().isEmpty()) {
            return State.NEEDS_A_LOOK;
        }
        if (picture.markCount() > 0) {
            return State.MEASURED;
        }
        return picture.fitted() ? State.FITTED : State.NEW;
    }
}
