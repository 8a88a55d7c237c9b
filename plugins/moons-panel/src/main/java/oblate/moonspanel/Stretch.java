/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.time.LocalDate;
import java.util.Optional;
import oblate.archive.Site;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;
import oblate.workbench.words.Texts;

/** How much time is looked at. */
enum Stretch {
    NIGHT("stretch.night", 1),
    WEEK("stretch.week", 7),
    MONTH("stretch.month", 30);

    private static final Texts TEXTS = Texts.of(Stretch.class);

    private static final double DAY_S = 86_400;
    private static final double DEG_PER_DAY = 360;
    private final String key;
    private final int days;

    Stretch(String key, int days) {
        this.key = key;
        this.days = days;
    }

    /** What a person reads. */
    @Override
    public String toString() {
        return TEXTS.text(key);
    }

    /** Length (days). */
    int days() {
        return days;
    }

    /** From the noon of an evening's date, by the mean Sun of the site (of Greenwich without one), for so many days. */
    TimeSpan from(LocalDate evening, Optional<Site> site) {
        UtcTime noon = new UtcTime(evening.toEpochDay(), DAY_S / 2).plusClockSeconds(-aheadS(site));
        return new TimeSpan(noon, noon.plusClockSeconds(days * DAY_S));
    }

    /** The date of the evening of the night that an instant is in. */
    static LocalDate eveningOf(UtcTime time, Optional<Site> site) {
        return LocalDate.ofEpochDay(
                time.plusClockSeconds(aheadS(site) - DAY_S / 2).epochDay());
    }

    private static double aheadS(Optional<Site> site) {
        return site.map(s -> Math.IEEEremainder(s.lonDeg(), DEG_PER_DAY) / DEG_PER_DAY * DAY_S)
                .orElse(0.0);
    }
}
