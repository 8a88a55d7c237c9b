/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Says a night by its two dates, as the trade does: evening and morning. */
public final class NightName {
    private static final DateTimeFormatter FULL = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter NO_YEAR = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);

    private NightName() {}

    /** E.g. {@code 24/25 March 2031}, {@code 31 March / 1 April 2031}, {@code 31 December 2030 / 1 January 2031}. */
    public static String of(LocalDate evening) {
        LocalDate morning = evening.plusDays(1);
        if (evening.getMonth() == morning.getMonth()) {
            return evening.getDayOfMonth() + "/" + FULL.format(morning);
        }
        DateTimeFormatter first = evening.getYear() == morning.getYear() ? NO_YEAR : FULL;
        return first.format(evening) + " / " + FULL.format(morning);
    }
}
