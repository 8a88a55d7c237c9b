/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.pictures;

import java.awt.Color;
import oblate.archive.ArchivedPicture;
import oblate.archive.FitSummary;
import oblate.disc.Trust;
import oblate.workbench.Shelf;
import oblate.workbench.look.Palette;
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

    /** As {@link #of(ArchivedPicture)}, knowing also doubtful fits, clocks the moons contradict, and what was reported. */
    public static State of(ArchivedPicture picture, Shelf shelf) {
        State plain = of(picture);
        boolean wrong = shelf.fit(picture.id()).filter(PictureState::isWrong).isPresent();
        if (plain == State.NEEDS_A_LOOK || wrong) {
            return State.NEEDS_A_LOOK;
        }
        return shelf.isReported(picture.id()) ? State.REPORTED : plain;
    }

    private static boolean isWrong(FitSummary fit) {
        return fit.trust() == Trust.DOUBTFUL || fit.clockDisagrees();
    }

    /** The tone of a state in a theme; shape tells it too. */
    public static Color tone(State state, Palette colours) {
        return switch (state) {
            case NEW -> colours.quietInk();
            case FITTED, MEASURED, REPORTED -> colours.accent();
            case NEEDS_A_LOOK -> colours.alarm();
        };
    }
}
