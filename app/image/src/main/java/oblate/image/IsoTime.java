/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;

/**
 * One time as found in a text, in the forms ISO 8601 gives to calendar date and time of day.
 *
 * @param text the text it was read from
 * @param at where it begins in the text searched
 * @param clock the clock reading; a second numbered 60 is the first of the next minute here, and {@code leapSecond} is set
 * @param offset its zone; empty when there is none
 * @param precisionS half the last digit given (s)
 * @param leapSecond whether the second is numbered 60
 * @param fault why it is no time of any day, as part of a sentence; then {@code clock} means nothing
 * @param remark what else should be said of it, one sentence
 */
record IsoTime(
        String text,
        int at,
        LocalDateTime clock,
        Optional<ZoneOffset> offset,
        double precisionS,
        boolean leapSecond,
        Optional<String> fault,
        Optional<String> remark) {

    int end() {
        return at + text.length();
    }
}
