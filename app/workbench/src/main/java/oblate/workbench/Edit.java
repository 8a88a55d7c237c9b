/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import oblate.archive.PictureFacts;

/**
 * Something a person did to the archive, told by the numbers of the rows it made. Immutable, and complete enough to be taken back or done again by another
 * session: the rows themselves are never deleted.
 */
public sealed interface Edit {
    /** The picture it was done to. */
    long pictureId();

    /** What was done, in words that follow "Undo", e.g. "marking". */
    String what();

    /**
     * A mark was added.
     *
     * @param pictureId its picture
     * @param markId its row
     */
    record MarkAdded(long pictureId, long markId) implements Edit {
        @Override
        public String what() {
            return "marking";
        }
    }

    /** Why a mark was replaced. */
    enum Change {
        MOVED("moving a mark"),
        NAMED("naming a mark");

        private final String words;

        Change(String words) {
            this.words = words;
        }
    }

    /**
     * A mark was replaced by another row.
     *
     * @param pictureId its picture
     * @param oldId row before
     * @param newId row after
     * @param change why
     */
    record MarkReplaced(long pictureId, long oldId, long newId, Change change) implements Edit {
        @Override
        public String what() {
            return change.words;
        }
    }

    /**
     * A mark was withdrawn.
     *
     * @param pictureId its picture
     * @param markId its row
     */
    record MarkWithdrawn(long pictureId, long markId) implements Edit {
        @Override
        public String what() {
            return "withdrawing a mark";
        }
    }

    /**
     * A disc fit was kept as the picture's current one.
     *
     * @param pictureId its picture
     * @param before the current fit before, if there was one
     * @param fitId its row
     * @param byHand drawn by hand
     */
    record FitKept(long pictureId, Optional<Long> before, long fitId, boolean byHand) implements Edit {
        @Override
        public String what() {
            return byHand ? "the outline by hand" : "fitting the disc";
        }
    }

    /**
     * Facts of a filed picture were corrected.
     *
     * @param pictureId the picture
     * @param before what was said of it
     * @param after what is said now
     */
    record FactsCorrected(long pictureId, PictureFacts before, PictureFacts after) implements Edit {
        @Override
        public String what() {
            return "correcting a picture";
        }
    }
}
