/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Offers the nearest known word for an unknown one. */
final class Nearest {

    private Nearest() {}

    /** "did you mean X? Known: …", or only the list when nothing is near. */
    static String hint(String word, List<String> known) {
        String list = "known: " + String.join(", ", known);
        String lower = word.toLowerCase(Locale.ROOT);
        return known.stream()
                .min(Comparator.comparingInt(k -> distance(lower, k.toLowerCase(Locale.ROOT))))
                .filter(k -> distance(lower, k.toLowerCase(Locale.ROOT)) <= Math.max(2, k.length() / 3))
                .map(k -> "did you mean " + k + "? " + list)
                .orElse(list);
    }

    /** Levenshtein distance. */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substituted = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(substituted, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
