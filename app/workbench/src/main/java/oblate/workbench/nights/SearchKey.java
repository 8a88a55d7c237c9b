/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a search can ask for by name, as {@code kit:"long tube"}. */
enum SearchKey {
    PLANET("planet", "which planet"),
    NIGHT("night", "a date, a month, a year, or from..to"),
    STATE("state", "new, fitted, measured, reported, look"),
    FILTER("filter", "words of the filter"),
    KIT("kit", "name of the kit"),
    SITE("site", "name of the site"),
    OBSERVER("observer", "who observed"),
    CM("cm", "central meridian from..to (deg), in the system chosen");

    private final String word;
    private final String hint;

    SearchKey(String word, String hint) {
        this.word = word;
        this.hint = hint;
    }

    /** As typed, without the colon. */
    String word() {
        return word;
    }

    /** What follows it, a few words. */
    String hint() {
        return hint;
    }

    static Optional<SearchKey> of(String typed) {
        String lower = typed.toLowerCase(Locale.ROOT);
        return Arrays.stream(values()).filter(k -> k.word.equals(lower)).findFirst();
    }
}
