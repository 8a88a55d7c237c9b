/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

/**
 * Time along the season ribbon: which instant is at which pixel. Immutable.
 *
 * @param fromS left edge (s since 1970, UTC)
 * @param toS right edge (s since 1970, UTC), after the left
 * @param widthPx width (px), positive
 */
record RibbonScale(double fromS, double toS, double widthPx) {
    private static final double DAY_S = 86_400;

    RibbonScale {
        if (!(toS > fromS) || !(widthPx > 0)) {
            throw new IllegalArgumentException(fromS + " " + toS + " " + widthPx);
        }
    }

    /** All of the instants with some room on both sides, at least ten days. */
    static RibbonScale covering(List<Instant> instants, double widthPx) {
        double first =
                instants.stream().mapToLong(Instant::getEpochSecond).min().orElse(0);
        double last = instants.stream().mapToLong(Instant::getEpochSecond).max().orElse(0);
        double room = Math.max(5 * DAY_S, (last - first) * 0.04);
        return new RibbonScale(first - room, last + room, widthPx);
    }

    double xPx(Instant time) {
        return xOfSeconds(time.getEpochSecond() + time.getNano() * 1e-9);
    }

    /** Where an instant is (px), given in seconds since 1970, UTC. */
    double xOfSeconds(double seconds) {
        return (seconds - fromS) / (toS - fromS) * widthPx;
    }

    double secondsAt(double xPx) {
        return fromS + xPx / widthPx * (toS - fromS);
    }

    Instant instantAt(double xPx) {
        return Instant.ofEpochMilli(Math.round(secondsAt(xPx) * 1000));
    }

    double spanDays() {
        return (toS - fromS) / DAY_S;
    }

    /** Zoomed about a pixel, which keeps its instant; between six hours and 60 years. */
    RibbonScale zoomedAt(double xPx, double factor) {
        double span = Math.min(60 * 365.25 * DAY_S, Math.max(0.25 * DAY_S, (toS - fromS) / factor));
        double at = secondsAt(xPx);
        double from = at - span * (xPx / widthPx);
        return new RibbonScale(from, from + span, widthPx);
    }

    /** Moved so that what was at {@code dxPx} is at 0. */
    RibbonScale movedBy(double dxPx) {
        double shift = dxPx / widthPx * (toS - fromS);
        return new RibbonScale(fromS + shift, toS + shift, widthPx);
    }

    RibbonScale resized(double newWidthPx) {
        return new RibbonScale(fromS, toS, newWidthPx);
    }

    /** A label on the time axis: where, and whether it names a day, a month or a year. */
    record Notch(LocalDate date, double xPx, Step step) {}

    /** How far apart notches are. */
    enum Step {
        DAY,
        WEEK,
        MONTH,
        YEAR
    }

    /** Notches so that neighbours are at least {@code roomPx} apart. */
    List<Notch> notches(double roomPx) {
        double pxPerDay = widthPx / spanDays();
        Step step = pxPerDay >= roomPx
                ? Step.DAY
                : pxPerDay * 7 >= roomPx ? Step.WEEK : pxPerDay * 28 >= roomPx ? Step.MONTH : Step.YEAR;
        LocalDate date = start(step);
        List<Notch> notches = new ArrayList<>();
        while (true) {
            double x = xPx(date.atStartOfDay(ZoneOffset.UTC).toInstant());
            if (x > widthPx) {
                return notches;
            }
            if (x >= 0
                    && (notches.isEmpty() || x - notches.get(notches.size() - 1).xPx() >= roomPx)) {
                notches.add(new Notch(date, x, step));
            }
            date = switch (step) {
                case DAY -> date.plusDays(1);
                case WEEK -> date.plusDays(7);
                case MONTH -> date.plusMonths(1);
                case YEAR -> date.plusYears(1);
            };
        }
    }

    private LocalDate start(Step step) {
        LocalDate first = LocalDate.ofEpochDay(Math.floorDiv((long) fromS, (long) DAY_S));
        return switch (step) {
            case DAY -> first;
            case WEEK -> first.with(java.time.temporal.TemporalAdjusters.previousOrSame(java.time.DayOfWeek.MONDAY));
            case MONTH -> first.withDayOfMonth(1);
            case YEAR -> first.withDayOfYear(1);
        };
    }
}
