/* SPDX-License-Identifier: Apache-2.0 */
package oblate.sky;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oblate.base.ProblemException;

/** Reads and checks one public list of leap seconds. */
final class LeapSecondFile {
    private static final long NTP_OF_EPOCH_S = 2208988800L;
    private static final int MAX_BYTES = 1 << 20;
    private static final Pattern EXPIRY_WORDS =
            Pattern.compile("#\\s*File expires on:?\\s+(\\d{1,2} [A-Za-z]+ \\d{4})\\s*");
    private static final DateTimeFormatter DAY_IN_WORDS =
            DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH).withResolverStyle(ResolverStyle.STRICT);
    private static final LocalDate FIRST = LocalDate.of(1972, 1, 1);

    private final String name;
    private final List<LeapSeconds.Step> steps = new ArrayList<>(LeapSeconds.beforeWholeSeconds());
    private final StringBuilder listed = new StringBuilder();
    private String updated = "";
    private String expirySeconds = "";
    private String hash = "";
    private LocalDate expires;

    LeapSecondFile(String name) {
        this.name = name;
    }

    LeapSeconds read(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MAX_BYTES + 1);
            if (bytes.length > MAX_BYTES) {
                throw bad("it is larger than 1 MB");
            }
            return parse(new String(bytes, StandardCharsets.ISO_8859_1));
        } catch (IOException e) {
            throw bad("it cannot be read (" + e.getMessage() + ")");
        }
    }

    LeapSeconds parse(String text) {
        for (String line : text.split("\\R", -1)) {
            try {
                line(line);
            } catch (NumberFormatException | ArrayIndexOutOfBoundsException | DateTimeException e) {
                String stripped = line.strip();
                throw bad("its line \""
                        + (stripped.length() > 60 ? stripped.substring(0, 60) + "…" : stripped)
                        + "\" is not understood");
            }
        }
        check();
        checkHash();
        return new LeapSeconds(name, steps, expires);
    }

    private void line(String line) {
        Matcher words = EXPIRY_WORDS.matcher(line);
        if (line.startsWith("#@")) {
            expirySeconds = line.substring(2).strip();
            expires = LocalDate.ofEpochDay(ntpDay(expirySeconds));
        } else if (line.startsWith("#$")) {
            updated = line.substring(2).strip();
        } else if (line.startsWith("#h")) {
            hash = line.substring(2).strip();
        } else if (words.matches()) {
            // in a leap-seconds.list it only repeats what #@ says
            expires = expirySeconds.isEmpty() ? day(words.group(1)) : expires;
        } else if (!line.isBlank() && !line.startsWith("#")) {
            entry(line.replaceFirst("#.*", "").strip().split("\\s+", -1));
        }
    }

    private static LocalDate day(String words) {
        try {
            return LocalDate.parse(words, DAY_IN_WORDS);
        } catch (DateTimeParseException e) {
            throw new NumberFormatException(words);
        }
    }

    private void entry(String[] words) {
        if (words.length == 5) {
            LocalDate date =
                    LocalDate.of(Integer.parseInt(words[3]), Integer.parseInt(words[2]), Integer.parseInt(words[1]));
            if (Double.parseDouble(words[0]) - LeapSeconds.MJD_OF_EPOCH_DAY_0 != date.toEpochDay()) {
                throw new NumberFormatException(words[0]);
            }
            steps.add(new LeapSeconds.Step(date.toEpochDay(), Integer.parseInt(words[4]), 0, 0));
        } else if (words.length == 2) {
            listed.append(words[0]).append(words[1]);
            steps.add(new LeapSeconds.Step(ntpDay(words[0]), Integer.parseInt(words[1]), 0, 0));
        } else {
            throw new NumberFormatException();
        }
    }

    private static long ntpDay(String seconds) {
        long since = Long.parseLong(seconds) - NTP_OF_EPOCH_S;
        if (Math.floorMod(since, 86400L) != 0) {
            throw new NumberFormatException(seconds);
        }
        return Math.floorDiv(since, 86400L);
    }

    private void check() {
        if (expires == null) {
            throw bad("it does not say when it expires");
        }
        LeapSeconds.Step last = steps.get(steps.size() - 1);
        if (last.offsetS() < 10) {
            throw bad("it has no leap seconds in it");
        }
        for (int i = 1; i < steps.size(); i++) {
            LeapSeconds.Step step = steps.get(i);
            LocalDate date = LocalDate.ofEpochDay(step.epochDay());
            double change = step.offsetS() - steps.get(i - 1).offsetS();
            boolean isFirst = steps.get(i - 1).offsetS() < 10;
            if (isFirst && step.offsetS() >= 10 && !(step.offsetS() == 10 && date.equals(FIRST))) {
                throw bad("it does not begin with 10 s on 1972-01-01");
            }
            boolean whole = step.offsetS() >= 10 && !isFirst;
            if (step.epochDay() <= steps.get(i - 1).epochDay() || (whole && Math.abs(change) != 1)) {
                throw bad("its entry for " + date + " is out of order");
            }
            if (whole && date.getDayOfMonth() != 1) {
                throw bad("its entry for " + date + " is not at the start of a month");
            }
        }
        if (last.epochDay() > expires.toEpochDay()) {
            throw bad("it expires on " + expires + ", before its last entry");
        }
        checkHistory();
    }

    /** The past is known: a list must not differ from the bundled one before both expire. */
    private void checkHistory() {
        LeapSeconds bundled = LeapSeconds.bundled();
        long until = Math.min(expires.toEpochDay(), bundled.expires().toEpochDay());
        if (!settled(steps, until).equals(settled(bundled.steps(), until))) {
            throw bad("before " + LocalDate.ofEpochDay(until)
                    + " its leap seconds differ from those known to have been; it is incomplete or changed");
        }
    }

    private static List<LeapSeconds.Step> settled(List<LeapSeconds.Step> steps, long untilDay) {
        return steps.stream()
                .filter(s -> s.offsetS() >= 10 && s.epochDay() < untilDay)
                .map(s -> new LeapSeconds.Step(s.epochDay(), s.offsetS(), 0, 0))
                .toList();
    }

    /** SHA-1 over the digits of update, expiry and entries, as the list's own comments define it; groups of its hash lose leading zeros in some lists. */
    private void checkHash() {
        if (hash.isEmpty()) {
            return;
        }
        StringBuilder stated = new StringBuilder();
        for (String group : hash.split("\\s+", -1)) {
            stated.append("0".repeat(Math.max(0, 8 - group.length()))).append(group.toLowerCase(Locale.ROOT));
        }
        try {
            byte[] digest = MessageDigest.getInstance("SHA-1")
                    .digest((updated + expirySeconds + listed).getBytes(StandardCharsets.ISO_8859_1));
            String ours = String.format(Locale.ROOT, "%040x", new BigInteger(1, digest));
            if (!ours.contentEquals(stated)) {
                throw bad("its SHA-1 is not the one it states, so a figure in it was changed");
            }
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private ProblemException bad(String why) {
        return new ProblemException(SkyProblem.BAD_LEAP_SECONDS, name, why);
    }
}
