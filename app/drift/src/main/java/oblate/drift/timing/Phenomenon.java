/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import oblate.base.ProblemException;
import oblate.sky.event.EventKind;

/** What a moon or its shadow was doing when it was timed. */
public enum Phenomenon {
    /** The moon before the disc. */
    TRANSIT,
    /** Its shadow on the disc. */
    SHADOW_TRANSIT,
    /** The moon behind the disc. */
    OCCULTATION,
    /** The moon in the planet's shadow. */
    ECLIPSE,
    /** The moon beside the disc, away from any of these: its place alone was timed. */
    BESIDE;

    /** Lower-case word as tables have it. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** As a person reads it. */
    public String words() {
        return this == BESIDE ? "beside the disc" : id().replace('_', ' ');
    }

    /** The kind of event it is; empty beside the disc. */
    public Optional<EventKind> kind() {
        return this == BESIDE ? Optional.empty() : Optional.of(EventKind.valueOf(name()));
    }

    static Phenomenon of(EventKind kind) {
        return valueOf(kind.name());
    }

    /**
     * The phenomenon a person names.
     *
     * @param place what to name in a refusal: file and row
     * @throws ProblemException {@link TimingProblem#NO_SUCH_PHENOMENON}
     */
    public static Phenomenon named(String word, String place) {
        return known(word).orElseThrow(() -> new ProblemException(TimingProblem.NO_SUCH_PHENOMENON, place, word));
    }

    /** The phenomenon a word means; empty for other words. */
    static Optional<Phenomenon> known(String word) {
        String id = word.strip().toLowerCase(Locale.ROOT).replaceAll("[ -]+", "_");
        return Arrays.stream(values())
                .filter(p -> p != BESIDE)
                .filter(p -> p.id().equals(id) || p == SHADOW_TRANSIT && id.equals("shadow"))
                .findFirst();
    }
}
