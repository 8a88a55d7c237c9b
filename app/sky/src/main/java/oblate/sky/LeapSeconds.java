/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * TAI − UTC: whole leap seconds from 1972 on, the lines of the older UTC before. Immutable.
 *
 * <p>Past {@link #expires()} the last known offset is held; whoever shows a result for such a date should say so.
 */
public final class LeapSeconds {
    /** TT − TAI (s), by definition. */
    static final double TT_MINUS_TAI_S = 32.184;

    static final long MJD_OF_EPOCH_DAY_0 = 40587;
    private static final String BUNDLED = "bundled";

    private final String origin;
    private final List<Step> steps;
    private final long[] days;
    private final LocalDate expires;

    /**
     * @param origin where the table came from
     * @param steps in order of time
     * @param expires day up to which no other leap second was announced
     */
    LeapSeconds(String origin, List<Step> steps, LocalDate expires) {
        this.origin = origin;
        this.steps = List.copyOf(steps);
        this.days = steps.stream().mapToLong(Step::epochDay).toArray();
        this.expires = expires;
    }

    /** The table that comes with the program. */
    public static LeapSeconds bundled() {
        return Bundled.TABLE;
    }

    /**
     * A newer list in one of the two public formats, told apart by what is in it: {@code leap-seconds.list} (lines of NTP seconds and TAI − UTC, expiry
     * after {@code #@}, SHA-1 of the figures after {@code #h}, which is checked where it is there) or {@code Leap_Second.dat} (lines of MJD, day, month,
     * year and TAI − UTC, expiry in words). What was before 1972 stays as bundled.
     *
     * @throws oblate.base.ProblemException {@link SkyProblem#BAD_LEAP_SECONDS} when the file cannot be used
     */
    public static LeapSeconds read(Path file) {
        return new LeapSecondFile(file.getFileName().toString()).read(file);
    }

    List<Step> steps() {
        return steps;
    }

    /** The steps of the old UTC, 1960 to 1971. */
    static List<Step> beforeWholeSeconds() {
        return bundled().steps.stream().filter(s -> s.offsetS < 10).toList();
    }

    /** Where the table came from: the name of a file, or {@code bundled}. */
    public String origin() {
        return origin;
    }

    /** Whether this is the table that comes with the program. */
    public boolean isBundled() {
        return origin.equals(BUNDLED);
    }

    /** Whether the table was complete at a time; past that the last offset is held, and a leap second may be missing. */
    public boolean isKnownAt(UtcTime time) {
        return time.epochDay() < expires.toEpochDay();
    }

    /** What to write beside a result for a time: {@code bundled, complete to 2026-06-28}, or that the time is past that. */
    public String saidOf(UtcTime time) {
        return isKnownAt(time)
                ? origin + ", complete to " + expires
                : "past " + expires + ", to which " + origin + " is complete: TT - UTC held at "
                        + java.math.BigDecimal.valueOf(ttMinusUtcS(time)).toPlainString() + " s";
    }

    /** Day the table was known to be complete until; later dates hold the last offset. */
    public LocalDate expires() {
        return expires;
    }

    /** TAI − UTC (s) at a time; before 1960 the line of 1960 is extended. */
    public double taiMinusUtcS(UtcTime time) {
        Step step = steps.get(Math.max(0, indexOf(time.epochDay())));
        if (step.rateSPerDay == 0) {
            return step.offsetS;
        }
        double mjd = time.epochDay() + MJD_OF_EPOCH_DAY_0 + time.secondOfDay() / 86400;
        return step.offsetS + (mjd - step.referenceMjd) * step.rateSPerDay;
    }

    /** Days from 1970-01-01 on which a whole number of leap seconds began to hold, from 1972 on, with that number. */
    SortedMap<Long, Integer> wholeSteps() {
        SortedMap<Long, Integer> whole = new TreeMap<>();
        steps.stream().filter(s -> s.offsetS >= 10).forEach(s -> whole.put(s.epochDay, (int) s.offsetS));
        return whole;
    }

    /** TT − UTC (s) at a time. */
    public double ttMinusUtcS(UtcTime time) {
        return taiMinusUtcS(time) + TT_MINUS_TAI_S;
    }

    /** Length of a UTC day (s): 86401 with a leap second, else 86400; the small steps before 1972 are not counted. */
    public int secondsInDay(long epochDay) {
        int next = indexOf(epochDay + 1);
        if (next < 1 || days[next] != epochDay + 1 || steps.get(next).offsetS < 11) {
            return 86400;
        }
        return 86400 + (int) Math.round(steps.get(next).offsetS - steps.get(next - 1).offsetS);
    }

    private int indexOf(long epochDay) {
        int found = Arrays.binarySearch(days, epochDay);
        return found >= 0 ? found : -found - 2;
    }

    /**
     * From a day on TAI − UTC = offset + (MJD − reference) × rate.
     *
     * @param epochDay first day, counted from 1970-01-01
     * @param offsetS s
     * @param referenceMjd days
     * @param rateSPerDay s per day; 0 from 1972 on
     */
    record Step(long epochDay, double offsetS, double referenceMjd, double rateSPerDay) {}

    /** Loads the bundled table once, at first use. */
    private static final class Bundled {
        static final LeapSeconds TABLE = load();

        private static LeapSeconds load() {
            List<Step> steps = new ArrayList<>();
            LocalDate expires = null;
            for (String line : resourceLines("utc.csv")) {
                if (line.startsWith("# expires ")) {
                    expires = LocalDate.parse(line.substring(10));
                } else if (Character.isDigit(line.charAt(0))) {
                    String[] cells = line.split(",", -1);
                    steps.add(new Step(
                            LocalDate.parse(cells[0]).toEpochDay(),
                            Double.parseDouble(cells[1]),
                            Double.parseDouble(cells[2]),
                            Double.parseDouble(cells[3])));
                }
            }
            return new LeapSeconds(BUNDLED, steps, expires);
        }
    }

    /** Lines of a text that comes with this stage. */
    static List<String> resourceLines(String name) {
        try (InputStream in = LeapSeconds.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
