/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import oblate.base.ProblemException;
import oblate.report.Column;
import oblate.report.ReportTable;
import oblate.report.ValueKind;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads tables of {@link CsvFormat} back. Stateless. */
public final class CsvReader {

    /**
     * Reads a table whose columns are known.
     *
     * @param name what to call the source in messages
     * @param columns the columns wanted and the kinds of their values, in order; others in the source are passed over
     * @return a table without title and facts, which CSV does not carry
     * @throws ProblemException with {@link TablesProblem}
     */
    public ReportTable read(Reader reader, String name, Map<Column, ValueKind> columns) {
        try {
            CSVParser parser = CSVFormat.RFC4180.parse(reader);
            Iterator<CSVRecord> records = parser.iterator();
            if (!records.hasNext()) {
                throw new ProblemException(TablesProblem.NOT_A_TABLE, name, "it is empty");
            }
            List<String> header = records.next().toList();
            List<Column> wanted = List.copyOf(columns.keySet());
            int[] places = new int[wanted.size()];
            for (int i = 0; i < places.length; i++) {
                places[i] = header.indexOf(wanted.get(i).name());
                if (places[i] < 0) {
                    throw new ProblemException(TablesProblem.NO_COLUMN, name, wanted.get(i).name());
                }
            }
            List<List<Object>> rows = new ArrayList<>();
            while (records.hasNext()) {
                CSVRecord row = records.next();
                if (row.size() != header.size()) {
                    throw new ProblemException(
                            TablesProblem.NOT_A_TABLE, name, "row " + (rows.size() + 1) + " has " + row.size() + " fields");
                }
                List<Object> values = new ArrayList<>(places.length);
                for (int i = 0; i < places.length; i++) {
                    Column column = wanted.get(i);
                    values.add(value(row.get(places[i]), columns.get(column), name, rows.size() + 1, column.name()));
                }
                rows.add(values);
            }
            return new ReportTable("", Map.of(), wanted, rows);
        } catch (UncheckedIOException | IOException e) {
            throw new ProblemException(e, TablesProblem.NOT_A_TABLE, name, e.getMessage());
        }
    }

    private static Object value(String text, ValueKind kind, String name, int row, String column) {
        if (text.isEmpty()) {
            return null;
        }
        try {
            return switch (kind) {
                case TEXT -> FormulaGuard.take(text);
                case NUMBER -> Double.valueOf(text);
                case INTEGER -> Long.valueOf(text);
                case TIME -> Instant.parse(text);
                case BOOLEAN -> yesOrNo(text);
            };
        } catch (DateTimeException | IllegalArgumentException e) {
            throw new ProblemException(
                    e, TablesProblem.BAD_VALUE, name, row, text, column, kind.name().toLowerCase(java.util.Locale.ROOT));
        }
    }

    private static Boolean yesOrNo(String text) {
        if (!text.equals("yes") && !text.equals("no")) {
            throw new IllegalArgumentException(text);
        }
        return text.equals("yes");
    }
}
