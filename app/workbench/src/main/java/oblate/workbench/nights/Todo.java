/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;
import oblate.workbench.words.Texts;

/**
 * Something in the archive that wants a person's look. Immutable.
 *
 * @param kind what is the matter
 * @param pictures the pictures it concerns, at least one
 * @param title which pictures, a few words
 * @param sentence what is wrong
 */
record Todo(Kind kind, List<Long> pictures, String title, String sentence) {
    private static final Texts TEXTS = Texts.of(Todo.class);
    /** What can be the matter, the gravest first: a wrong time spoils every longitude. */
    enum Kind {
        TIME_CONFLICT,
        CLOCK,
        UNDATED,
        NO_PLANET,
        DOUBTFUL_FIT,
        UNNAMED_MARKS,
        NO_SITE,
        NO_OBSERVER;

        /** How many of it, in words. */
        String count(long number) {
            return TEXTS.counted(Texts.key("todo.count", this), number);
        }

        /** Its name as a heading. */
        String heading() {
            return TEXTS.word("todo.heading", this);
        }
    }

    /** Copies the list. */
    Todo {
        pictures = List.copyOf(pictures);
    }

    /** The first picture it concerns. */
    long first() {
        return pictures.get(0);
    }
}
