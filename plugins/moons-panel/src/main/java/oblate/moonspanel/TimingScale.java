/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import oblate.drift.timing.Timing;

/**
 * Where timings lie in their plot: nights to the right, O−P upward. Those of one night stand side by side.
 *
 * @param places those shown, each with a time
 * @param inside the room within the axes (px)
 * @param firstDay left end (days from 1970)
 * @param lastDay right end
 * @param lowS lower end (s)
 * @param highS upper end (s)
 */
record TimingScale(List<Timed> places, Rectangle2D inside, double firstDay, double lastDay, double lowS, double highS) {
    private static final int LEFT_PX = 52;
    private static final int RIGHT_PX = 16;
    private static final int TOP_PX = 24;
    private static final int FOOT_PX = 22;
    private static final double STEP_PX = 11;
    private static final double LEAST_ROOM_S = 4;
    private static final int DATE_GAP_PX = 84;
    private static final int SECONDS_GAP_PX = 26;
    private static final int[] DAY_STEPS = {1, 2, 7, 14, 30, 61, 122, 365, 730, 1826, 3652};

    /** A timing and its place among those of its night. */
    record Timed(Timing timing, double offsetPx) {}

    static TimingScale of(List<Timing> timings, int width, int height) {
        Rectangle2D inside = new Rectangle2D.Double(
                LEFT_PX, TOP_PX, Math.max(1, width - LEFT_PX - RIGHT_PX), Math.max(1, height - TOP_PX - FOOT_PX));
        double first =
                timings.stream().mapToLong(t -> t.night().toEpochDay()).min().orElseThrow();
        double last =
                timings.stream().mapToLong(t -> t.night().toEpochDay()).max().orElseThrow();
        double roomDays = Math.max(3, (last - first) * 0.05);
        List<Timing> sure = timings.stream().filter(t -> t.doubts().isEmpty()).toList();
        List<Timing> scaling = sure.isEmpty() ? timings : sure;
        double low = scaling.stream()
                .mapToDouble(t -> t.oMinusPS() - t.errors().totalS())
                .min()
                .orElseThrow();
        double high = scaling.stream()
                .mapToDouble(t -> t.oMinusPS() + t.errors().totalS())
                .max()
                .orElseThrow();
        double roomS = Math.max(LEAST_ROOM_S, (Math.max(high, 0) - Math.min(low, 0)) * 0.06);
        return new TimingScale(
                placed(timings),
                inside,
                first - roomDays,
                last + roomDays,
                Math.min(low, 0) - roomS,
                Math.max(high, 0) + roomS);
    }

    private static List<Timed> placed(List<Timing> timings) {
        Map<LocalDate, List<Timing>> nights = new LinkedHashMap<>();
        timings.forEach(
                t -> nights.computeIfAbsent(t.night(), n -> new ArrayList<>()).add(t));
        List<Timed> placed = new ArrayList<>();
        for (List<Timing> night : nights.values()) {
            for (int i = 0; i < night.size(); i++) {
                placed.add(new Timed(night.get(i), (i - (night.size() - 1) / 2.0) * STEP_PX));
            }
        }
        return List.copyOf(placed);
    }

    double x(LocalDate night) {
        return inside.getMinX() + (night.toEpochDay() - firstDay) / (lastDay - firstDay) * inside.getWidth();
    }

    double x(Timed timed) {
        return x(timed.timing().night()) + timed.offsetPx();
    }

    double y(Timed timed) {
        return y(timed.timing().oMinusPS());
    }

    double y(double seconds) {
        return inside.getMaxY() - (seconds - lowS) / (highS - lowS) * inside.getHeight();
    }

    /** Half the width of what a night's points take up (px). */
    double halfWidthPx(LocalDate night) {
        long count =
                places.stream().filter(p -> p.timing().night().equals(night)).count();
        return count * STEP_PX / 2 + 1;
    }

    /** Round numbers of seconds, zero among them. */
    List<Double> secondTicks() {
        double least = (highS - lowS) * SECONDS_GAP_PX / inside.getHeight();
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        double step = least <= 2 * power ? 2 * power : least <= 5 * power ? 5 * power : 10 * power;
        step = Math.max(1, step);
        List<Double> ticks = new ArrayList<>();
        for (double s = Math.ceil(lowS / step) * step; s <= highS; s += step) {
            ticks.add(Math.rint(s / step) * step + 0.0);
        }
        return ticks;
    }

    /** Dates at handy steps: from half a month on, firsts of months. */
    List<LocalDate> dateTicks() {
        double leastDays = (lastDay - firstDay) * DATE_GAP_PX / inside.getWidth();
        int step = DAY_STEPS[DAY_STEPS.length - 1];
        for (int each : DAY_STEPS) {
            if (each >= leastDays) {
                step = each;
                break;
            }
        }
        List<LocalDate> ticks = new ArrayList<>();
        boolean months = step >= 30;
        LocalDate day = LocalDate.ofEpochDay((long) Math.ceil(firstDay));
        day = months ? day.plusMonths(1).withDayOfMonth(1) : day;
        while (day.toEpochDay() <= lastDay) {
            ticks.add(day);
            day = months ? day.plusMonths(Math.round(step / 30.44)) : day.plusDays(step);
        }
        return ticks;
    }

    String label(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH).format(day);
    }
}
