/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.text.SimpleDateFormat;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.stream.LongStream;
import oblate.workbench.words.Texts;
import org.jfree.chart.axis.DateAxis;
import org.jfree.chart.axis.DateTickUnit;
import org.jfree.chart.axis.DateTickUnitType;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.ValueAxis;

/** Makes the axes of charts. Stateless. */
final class Axes {
    private static final Texts TEXTS = Texts.of(Axes.class);
    private static final double ROOM_MS = 2 * 86_400_000.0;
    private static final double LEAST_SPAN_DEG = 12;
    private static final int MOST_TICKS_DOWN = 15;
    private static final int MOST_TICKS_RIGHT = 9;
    private static final Map<DateTickUnitType, Double> MS = Map.of(
            DateTickUnitType.HOUR,
            3_600_000.0,
            DateTickUnitType.DAY,
            86_400_000.0,
            DateTickUnitType.MONTH,
            30.4 * 86_400_000.0,
            DateTickUnitType.YEAR,
            365.25 * 86_400_000.0);
    private static final List<DateTickUnit> STEPS = List.of(
            new DateTickUnit(DateTickUnitType.HOUR, 1),
            new DateTickUnit(DateTickUnitType.HOUR, 6),
            new DateTickUnit(DateTickUnitType.DAY, 1),
            new DateTickUnit(DateTickUnitType.DAY, 2),
            new DateTickUnit(DateTickUnitType.DAY, 7),
            new DateTickUnit(DateTickUnitType.DAY, 14),
            new DateTickUnit(DateTickUnitType.MONTH, 1),
            new DateTickUnit(DateTickUnitType.MONTH, 2),
            new DateTickUnit(DateTickUnitType.MONTH, 3),
            new DateTickUnit(DateTickUnitType.MONTH, 6),
            new DateTickUnit(DateTickUnitType.YEAR, 1));

    private Axes() {}

    /** Axis of dates over all dots of some tracks, and up to an instant. */
    static DateAxis dates(List<Track> tracks, Optional<Instant> until, boolean down, ChartWish wish) {
        long[] times = LongStream.concat(
                        tracks.stream().flatMap(t -> t.dots().stream()).mapToLong(d -> d.time()
                                .toEpochMilli()),
                        until.stream().mapToLong(Instant::toEpochMilli))
                .sorted()
                .toArray();
        double first = times.length == 0 ? 0 : times[0];
        double last = times.length == 0 ? 1 : times[times.length - 1];
        double room = Math.max(ROOM_MS, (last - first) * 0.05);
        return dates(first - room, last + (down ? 1.6 : 1) * room, down, wish);
    }

    /** Axis of dates from one instant to another (ms since 1970). */
    static DateAxis dates(double fromMs, double toMs, boolean down, ChartWish wish) {
        TimeZone utc = TimeZone.getTimeZone("UTC");
        DateAxis axis = new DateAxis(TEXTS.text("axis.dates"), utc, Locale.ENGLISH);
        axis.setInverted(down);
        axis.setRange(new Date((long) fromMs), new Date((long) toMs));
        tick(axis, down ? MOST_TICKS_DOWN : MOST_TICKS_RIGHT);
        style(axis, wish);
        return axis;
    }

    /** Sets steps of a handy size, about so many at most; to be called when the range or the room has changed. */
    static void tick(DateAxis axis, int most) {
        double days = axis.getRange().getLength() / 86_400_000;
        String pattern = days < most ? "d MMM HH:mm" : "d MMM yyyy";
        SimpleDateFormat format = new SimpleDateFormat(pattern, Locale.ENGLISH);
        format.setTimeZone(TimeZone.getTimeZone("UTC"));
        axis.setDateFormatOverride(format);
        for (DateTickUnit unit : STEPS) {
            if (days * 86_400_000 <= most * (double) MS.get(unit.getUnitType()) * unit.getMultiple()) {
                axis.setTickUnit(unit);
                return;
            }
        }
        axis.setTickUnit(new DateTickUnit(DateTickUnitType.YEAR, (int) Math.ceil(days / 366 / most)));
    }

    /** The whole circle of longitude. */
    static NumberAxis circle(ChartWish wish, boolean timeDown) {
        NumberAxis axis = new NumberAxis(TEXTS.text("axis.longitude", wish.system()));
        axis.setInverted(timeDown && wish.growsLeft());
        axis.setNumberFormatOverride(new DegreeFormat(true));
        axis.setRange(0, 360);
        axis.setTickUnit(new NumberTickUnit(30));
        style(axis, wish);
        return axis;
    }

    /** Makes the steps of the whole circle as wide as the room asks (px). */
    static void room(NumberAxis circle, double px) {
        circle.setTickUnit(new NumberTickUnit(px < 260 ? 90 : px < 460 ? 60 : 30));
    }

    /** Longitudes of one feature, on one turn. */
    static NumberAxis turn(Track track, ChartWish wish, boolean timeDown) {
        // The line and what is predicted are to be seen too.
        List<Track.Dot> ends = new java.util.ArrayList<>(track.dots());
        track.runs().stream()
                .flatMap(r -> r.points().stream())
                .forEach(
                        p -> ends.add(new Track.Dot(-1, Instant.ofEpochMilli((long) p.timeMs()), p.lonDeg(), 0, true)));
        Track whole = new Track(track.name(), "", ends, List.of(), List.of());
        NumberAxis axis = around(TEXTS.text("axis.longitude", wish.system()), List.of(whole), LEAST_SPAN_DEG, wish);
        axis.setInverted(timeDown && wish.growsLeft());
        axis.setNumberFormatOverride(new DegreeFormat(true));
        return axis;
    }

    /** An axis of degrees that holds all dots with their errors. */
    static NumberAxis around(String label, List<Track> tracks, double leastSpan, ChartWish wish) {
        NumberAxis axis = new NumberAxis(label);
        double low = tracks.stream()
                .flatMap(t -> t.dots().stream())
                .mapToDouble(d -> d.value() - d.sigma())
                .min()
                .orElse(0);
        double high = tracks.stream()
                .flatMap(t -> t.dots().stream())
                .mapToDouble(d -> d.value() + d.sigma())
                .max()
                .orElse(0);
        double room = Math.max(leastSpan - (high - low), (high - low) * 0.16) / 2;
        axis.setRange(low - room, high + room);
        axis.setTickUnit(new NumberTickUnit(step(axis.getRange().getLength())));
        axis.setNumberFormatOverride(new DegreeFormat(false));
        style(axis, wish);
        return axis;
    }

    /** A handy step of degrees, so that there are about a dozen at most. */
    static double step(double span) {
        for (double step : new double[] {0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60}) {
            if (span / step <= 12) {
                return step;
            }
        }
        return 90;
    }

    /** An axis of residuals, zero in the middle, that holds every mark that counts; the rest may lie beyond. */
    static NumberAxis residuals(String label, List<Track> tracks, ChartWish wish) {
        NumberAxis axis = new NumberAxis(label);
        double most = tracks.stream()
                .flatMapToDouble(t -> t.largestUsed().stream())
                .max()
                .orElse(1);
        axis.setRange(-1.25 * Math.max(most, 0.1), 1.25 * Math.max(most, 0.1));
        axis.setTickUnit(new NumberTickUnit(2 * step(axis.getRange().getLength())));
        axis.setNumberFormatOverride(new DegreeFormat(false));
        style(axis, wish);
        return axis;
    }

    static void style(ValueAxis axis, ChartWish wish) {
        axis.setLabelPaint(wish.ink());
        axis.setTickLabelPaint(wish.ink());
        axis.setAxisLinePaint(wish.quiet());
        axis.setTickMarkPaint(wish.quiet());
        axis.setLabelFont(wish.font());
        axis.setTickLabelFont(wish.font().deriveFont(wish.font().getSize2D() - 1));
    }

    /** Numbers with the screen's minus sign and a unit: longitudes of any turn written 0°…360°, others with their sign. */
    static final class DegreeFormat extends NumberFormat {
        private static final long serialVersionUID = 1L;
        private final DecimalFormat digits = new DecimalFormat("0.##", DecimalFormatSymbols.getInstance(Locale.ROOT));
        private final boolean longitudes;
        private final String unit;

        DegreeFormat(boolean longitudes) {
            this(longitudes, "°");
        }

        DegreeFormat(boolean longitudes, String unit) {
            this.longitudes = longitudes;
            this.unit = unit;
        }

        @Override
        public StringBuffer format(double number, StringBuffer to, FieldPosition position) {
            double shown = !longitudes || number == 360 ? number : Turns.reduced(number);
            String text = digits.format(shown);
            boolean nothing = text.equals("-0") || text.equals("0");
            return to.append(nothing ? "0" : text.replace('-', '\u2212')).append(unit);
        }

        @Override
        public StringBuffer format(long number, StringBuffer to, FieldPosition position) {
            return format((double) number, to, position);
        }

        @Override
        public Number parse(String source, ParsePosition position) {
            return digits.parse(source, position);
        }
    }
}
