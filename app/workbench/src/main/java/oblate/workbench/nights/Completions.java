/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import oblate.archive.ArchivedPicture;
import oblate.workbench.look.NightName;
import oblate.workbench.look.StateGlyph.State;
import oblate.workbench.words.Texts;

/** What a search could go on with, from what the archive holds. Immutable. */
final class Completions {
    private static final Texts TEXTS = Texts.of(Completions.class);
    private static final int MOST = 10;
    private final Map<SearchKey, Map<String, Integer>> counts;

    /**
     * One way to go on.
     *
     * @param text what would stand for the part being typed
     * @param hint what that is, and how many pictures have it
     * @param goesOn whether a value is still to be typed
     */
    record Completion(String text, String hint, boolean goesOn) {}

    private Completions(Map<SearchKey, Map<String, Integer>> counts) {
        this.counts = counts;
    }

    static Completions of(List<ArchivedPicture> pictures, PictureQuery.Lookup lookup) {
        Map<SearchKey, Map<String, Integer>> counts = new EnumMap<>(SearchKey.class);
        for (SearchKey key : SearchKey.values()) {
            counts.put(key, new TreeMap<>());
        }
        for (ArchivedPicture p : pictures) {
            count(counts, SearchKey.PLANET, p.planetId().map(lookup.planetLabel()));
            count(counts, SearchKey.NIGHT, p.night().map(Object::toString));
            count(
                    counts,
                    SearchKey.STATE,
                    Optional.of(PictureQuery.word(lookup.state().apply(p))));
            count(counts, SearchKey.FILTER, p.filter());
            count(counts, SearchKey.KIT, p.kit());
            count(counts, SearchKey.SITE, p.site());
            count(counts, SearchKey.OBSERVER, p.observer());
        }
        return new Completions(counts);
    }

    private static void count(Map<SearchKey, Map<String, Integer>> counts, SearchKey key, Optional<String> value) {
        value.ifPresent(v -> counts.get(key).merge(v, 1, Integer::sum));
    }

    /** Ways to go on at a place in what was typed: values of its key, or keys and values that begin with the word; at most ten. */
    List<Completion> at(String typed, int caret) {
        Optional<SearchToken> token = tokenAt(typed, caret);
        String body = token.map(t -> t.not() ? t.text().substring(1) : t.text()).orElse("");
        if (token.isPresent() && token.get().key().isPresent()) {
            SearchKey key = token.get().key().get();
            List<Completion> found = values(key, token.get().value());
            if (key == SearchKey.CM && found.isEmpty() && token.get().value().isEmpty()) {
                return List.of(
                        new Completion("cm:200..260", TEXTS.text("search.example"), false),
                        new Completion("cm:340..20", TEXTS.text("search.example.across"), false));
            }
            return found.stream()
                    .filter(c -> !c.text().equals(body))
                    .limit(MOST)
                    .toList();
        }
        List<Completion> found = new ArrayList<>();
        for (SearchKey key : SearchKey.values()) {
            if (key.word().startsWith(body.toLowerCase(Locale.ROOT))) {
                found.add(new Completion(key.word() + ":", key.hint(), true));
            }
        }
        if (!body.isEmpty()) {
            for (SearchKey key : SearchKey.values()) {
                found.addAll(values(key, body.replace("\"", "")));
            }
        }
        return found.stream().limit(MOST).toList();
    }

    private List<Completion> values(SearchKey key, String part) {
        String lower = part.toLowerCase(Locale.ROOT);
        return counts.get(key).entrySet().stream()
                .filter(e -> e.getKey().toLowerCase(Locale.ROOT).contains(lower))
                .sorted(Comparator.comparing((Map.Entry<String, Integer> e) ->
                                !e.getKey().toLowerCase(Locale.ROOT).startsWith(lower))
                        .thenComparing(order(key)))
                .map(e -> new Completion(SearchToken.typed(key, e.getKey()), hint(key, e), false))
                .toList();
    }

    /** Nights: the newest first; the rest: what is most frequent. */
    private static Comparator<Map.Entry<String, Integer>> order(SearchKey key) {
        return key == SearchKey.NIGHT
                ? Map.Entry.<String, Integer>comparingByKey().reversed()
                : Map.Entry.<String, Integer>comparingByValue().reversed();
    }

    private static String hint(SearchKey key, Map.Entry<String, Integer> value) {
        String count = TEXTS.counted("found.pictures", value.getValue());
        if (key == SearchKey.NIGHT) {
            return NightName.of(java.time.LocalDate.parse(value.getKey())) + ", " + count;
        }
        boolean look = key == SearchKey.STATE && value.getKey().equals(PictureQuery.word(State.NEEDS_A_LOOK));
        return look ? TEXTS.text("search.look", count) : count;
    }

    /** What is typed after a completion was taken. */
    static String taken(String typed, int caret, Completion completion) {
        Optional<SearchToken> token = tokenAt(typed, caret);
        String not = token.filter(SearchToken::not).isPresent() ? "-" : "";
        String before = token.map(t -> typed.substring(0, t.start())).orElse(typed.substring(0, caret));
        String after = token.map(t -> typed.substring(t.end())).orElse(typed.substring(caret));
        return before + not + completion.text() + (completion.goesOn() || after.startsWith(" ") ? "" : " ") + after;
    }

    private static Optional<SearchToken> tokenAt(String typed, int caret) {
        return SearchToken.all(typed).stream()
                .filter(t -> t.start() < caret && caret <= t.end())
                .findFirst();
    }
}
