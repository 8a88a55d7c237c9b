/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.Locale;
import java.util.Optional;
import oblate.report.ChartContent;

/** A kind of chart of {@code oblate chart}: collects what it shows. One that needs options of its own has them as a mixin of the command. */
interface ChartKind {
    /** Its word behind {@code --kind}. */
    String word();

    /**
     * What it shows; empty when there is nothing, which has been said then.
     *
     * @throws UsageException when options do not fit
     */
    Optional<ChartContent> content();

    /** Height of the chart where none is asked for (px), when it is so wide. */
    default int usualHeightPx(ChartContent content, int widthPx) {
        return 800;
    }

    /** One of some words, told with all of them when it is none. */
    static <E extends Enum<E>> E choice(String option, String word, E[] known) {
        StringBuilder words = new StringBuilder();
        for (E each : known) {
            if (each.name().equalsIgnoreCase(word)) {
                return each;
            }
            words.append(words.length() == 0 ? "" : ", ").append(each.name().toLowerCase(Locale.ROOT));
        }
        throw new UsageException(option + " \"" + word + "\" is not known; choose one of " + words);
    }
}
