/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import oblate.workbench.Selection;
import oblate.workbench.Shelf;
import oblate.workbench.words.Texts;

/**
 * What is said of a search that was done.
 *
 * @param shelf all pictures
 * @param span the stretch of time that is shown; empty for all
 * @param text what is searched for; empty for all
 */
record FoundWords(Shelf shelf, Optional<Selection.Span> span, String text) {
    private static final Texts TEXTS = Texts.of(FoundWords.class);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    /** How many pictures were found, in how many nights. */
    String count(int pictures, int nights) {
        int total = shelf.pictures().size();
        if (pictures == 0) {
            return shelf.isRead() || total > 0 ? TEXTS.text("found.nothing") : "";
        }
        String ofThem = pictures == total
                ? TEXTS.counted("found.pictures", total)
                : TEXTS.text("found.some", Integer.toString(pictures), Integer.toString(total));
        return TEXTS.text("found.in", ofThem, TEXTS.counted("found.nights", nights));
    }

    /** A stretch of time. */
    static String stretch(Selection.Span span) {
        return day(span.from()) + " – " + day(span.to());
    }

    private static String day(Instant time) {
        return DAY.format(time.atOffset(ZoneOffset.UTC));
    }

    /** What is said instead of pictures. */
    String nothing() {
        if (!shelf.isRead()) {
            return TEXTS.text("reading");
        }
        if (shelf.pictures().isEmpty()) {
            return TEXTS.text("none.yet");
        }
        if (span.isEmpty()) {
            return text.isEmpty() ? TEXTS.text("none") : TEXTS.text("none.for", text);
        }
        String from = day(span.get().from());
        String to = day(span.get().to());
        return text.isEmpty() ? TEXTS.text("none.between", from, to) : TEXTS.text("none.for.between", text, from, to);
    }

    /** How to see pictures again; empty when there is no way. */
    String wayBack() {
        if (!shelf.isRead() || shelf.pictures().isEmpty()) {
            return shelf.isRead() ? TEXTS.text("none.yet.way") : "";
        }
        return span.isPresent() || !text.isEmpty() ? TEXTS.text("none.way") : "";
    }
}
