/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import oblate.command.Console;
import oblate.command.Program;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** One run of the command line with everything that ships plugged in; what it said and its exit status. */
record CommandRun(int status, String out, String err) {

    static CommandRun of(Path settings, String input, String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Console console = new Console(
                new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                false);
        Clock clock = Clock.fixed(Instant.parse("2031-03-25T01:00:00Z"), ZoneOffset.UTC);
        int status = new Program(console, clock, Map.of("OBLATE_SETTINGS", settings.toString())).run(words);
        return new CommandRun(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** The rows printed with {@code --format csv}. */
    List<CSVRecord> rows() {
        try (CSVParser parser = CSVParser.parse(
                new StringReader(out),
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            return parser.getRecords();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Sentences on standard error, progress apart. */
    List<String> sentences() {
        return err.lines().filter(l -> !l.matches("[A-Z][a-z ]+ \\d+/\\d+")).toList();
    }
}
