/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import oblate.archive.ArchivedPicture;
import oblate.sky.PlanetModel;
import oblate.workbench.look.StateGlyph.State;
import oblate.workbench.words.Texts;

/**
 * What a search asks for, understood. Immutable.
 *
 * @param words plain words, looked up in the catalog
 * @param conditions the rest, each with its text
 * @param problem a sentence about a part that was not understood; such a part asks for nothing
 */
record PictureQuery(String words, List<Condition> conditions, Optional<String> problem) {
    private static final Texts TEXTS = Texts.of(PictureQuery.class);
    private static final Pattern RANGE =
            Pattern.compile("(-?\\d{1,3}(?:\\.\\d+)?)(?:\\.\\.|-)(-?\\d{1,3}(?:\\.\\d+)?)");
    private static final Pattern DATES = Pattern.compile("(\\d{4}(?:-\\d{2}){0,2})(?:\\.\\.(\\d{4}(?:-\\d{2}){0,2}))?");

    /** One condition and what was typed for it. */
    record Condition(String text, Predicate<ArchivedPicture> holds) {}

    /**
     * What a query must know beyond a picture's own facts.
     *
     * @param meridianDeg central meridian in the chosen system (deg)
     * @param state how far it has come
     * @param planetLabel name of the planet of an id
     */
    record Lookup(
            Function<ArchivedPicture, Optional<Double>> meridianDeg,
            Function<ArchivedPicture, State> state,
            Function<String, String> planetLabel) {

        static Lookup of(SystemChoice systems, Function<ArchivedPicture, State> state) {
            return new Lookup(systems::meridianDeg, state, id -> systems.planet(Optional.of(id))
                    .map(PlanetModel::label)
                    .orElse(id));
        }
    }

    /** Understands what was typed. */
    static PictureQuery of(String typed, Lookup lookup) {
        List<SearchToken> tokens = SearchToken.all(typed);
        String words = tokens.stream()
                .filter(t -> t.key().isEmpty())
                .map(SearchToken::value)
                .collect(Collectors.joining(" "));
        List<Condition> conditions = new ArrayList<>();
        Optional<String> problem = Optional.empty();
        for (SearchToken token : tokens) {
            // A key whose value is still to be typed asks for nothing yet.
            if (token.key().isEmpty() || token.value().isEmpty()) {
                continue;
            }
            Optional<Predicate<ArchivedPicture>> holds = condition(token.key().get(), token.value(), lookup);
            if (holds.isEmpty()) {
                problem = Optional.of(TEXTS.text(
                        "search.not.understood",
                        token.text(),
                        token.key().get().word(),
                        token.key().get().hint()));
            } else {
                conditions.add(
                        new Condition(token.text(), token.not() ? holds.get().negate() : holds.get()));
            }
        }
        return new PictureQuery(words, List.copyOf(conditions), problem);
    }

    private static Optional<Predicate<ArchivedPicture>> condition(SearchKey key, String value, Lookup lookup) {
        return switch (key) {
            case PLANET ->
                Optional.of(p -> p.planetId()
                        .filter(id -> has(Optional.of(id), value)
                                || has(Optional.of(lookup.planetLabel().apply(id)), value))
                        .isPresent());
            case NIGHT -> night(value);
            case STATE -> state(value, lookup);
            case FILTER -> Optional.of(p -> has(p.filter(), value));
            case KIT -> Optional.of(p -> has(p.kit(), value));
            case SITE -> Optional.of(p -> has(p.site(), value));
            case OBSERVER -> Optional.of(p -> has(p.observer(), value));
            case CM -> meridian(value, lookup);
        };
    }

    private static boolean has(Optional<String> text, String part) {
        return text.filter(t -> t.toLowerCase(Locale.ROOT).contains(part.toLowerCase(Locale.ROOT)))
                .isPresent();
    }

    /** Dates as text compare as dates do; a month or a year stands for all of its days. */
    private static Optional<Predicate<ArchivedPicture>> night(String value) {
        Matcher m = DATES.matcher(value);
        if (!m.matches()) {
            return Optional.empty();
        }
        String from = m.group(1);
        String to = m.group(2) == null ? from : m.group(2);
        return Optional.of(p -> p.night()
                .map(Object::toString)
                .filter(n -> n.compareTo(from) >= 0 && (n.compareTo(to) <= 0 || n.startsWith(to)))
                .isPresent());
    }

    private static Optional<Predicate<ArchivedPicture>> state(String value, Lookup lookup) {
        String wanted = value.toLowerCase(Locale.ROOT);
        for (State state : State.values()) {
            if (state.word().equals(wanted) || word(state).equals(wanted)) {
                return Optional.of(p -> lookup.state().apply(p) == state);
            }
        }
        return Optional.empty();
    }

    /** A state in one word, as it is typed. */
    static String word(State state) {
        return state == State.NEEDS_A_LOOK ? "look" : state.name().toLowerCase(Locale.ROOT);
    }

    private static Optional<Predicate<ArchivedPicture>> meridian(String value, Lookup lookup) {
        Matcher m = RANGE.matcher(value.replace("°", ""));
        if (!m.matches()) {
            return Optional.empty();
        }
        double from = turn(Double.parseDouble(m.group(1)));
        double span = turn(Double.parseDouble(m.group(2)) - from);
        return Optional.of(p -> lookup.meridianDeg()
                .apply(p)
                .filter(cm -> turn(cm - from) <= span)
                .isPresent());
    }

    private static double turn(double deg) {
        return (deg % 360 + 360) % 360;
    }

    boolean isEmpty() {
        return words.isEmpty() && conditions.isEmpty();
    }

    /** Pictures that meet all conditions; words are not looked at here. */
    List<ArchivedPicture> among(List<ArchivedPicture> pictures) {
        return pictures.stream()
                .filter(p -> conditions.stream().allMatch(c -> c.holds().test(p)))
                .toList();
    }

    /** When nothing is found: the one condition without which most would be, in a sentence. */
    String wayOut(List<ArchivedPicture> withWords) {
        String best = "";
        long most = 0;
        for (Condition left : conditions) {
            long count = withWords.stream()
                    .filter(p -> conditions.stream()
                            .allMatch(c -> c == left || c.holds().test(p)))
                    .count();
            if (count > most) {
                most = count;
                best = left.text();
            }
        }
        return most == 0 ? "" : TEXTS.counted("search.without", most, best) + " ";
    }
}
