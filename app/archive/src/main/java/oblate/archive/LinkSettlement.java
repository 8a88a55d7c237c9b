/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * A word by hand about where a mark belongs when marks without names are joined into tracks.
 *
 * @param markId mark
 * @param verdict what is said
 * @param track name of the track, there for {@link Verdict#TRACK} only
 * @param reason why, kept for whoever reads it later; not blank, 1000 characters at most
 * @param settledUtc when; the archive's clock sets it
 */
public record LinkSettlement(
        long markId, Verdict verdict, Optional<String> track, String reason, Optional<Instant> settledUtc) {

    /** What can be said. */
    public enum Verdict {
        /** It belongs to the named track. */
        TRACK,
        /** It belongs to no track. */
        NONE,
        /** An earlier word is taken back. */
        OPEN
    }

    private static final int LONGEST_REASON = 1000;

    /** @throws IllegalArgumentException for a blank or too long reason, or a track that is missing or too many */
    public LinkSettlement {
        Objects.requireNonNull(verdict);
        if (reason.isBlank() || reason.length() > LONGEST_REASON) {
            throw new IllegalArgumentException("the reason must be 1 to " + LONGEST_REASON + " characters");
        }
        if ((verdict == Verdict.TRACK) != track.isPresent()
                || track.filter(String::isBlank).isPresent()) {
            throw new IllegalArgumentException("a track is named with " + Verdict.TRACK + " and only then");
        }
    }

    /** The mark belongs to a track. */
    public static LinkSettlement toTrack(long markId, String track, String reason) {
        return new LinkSettlement(markId, Verdict.TRACK, Optional.of(track), reason, Optional.empty());
    }

    /** The mark belongs to no track. */
    public static LinkSettlement toNone(long markId, String reason) {
        return new LinkSettlement(markId, Verdict.NONE, Optional.empty(), reason, Optional.empty());
    }

    /** Earlier words about the mark are taken back. */
    public static LinkSettlement open(long markId, String reason) {
        return new LinkSettlement(markId, Verdict.OPEN, Optional.empty(), reason, Optional.empty());
    }

    /** For the history. */
    String sentence() {
        return switch (verdict) {
            case TRACK -> "to track " + track.orElseThrow() + ": " + reason;
            case NONE -> "to no track: " + reason;
            case OPEN -> "left open again: " + reason;
        };
    }
}
