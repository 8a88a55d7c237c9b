/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import oblate.base.ProblemException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Rows of a CSV file with named columns; says file and row of what cannot be read. */
final class CsvRows {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .setIgnoreSurroundingSpaces(true)
            .setIgnoreEmptyLines(true)
            .setIgnoreHeaderCase(true)
            .get();

    private CsvRows() {}

    /** Reads all rows; "-" is standard input. */
    static List<Row> read(String file, Console console) {
        try (Reader text = file.equals("-")
                        ? new InputStreamReader(console.in(), StandardCharsets.UTF_8)
                        : Files.newBufferedReader(Path.of(file), StandardCharsets.UTF_8);
                CSVParser parser = CSVParser.parse(text, FORMAT)) {
            List<Row> rows = new ArrayList<>();
            for (CSVRecord row : parser) {
                rows.add(new Row(file, row));
            }
            return rows;
        } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
            throw new ProblemException(e, CommandProblem.CANNOT_READ, file, e.getMessage());
        }
    }

    /**
     * One row.
     *
     * @param file the file it is from
     * @param row its values
     */
    record Row(String file, CSVRecord row) {

        Optional<String> text(String column) {
            return row.isMapped(column) && row.isSet(column) && !row.get(column).isBlank()
                    ? Optional.of(row.get(column).strip())
                    : Optional.empty();
        }

        String needed(String column) {
            return text(column)
                    .orElseThrow(() -> new ProblemException(
                            CommandProblem.BAD_CSV, file, row.getRecordNumber(), "has nothing in column " + column));
        }

        double number(String column) {
            String text = needed(column);
            try {
                double value = Double.parseDouble(text);
                if (Double.isFinite(value)) {
                    return value;
                }
            } catch (NumberFormatException e) {
                // told below
            }
            throw new ProblemException(
                    CommandProblem.BAD_CSV,
                    file,
                    row.getRecordNumber(),
                    "\"" + text + "\" in column " + column + " is no number");
        }
    }
}
