/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import oblate.base.ProblemException;

/**
 * TAI − UTC: whole leap seconds from 1972 on, the lines of the older UTC before. Immutable.
 *
 * <p>Past {@link #expires()} the last known offset is held; whoever shows a result for such a date should say so.
 */
public final class LeapSeconds {
    /** TT − TAI (s), by definition. */
    static final double TT_MINUS_TAI_S = 32.184;

    private static final long MJD_OF_EPOCH_DAY_0 = 40587;
    private static final long NTP_OF_EPOCH_S = 2208988800L;
    private static final long MAX_FILE_BYTES = 1 << 20;

    private final List<Step> steps;
    private final long[] days;
    private final LocalDate expires;

    private LeapSeconds(List<Step> steps, LocalDate expires) {
        this.steps = List.copyOf(steps);
        this.days = steps.stream().mapToLong(Step::epochDay).toArray();
        this.expires = expires;
    }

    /** The table that comes with the program. */
    public static LeapSeconds bundled() {
        return Bundled.TABLE;
    }

    /**
     * A newer list in the public format of {@code leap-seconds.list}: lines of NTP seconds and TAI − UTC, expiry after {@code #@}. What was before 1972
     * stays as bundled.
     *
     * @throws ProblemException {@link SkyProblem#BAD_LEAP_SECONDS} when the file cannot be used
     */
    public static LeapSeconds read(Path file) {
        String name = file.getFileName().toString();
        try {
            if (Files.size(file) > MAX_FILE_BYTES) {
                throw new ProblemException(SkyProblem.BAD_LEAP_SECONDS, name, "it is larger than 1 MB");
            }
            return parseList(Files.readString(file, StandardCharsets.ISO_8859_1), name);
        } catch (IOException e) {
            throw new ProblemException(
                    e, SkyProblem.BAD_LEAP_SECONDS, name, "it cannot be read (" + e.getMessage() + ")");
        }
    }

    static LeapSeconds parseList(String text, String name) {
        List<Step> steps = new ArrayList<>(
                bundled().steps.stream().filter(s -> s.offsetS < 10).toList());
        LocalDate expires = null;
        for (String line : text.split("\\R")) {
            try {
                if (line.startsWith("#@")) {
                    expires = LocalDate.ofEpochDay(ntpDay(line.substring(2).strip()));
                } else if (!line.isBlank() && !line.startsWith("#")) {
                    String[] words = line.strip().split("\\s+");
                    steps.add(new Step(ntpDay(words[0]), Integer.parseInt(words[1]), 0, 0));
                }
            } catch (NumberFormatException | ArrayIndexOutOfBoundsException | DateTimeException e) {
                throw new ProblemException(
                        e, SkyProblem.BAD_LEAP_SECONDS, name, "its line \"" + line.strip() + "\" is not understood");
            }
        }
        check(steps, expires, name);
        return new LeapSeconds(steps, expires);
    }

    private static long ntpDay(String seconds) {
        return Math.floorDiv(Long.parseLong(seconds) - NTP_OF_EPOCH_S, 86400L);
    }

    private static void check(List<Step> steps, LocalDate expires, String name) {
        if (expires == null) {
            throw new ProblemException(SkyProblem.BAD_LEAP_SECONDS, name, "it does not say when it expires");
        }
        if (steps.get(steps.size() - 1).offsetS < 10) {
            throw new ProblemException(SkyProblem.BAD_LEAP_SECONDS, name, "it has no leap seconds in it");
        }
        for (int i = 1; i < steps.size(); i++) {
            boolean whole = steps.get(i).offsetS >= 11;
            boolean oneMore = Math.abs(steps.get(i).offsetS - steps.get(i - 1).offsetS) == 1;
            if (steps.get(i).epochDay <= steps.get(i - 1).epochDay || whole && !oneMore) {
                throw new ProblemException(
                        SkyProblem.BAD_LEAP_SECONDS,
                        name,
                        "its entry for " + LocalDate.ofEpochDay(steps.get(i).epochDay) + " is out of order");
            }
        }
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

    private record Step(long epochDay, double offsetS, double referenceMjd, double rateSPerDay) {}

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
                    String[] cells = line.split(",");
                    steps.add(new Step(
                            LocalDate.parse(cells[0]).toEpochDay(),
                            Double.parseDouble(cells[1]),
                            Double.parseDouble(cells[2]),
                            Double.parseDouble(cells[3])));
                }
            }
            return new LeapSeconds(steps, expires);
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
