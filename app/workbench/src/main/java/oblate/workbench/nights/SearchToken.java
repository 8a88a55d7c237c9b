/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One part of a search as typed: a word, or a key with its value.
 *
 * @param text as typed
 * @param start where it begins in what was typed
 * @param key what it asks for; empty for a word
 * @param value what is to be found, without quotes
 * @param not whether it is to be absent
 */
record SearchToken(String text, int start, Optional<SearchKey> key, String value, boolean not) {

    /** Where it ends in what was typed. */
    int end() {
        return start + text.length();
    }

    /** Parts are separated by blanks, except within double quotes; an unknown key makes a plain word. */
    static List<SearchToken> all(String typed) {
        List<SearchToken> tokens = new ArrayList<>();
        int i = 0;
        while (i < typed.length()) {
            if (Character.isWhitespace(typed.charAt(i))) {
                i++;
                continue;
            }
            int start = i;
            boolean quoted = false;
            while (i < typed.length() && (quoted || !Character.isWhitespace(typed.charAt(i)))) {
                quoted ^= typed.charAt(i) == '"';
                i++;
            }
            tokens.add(of(typed.substring(start, i), start));
        }
        return List.copyOf(tokens);
    }

    private static SearchToken of(String text, int start) {
        boolean not = text.length() > 1 && text.charAt(0) == '-';
        String body = not ? text.substring(1) : text;
        int colon = body.indexOf(':');
        Optional<SearchKey> key = colon > 0 ? SearchKey.of(body.substring(0, colon)) : Optional.empty();
        // A word that begins with a hyphen is a word: only keys can be negated, since words are looked up in the
        // catalog.
        if (key.isEmpty()) {
            return new SearchToken(text, start, key, text.replace("\"", "").strip(), false);
        }
        return new SearchToken(
                text, start, key, body.substring(colon + 1).replace("\"", "").strip(), not);
    }

    /** A key and value as they are to be typed: quoted when there are blanks in the value. */
    static String typed(SearchKey key, String value) {
        boolean quotes = value.chars().anyMatch(Character::isWhitespace);
        String clean = value.replace("\"", "");
        return key.word() + ":" + (quotes ? "\"" + clean + "\"" : clean);
    }
}
