/* SPDX-License-Identifier: Apache-2.0 */
package oblate.image;

import java.nio.file.Path;
import java.text.ParsePosition;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.time.temporal.TemporalQueries;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import oblate.base.ProblemException;

/** Times in a file's name: the user's pattern first, then ISO 8601. */
final class NameTimes {
    private static final String PLACE = "file name";
    private static final Pattern QUOTED = Pattern.compile("'[^']*'");

    private NameTimes() {}

    /**
     * @throws ProblemException {@link ImageProblem#BAD_TIME} when the pattern itself is none
     */
    static Testimony of(Path file, Optional<String> namePattern) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        if (namePattern.isPresent()) {
            Optional<Statement> statement = byPattern(file, name, namePattern.get());
            if (statement.isPresent()) {
                return new Testimony(List.of(statement.get()), List.of(), OptionalDouble.empty());
            }
        }
        return Testimony.of(IsoTimes.find(name, IsoTimes.Manner.NAME), TimeSource.FILE_NAME, PLACE);
    }

    private static Optional<Statement> byPattern(Path file, String name, String pattern) {
        DateTimeFormatter formatter;
        try {
            formatter = new DateTimeFormatterBuilder()
                    .parseCaseInsensitive()
                    .appendPattern(pattern)
                    .parseDefaulting(ChronoField.ERA, 1)
                    .toFormatter(Locale.ROOT)
                    .withResolverStyle(ResolverStyle.STRICT);
        } catch (IllegalArgumentException e) {
            throw new ProblemException(
                    e,
                    ImageProblem.BAD_TIME,
                    file,
                    pattern,
                    "the pattern for file names",
                    "it is no pattern: " + e.getMessage());
        }
        for (int at = 0; at < name.length(); at++) {
            ParsePosition position = new ParsePosition(at);
            try {
                TemporalAccessor parsed = formatter.parse(name, position);
                LocalDate date = parsed.query(TemporalQueries.localDate());
                LocalTime time = parsed.query(TemporalQueries.localTime());
                if (date != null && time != null) {
                    return Optional.of(
                            statement(name.substring(at, position.getIndex()), date.atTime(time), parsed, pattern));
                }
            } catch (DateTimeException | IndexOutOfBoundsException e) {
                // no time of this pattern begins here
            }
        }
        return Optional.empty();
    }

    private static Statement statement(String text, LocalDateTime clock, TemporalAccessor parsed, String pattern) {
        ZoneOffset offset = parsed.query(TemporalQueries.offset());
        if (offset == null && parsed.query(TemporalQueries.zone()) != null) {
            offset = parsed.query(TemporalQueries.zone()).getRules().getOffset(clock);
        }
        if (offset == null && literals(pattern).toUpperCase(Locale.ROOT).matches("(?s).*(Z|UTC|UT)\\P{L}*")) {
            offset = ZoneOffset.UTC; // the pattern itself spells the zone out
        }
        return Statement.of(new TimeClaim(
                TimeSource.FILE_NAME,
                PLACE,
                text,
                clock,
                Optional.ofNullable(offset),
                TimeMeaning.UNSTATED,
                OptionalDouble.empty(),
                precisionS(pattern)));
    }

    private static String literals(String pattern) {
        StringBuilder text = new StringBuilder();
        Matcher quoted = QUOTED.matcher(pattern);
        while (quoted.find()) {
            text.append(quoted.group(), 1, quoted.group().length() - 1).append(' ');
        }
        return text.toString();
    }

    private static double precisionS(String pattern) {
        String letters = QUOTED.matcher(pattern).replaceAll("");
        long fraction = letters.chars().filter(c -> c == 'S').count();
        if (fraction > 0 || letters.contains("n") || letters.contains("A") || letters.contains("N")) {
            return 0.5 * Math.pow(10, -(double) (fraction > 0 ? Math.min(9, fraction) : 3));
        }
        if (letters.contains("s")) {
            return 0.5;
        }
        return letters.contains("m") ? 30 : 1800;
    }
}
