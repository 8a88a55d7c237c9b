/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift.timing;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import oblate.base.ProblemException;

/** What a person saw of a moon or shadow in one picture. */
public enum MoonState {
    /** The whole moon clear of the planet's edge; of an eclipse: at full light. */
    CLEAR,
    /** Partly over the edge; of an eclipse: fading. */
    ON_LIMB,
    /** Wholly on the disc. */
    ON_DISC,
    /** Nothing of the moon to be seen. */
    GONE,
    /** The shadow, or some of the moon, to be seen. */
    SEEN,
    /** No shadow to be seen. */
    NOT_SEEN;

    /** Which side of a moment of an event a state lies on, and whether the eye's threshold blurs that. */
    enum Side {
        OUTSIDE,
        INSIDE,
        OUTSIDE_ROUGHLY,
        INSIDE_ROUGHLY,
        UNKNOWN;

        boolean outside() {
            return this == OUTSIDE || this == OUTSIDE_ROUGHLY;
        }

        boolean inside() {
            return this == INSIDE || this == INSIDE_ROUGHLY;
        }

        boolean rough() {
            return this == OUTSIDE_ROUGHLY || this == INSIDE_ROUGHLY;
        }
    }

    /** The three edges of a beginning or an end: outer touch, centre, inner touch. */
    enum Edge {
        OUTER,
        CENTRE,
        INNER
    }

    /** Lower-case word as tables have it. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The states that can be seen about a phenomenon, from outside in. */
    public static List<MoonState> about(Phenomenon phenomenon) {
        return switch (phenomenon) {
            case TRANSIT -> List.of(CLEAR, ON_LIMB, ON_DISC);
            case SHADOW_TRANSIT -> List.of(NOT_SEEN, ON_LIMB, SEEN, ON_DISC);
            case OCCULTATION, ECLIPSE -> List.of(CLEAR, ON_LIMB, SEEN, GONE);
            case BESIDE -> List.of();
        };
    }

    boolean belongsTo(Phenomenon phenomenon) {
        return about(phenomenon).contains(this);
    }

    Side side(Phenomenon phenomenon, Edge edge) {
        return switch (this) {
            case CLEAR -> Side.OUTSIDE;
            case ON_LIMB ->
                switch (edge) {
                    case OUTER -> Side.INSIDE;
                    case CENTRE -> Side.UNKNOWN;
                    case INNER -> Side.OUTSIDE;
                };
            case ON_DISC -> Side.INSIDE;
            // A shadow's first sliver and a moon's last glimmer escape the eye.
            case NOT_SEEN ->
                edge == Edge.CENTRE ? Side.OUTSIDE_ROUGHLY : edge == Edge.INNER ? Side.OUTSIDE : Side.UNKNOWN;
            case GONE ->
                phenomenon == Phenomenon.OCCULTATION
                        ? Side.INSIDE
                        : edge == Edge.CENTRE ? Side.INSIDE_ROUGHLY : edge == Edge.OUTER ? Side.INSIDE : Side.UNKNOWN;
            case SEEN -> seen(phenomenon, edge);
        };
    }

    private static Side seen(Phenomenon phenomenon, Edge edge) {
        if (phenomenon == Phenomenon.SHADOW_TRANSIT) {
            return edge == Edge.OUTER ? Side.INSIDE : edge == Edge.CENTRE ? Side.INSIDE_ROUGHLY : Side.UNKNOWN;
        }
        if (phenomenon == Phenomenon.ECLIPSE && edge == Edge.CENTRE) {
            return Side.OUTSIDE_ROUGHLY;
        }
        return edge == Edge.INNER ? Side.OUTSIDE : Side.UNKNOWN;
    }

    /**
     * The state a person names for a phenomenon.
     *
     * @param place what to name in a refusal: file and row
     * @throws ProblemException {@link TimingProblem#NO_SUCH_STATE}
     */
    public static MoonState named(String word, Phenomenon phenomenon, String place) {
        return of(word).filter(s -> s.belongsTo(phenomenon))
                .orElseThrow(() -> new ProblemException(
                        TimingProblem.NO_SUCH_STATE,
                        place,
                        word,
                        phenomenon == Phenomenon.ECLIPSE || phenomenon == Phenomenon.OCCULTATION
                                ? "an " + phenomenon.words()
                                : "a " + phenomenon.words(),
                        known(phenomenon)));
    }

    /** The state a word means; empty for other words. */
    static Optional<MoonState> of(String word) {
        String id = word.strip().toLowerCase(Locale.ROOT).replaceAll("[ -]+", "_");
        return Arrays.stream(values()).filter(s -> s.id().equals(id)).findFirst();
    }

    private static String known(Phenomenon phenomenon) {
        return about(phenomenon).stream().map(MoonState::id).collect(Collectors.joining(", "));
    }
}
