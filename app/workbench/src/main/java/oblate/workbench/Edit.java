/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.List;
import java.util.Optional;
import oblate.archive.PictureFacts;
import oblate.archive.SeenState;

/**
 * Something a person did to the archive, told by the numbers of the rows it made. Immutable, and complete enough to be taken back or done again by another
 * session: the rows themselves are never deleted.
 */
public sealed interface Edit {
    /** The picture it was done to; of several the first. */
    long pictureId();

    /** What was done, in words that follow "Undo", e.g. "marking". */
    default String what() {
        return EditWords.of(this);
    }

    /** Pictures it was done to. */
    default int weight() {
        return 1;
    }

    /**
     * The same done to some of its pictures.
     *
     * @param from place of the first, from 0
     * @param to place after the last, at most {@link #weight()}
     * @throws IllegalArgumentException when that is none
     */
    default Edit part(int from, int to) {
        if (from != 0 || to != 1) {
            throw new IllegalArgumentException("an edit of one picture has no parts");
        }
        return this;
    }

    /**
     * A mark was added.
     *
     * @param pictureId its picture
     * @param markId its row
     */
    record MarkAdded(long pictureId, long markId) implements Edit {}

    /** Why a mark was replaced. */
    enum Change {
        MOVED,
        NAMED
    }

    /**
     * A mark was replaced by another row.
     *
     * @param pictureId its picture
     * @param oldId row before
     * @param newId row after
     * @param change why
     */
    record MarkReplaced(long pictureId, long oldId, long newId, Change change) implements Edit {}

    /**
     * A mark was withdrawn.
     *
     * @param pictureId its picture
     * @param markId its row
     */
    record MarkWithdrawn(long pictureId, long markId) implements Edit {}

    /** How a fit came about. */
    enum Origin {
        FITTED,
        BY_HAND,
        ACCEPTED
    }

    /**
     * A disc fit was kept as the picture's current one.
     *
     * @param pictureId its picture
     * @param before the current fit before, if there was one
     * @param fitId its row
     * @param origin how it came about
     */
    record FitKept(long pictureId, Optional<Long> before, long fitId, Origin origin) implements Edit {}

    /**
     * A disc fit was taken out of use.
     *
     * @param pictureId its picture
     * @param fitId its row
     */
    record FitWithdrawn(long pictureId, long fitId) implements Edit {}

    /**
     * What a correction did to one picture.
     *
     * @param pictureId the picture
     * @param before what was said of it
     * @param after what is said now
     * @param conflicts sentences about disagreeing times that stood there before
     */
    record FactsChange(long pictureId, PictureFacts before, PictureFacts after, List<String> conflicts) {
        /** Copies the list. */
        public FactsChange {
            conflicts = List.copyOf(conflicts);
        }
    }

    /**
     * Facts of filed pictures were corrected together.
     *
     * @param changes one for each picture, at least one
     * @param words what was corrected, e.g. "site of 12 pictures"
     * @param of how many pictures were corrected together; more than there are changes when only a part was taken back or done again
     */
    record FactsCorrected(List<FactsChange> changes, String words, int of) implements Edit {
        /** Copies the list. */
        public FactsCorrected {
            changes = List.copyOf(changes);
            if (changes.isEmpty()) {
                throw new IllegalArgumentException("no change");
            }
        }

        /** All that was corrected together. */
        public FactsCorrected(List<FactsChange> changes, String words) {
            this(changes, words, changes.size());
        }

        @Override
        public FactsCorrected part(int from, int to) {
            return new FactsCorrected(changes.subList(from, to), words, of);
        }

        @Override
        public long pictureId() {
            return changes.get(0).pictureId();
        }

        @Override
        public int weight() {
            return changes.size();
        }
    }

    /**
     * A time about which sources disagreed.
     *
     * @param pictureId its picture
     * @param conflicts the sentences that stood there
     */
    record Disagreement(long pictureId, List<String> conflicts) {
        /** Copies the list. */
        public Disagreement {
            conflicts = List.copyOf(conflicts);
        }
    }

    /**
     * Times were settled to be right though their sources disagree.
     *
     * @param settled one for each picture, at least one
     * @param reason why
     */
    record TimesSettled(List<Disagreement> settled, String reason) implements Edit {
        /** Copies the list. */
        public TimesSettled {
            settled = List.copyOf(settled);
            if (settled.isEmpty()) {
                throw new IllegalArgumentException("no time");
            }
        }

        @Override
        public TimesSettled part(int from, int to) {
            return new TimesSettled(settled.subList(from, to), reason);
        }

        @Override
        public long pictureId() {
            return settled.get(0).pictureId();
        }

        @Override
        public int weight() {
            return settled.size();
        }
    }

    /**
     * What was said of a moon in one picture; looks without one are not said here.
     *
     * @param before the newest word before; empty when there was none
     * @param after the word now; one that takes the earlier back has its own state for that
     */
    record StateChange(Optional<SeenState> before, SeenState after) {
        /** Leaves out when it was said. */
        public StateChange {
            before = before.map(StateChange::undated);
            after = undated(after);
        }

        private static SeenState undated(SeenState s) {
            return SeenState.in(
                    s.pictureId().orElseThrow(), s.planetId(), s.moonId(), s.phenomenon(), s.state(), s.seenBy());
        }
    }

    /**
     * States of a moon were said, or taken back, of pictures together.
     *
     * @param changes one for each picture, at least one
     */
    record StatesSeen(List<StateChange> changes) implements Edit {
        /** Copies the list. */
        public StatesSeen {
            changes = List.copyOf(changes);
            if (changes.isEmpty()) {
                throw new IllegalArgumentException("no state");
            }
        }

        @Override
        public long pictureId() {
            return changes.get(0).after().pictureId().orElseThrow();
        }

        @Override
        public int weight() {
            return changes.size();
        }
    }
}
