/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.timeline;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import oblate.sky.TimeSpan;
import oblate.sky.UtcTime;

/**
 * Time from left to right, in UTC. Immutable.
 *
 * @param span what is shown; longer than nothing
 * @param leftPx where it begins (px)
 * @param rightPx where it ends (px), right of the beginning
 */
public record TimeAxis(TimeSpan span, double leftPx, double rightPx) {
    private static final int DAY_S = 86_400;
    private static final int MANY_DAYS_S = 129_600;
    private static final int[] STEPS_S = {
        60, 300, 600, 1_800, 3_600, 7_200, 10_800, 21_600, 43_200, DAY_S, 2 * DAY_S, 5 * DAY_S, 10 * DAY_S
    };
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

    /**
     * Checks that there is room and time.
     *
     * @throws IllegalArgumentException when there is not
     */
    public TimeAxis {
        if (!(rightPx > leftPx && span.clockSeconds() > 0)) {
            throw new IllegalArgumentException(span + " from " + leftPx + " to " + rightPx + " px");
        }
    }

    /**
     * A labelled time.
     *
     * @param time when
     * @param xPx where (px)
     * @param label "21:00"; the day at midnights of a span of several
     */
    public record Tick(UtcTime time, double xPx, String label) {}

    /** Where a time lies (px); also beyond the ends. */
    public double x(UtcTime time) {
        return leftPx + px(time.clockSecondsSince(span.from()));
    }

    /** Which time lies at a place (px), kept within the span. */
    public UtcTime at(double xPx) {
        double share = Math.max(0, Math.min(1, (xPx - leftPx) / (rightPx - leftPx)));
        return span.from().plusClockSeconds(share * span.clockSeconds());
    }

    /** Length of a stretch of time (px). */
    public double px(double seconds) {
        return seconds / span.clockSeconds() * (rightPx - leftPx);
    }

    /** Round times at least so far apart (px), all at the same step, within the span. */
    public List<Tick> ticks(double leastGapPx) {
        int step = STEPS_S[STEPS_S.length - 1];
        for (int i = STEPS_S.length - 1; i >= 0 && px(STEPS_S[i]) >= leastGapPx; i--) {
            step = STEPS_S[i];
        }
        UtcTime midnight = new UtcTime(span.from().epochDay(), 0);
        long first = (long) Math.ceil(span.from().clockSecondsSince(midnight) / step);
        List<Tick> ticks = new ArrayList<>();
        for (long i = first; ; i++) {
            UtcTime time = midnight.plusClockSeconds((double) i * step);
            if (time.compareTo(span.to()) > 0) {
                return ticks;
            }
            boolean ofDay = step >= DAY_S || span.clockSeconds() > MANY_DAYS_S && time.secondOfDay() == 0;
            ticks.add(new Tick(time, x(time), ofDay ? day(time) : time.iso(0).substring(11, 16)));
        }
    }

    private static String day(UtcTime time) {
        return DAY.format(LocalDate.ofEpochDay(time.epochDay()));
    }
}
