/* SPDX-License-Identifier: Apache-2.0 */
package oblate.archive;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Parts text into the words that are searched: letters and digits, lower case, without accents. The same for both kinds of catalog. */
final class Words {
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");
    private static final Pattern ACCENT = Pattern.compile("\\p{M}+");

    private Words() {}

    static List<String> of(String text) {
        String plain =
                ACCENT.matcher(Normalizer.normalize(text, Normalizer.Form.NFKD)).replaceAll("");
        Matcher matcher = WORD.matcher(plain.toLowerCase(Locale.ROOT));
        List<String> words = new ArrayList<>();
        while (matcher.find()) {
            words.add(matcher.group());
        }
        return words;
    }

    static String joined(String text) {
        return String.join(" ", of(text));
    }
}
