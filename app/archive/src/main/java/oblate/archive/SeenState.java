/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a person saw of a moon or its shadow, in a picture of the archive or in a look without one. Of the words about the same picture or look, moon and phenomenon
 * the newest counts.
 *
 * @param pictureId the picture; empty for a look
 * @param look the look; empty for a picture
 * @param planetId the planet
 * @param moonId the moon
 * @param phenomenon {@code transit}, {@code shadow_transit}, {@code occultation} or {@code eclipse}
 * @param state {@code clear}, {@code on_limb}, {@code on_disc}, {@code gone}, {@code seen}, {@code not_seen}; {@value #OPEN}: an earlier word is taken back
 * @param seenBy who says so; may be empty, 200 characters at most
 * @param saidUtc when it was said; the archive's clock sets it
 */
public record SeenState(
        Optional<Long> pictureId,
        Optional<Look> look,
        String planetId,
        String moonId,
        String phenomenon,
        String state,
        String seenBy,
        Optional<Instant> saidUtc) {
    /** An earlier word is taken back. */
    public static final String OPEN = "open";

    private static final Set<String> PHENOMENA = Set.of("transit", "shadow_transit", "occultation", "eclipse");
    private static final Set<String> STATES = Set.of("clear", "on_limb", "on_disc", "gone", "seen", "not_seen", OPEN);
    private static final int LONGEST_NAME = 200;
    private static final double LONGEST_S = 86_400;

    /**
     * A look without a picture.
     *
     * @param utc when
     * @param sigmaS standard uncertainty of that (s), 0…86 400
     * @param observer whose clock it was
     * @param site where; one of the archive's
     */
    public record Look(Instant utc, double sigmaS, Optional<String> observer, Optional<String> site) {

        /** @throws IllegalArgumentException for an uncertainty out of range */
        public Look {
            if (!(sigmaS >= 0 && sigmaS <= LONGEST_S)) {
                throw new IllegalArgumentException(sigmaS + " s");
            }
        }
    }

    /** @throws IllegalArgumentException for a word that is not known, or neither or both of picture and look */
    public SeenState {
        if (pictureId.isPresent() == look.isPresent()) {
            throw new IllegalArgumentException("a state is seen in a picture or in a look");
        }
        if (!PHENOMENA.contains(phenomenon) || !STATES.contains(state) || seenBy.length() > LONGEST_NAME) {
            throw new IllegalArgumentException(phenomenon + ", " + state + ", " + seenBy);
        }
    }

    /** Seen in a picture. */
    public static SeenState in(
            long pictureId, String planetId, String moonId, String phenomenon, String state, String seenBy) {
        return new SeenState(
                Optional.of(pictureId),
                Optional.empty(),
                planetId,
                moonId,
                phenomenon,
                state,
                seenBy,
                Optional.empty());
    }

    /** Seen in a look. */
    public static SeenState in(
            Look look, String planetId, String moonId, String phenomenon, String state, String seenBy) {
        return new SeenState(
                Optional.empty(), Optional.of(look), planetId, moonId, phenomenon, state, seenBy, Optional.empty());
    }

    /** The word that takes this one back. */
    public SeenState takenBack(String by) {
        return new SeenState(pictureId, look, planetId, moonId, phenomenon, OPEN, by, Optional.empty());
    }

    /** Whether an earlier word is taken back. */
    public boolean isOpen() {
        return state.equals(OPEN);
    }

    /** Whether another word is about the same thing, so that the newer of the two counts. */
    public boolean isAboutTheSame(SeenState other) {
        return pictureId.equals(other.pictureId)
                && look.map(Look::utc).equals(other.look.map(Look::utc))
                && look.flatMap(Look::observer).equals(other.look.flatMap(Look::observer))
                && planetId.equals(other.planetId)
                && moonId.equals(other.moonId)
                && phenomenon.equals(other.phenomenon);
    }

    /** Whether it says something that current words, none of them taken back, do not say. */
    boolean addsTo(List<SeenState> current) {
        Optional<SeenState> same = current.stream().filter(this::isAboutTheSame).findFirst();
        return isOpen()
                ? same.isPresent()
                : same.map(s -> !s.state.equals(state) || !s.look.equals(look)).orElse(true);
    }

    /** What the history is about. */
    String subject() {
        return pictureId
                .map(id -> "picture " + id)
                .orElseGet(() -> "look " + look.orElseThrow().utc());
    }

    /** For the history. */
    String sentence() {
        return moonId + ", " + phenomenon.replace('_', ' ') + ": "
                + (isOpen() ? "taken back" : state.replace('_', ' '));
    }
}
