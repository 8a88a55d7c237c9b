/* SPDX-License-Identifier: Apache-2.0 */
package oblate.drift;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import oblate.base.ProblemException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads links settled by hand: a table of comma-separated values with the columns {@code row}, {@code track}, {@code reason}. Stateless. */
public final class SettleFile {
    private static final List<String> COLUMNS = List.of("row", "track", "reason");

    /** The track that takes earlier words about a mark back. */
    public static final String OPEN = "open";

    private SettleFile() {}

    /**
     * Reads a file. The track "none" or an empty one takes a mark out of its track, {@link #OPEN} leaves it to the program.
     *
     * @param marks the marks that are settled, known by their row numbers
     * @throws ProblemException naming the first bad row
     */
    public static List<Settlement> read(Path file, MarkTable marks) {
        try (Reader reader = new GuardedReader(
                        new InputStreamReader(Files.newInputStream(file), StandardCharsets.UTF_8.newDecoder()));
                CSVParser parser = CSVFormat.RFC4180
                        .builder()
                        .setIgnoreEmptyLines(true)
                        .setIgnoreSurroundingSpaces(true)
                        .get()
                        .parse(reader)) {
            return settlements(file.toString(), parser, marks);
        } catch (CharacterCodingException e) {
            throw new ProblemException(e, DriftProblem.NOT_A_TABLE, file, "it has bytes that are no text");
        } catch (UncheckedIOException e) {
            throw new ProblemException(
                    e, DriftProblem.NOT_A_TABLE, file, e.getCause().getMessage());
        } catch (IOException e) {
            throw new ProblemException(
                    e, DriftProblem.CANNOT_READ, file, e.getClass().getSimpleName());
        }
    }

    private static List<Settlement> settlements(String name, CSVParser parser, MarkTable marks) {
        var records = parser.iterator();
        List<String> header = records.hasNext()
                ? records.next().toList().stream()
                        .map(c -> c.strip().toLowerCase(Locale.ROOT).replace("\uFEFF", ""))
                        .toList()
                : List.of();
        for (String column : COLUMNS) {
            if (!header.contains(column)) {
                throw new ProblemException(DriftProblem.NO_COLUMN, name, column, String.join(",", COLUMNS));
            }
        }
        List<Settlement> settled = new ArrayList<>();
        Map<Integer, Integer> places = new HashMap<>();
        for (int i = 0; i < marks.rows().size(); i++) {
            places.put(marks.rows().get(i).row(), i);
        }
        Set<Integer> seen = new HashSet<>();
        int line = 0;
        while (records.hasNext()) {
            line++;
            CSVRecord record = records.next();
            String row = cell(record, header, "row");
            Integer mark = row.matches("\\d{1,9}") ? places.get(Integer.parseInt(row)) : null;
            if (mark == null) {
                throw new ProblemException(DriftProblem.NO_SUCH_ROW, name, line, row);
            }
            if (!seen.add(mark)) {
                throw new ProblemException(DriftProblem.SETTLED_TWICE, name, line, row);
            }
            String reason = cell(record, header, "reason");
            if (reason.isEmpty()) {
                throw new ProblemException(DriftProblem.NO_REASON, name, line);
            }
            String track = cell(record, header, "track");
            settled.add(new Settlement(mark, track.equalsIgnoreCase("none") ? "" : track, reason));
        }
        return settled;
    }

    private static String cell(CSVRecord record, List<String> header, String column) {
        int place = header.indexOf(column);
        return place < record.size() ? record.get(place).strip() : "";
    }
}
