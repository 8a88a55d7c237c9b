/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import oblate.report.Column;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Comma-separated values as RFC 4180 has them: one line of column names, one line per row, CR LF, quotes where needed, an empty field for none.
 *
 * <p>The standard knows no remarks, so title and facts are not written: what a row needs to be understood elsewhere is in columns of the table. A text that a spreadsheet
 * would run as a formula gets an apostrophe in front, which {@link CsvReader} takes off again.
 */
public final class CsvFormat implements ReportFormat {

    @Override
    public String id() {
        return "csv";
    }

    @Override
    public String label() {
        return "CSV (RFC 4180)";
    }

    @Override
    public String suffix() {
        return "csv";
    }

    @Override
    public void write(ReportTable table, Writer out) throws IOException {
        CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180);
        List<Column> columns = table.columns();
        printer.printRecord(columns.stream().map(Column::name));
        Object[] cells = new Object[columns.size()];
        for (List<Object> row : table.rows()) {
            for (int i = 0; i < cells.length; i++) {
                Object value = row.get(i);
                cells[i] = value == null
                        ? null
                        : value instanceof String text ? FormulaGuard.put(text) : Cells.plain(value, columns.get(i));
            }
            printer.printRecord(cells);
        }
        printer.flush();
    }
}
