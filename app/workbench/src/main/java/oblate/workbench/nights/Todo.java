/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.util.List;

/**
 * Something in the archive that wants a person's look. Immutable.
 *
 * @param kind what is the matter
 * @param pictures the pictures it concerns, at least one
 * @param title which pictures, a few words
 * @param sentence what is wrong
 */
record Todo(Kind kind, List<Long> pictures, String title, String sentence) {
    /** What can be the matter, the gravest first: a wrong time spoils every longitude. */
    enum Kind {
        TIME_CONFLICT("times that disagree", "time that disagrees"),
        CLOCK("clocks the moons contradict", "clock the moons contradict"),
        UNDATED("pictures without a time", "picture without a time"),
        NO_PLANET("pictures without a planet", "picture without a planet"),
        DOUBTFUL_FIT("doubtful fits", "doubtful fit"),
        UNNAMED_MARKS("pictures with marks without a name", "picture with marks without a name"),
        NO_SITE("nights without a site", "night without a site"),
        NO_OBSERVER("nights without an observer", "night without an observer");

        private final String many;
        private final String one;

        Kind(String many, String one) {
            this.many = many;
            this.one = one;
        }

        /** How many of it, in words. */
        String count(long number) {
            return number + " " + (number == 1 ? one : many);
        }

        /** Its name as a heading. */
        String heading() {
            return many.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + many.substring(1);
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
