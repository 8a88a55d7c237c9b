/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words that say which moment of a capture a time is. */
final class MeaningWords {
    private static final Pattern WORD = Pattern.compile(
            "\\b(?:(start|starts|started|starting|begin|begins|beginning|began)|(mid|middle|midtime|midpoint|centre|center|mean)"
                    + "|(end|ends|ended|ending|finish|finished|stop|stopped))\\b",
            Pattern.CASE_INSENSITIVE);

    private MeaningWords() {}

    /** What the only such word of a text says; unstated when there is none, or words of two kinds. */
    static TimeMeaning of(String text) {
        TimeMeaning meaning = TimeMeaning.UNSTATED;
        Matcher words = WORD.matcher(text);
        while (words.find()) {
            TimeMeaning said = said(words);
            if (meaning != TimeMeaning.UNSTATED && meaning != said) {
                return TimeMeaning.UNSTATED;
            }
            meaning = said;
        }
        return meaning;
    }

    /** What the word nearest to a place in a line says. */
    static TimeMeaning nearest(String line, int from, int to) {
        TimeMeaning meaning = TimeMeaning.UNSTATED;
        int least = Integer.MAX_VALUE;
        Matcher words = WORD.matcher(line);
        while (words.find()) {
            int distance = words.end() <= from ? from - words.end() : words.start() - to;
            // A word before the time belongs to it rather than one as near after it.
            int weight = words.end() <= from ? distance * 2 : distance * 2 + 1;
            if (distance >= 0 && weight < least) {
                least = weight;
                meaning = said(words);
            }
        }
        return meaning;
    }

    private static TimeMeaning said(Matcher words) {
        if (words.group(1) != null) {
            return TimeMeaning.START;
        }
        return words.group(2) != null ? TimeMeaning.MIDDLE : TimeMeaning.END;
    }
}
