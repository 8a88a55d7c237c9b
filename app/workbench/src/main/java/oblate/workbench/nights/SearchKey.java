/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import oblate.workbench.words.Texts;

/** What a search can ask for by name, as {@code kit:"long tube"}. */
enum SearchKey {
    PLANET("planet"),
    NIGHT("night"),
    STATE("state"),
    FILTER("filter"),
    KIT("kit"),
    SITE("site"),
    OBSERVER("observer"),
    CM("cm");

    private static final Texts TEXTS = Texts.of(SearchKey.class);

    private final String word;

    SearchKey(String word) {
        this.word = word;
    }

    /** As typed, without the colon. */
    String word() {
        return word;
    }

    /** What follows it, a few words. */
    String hint() {
        return TEXTS.word("search.hint", this);
    }

    static Optional<SearchKey> of(String typed) {
        String lower = typed.toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(k -> k.word.equals(lower)).findFirst();
    }
}
