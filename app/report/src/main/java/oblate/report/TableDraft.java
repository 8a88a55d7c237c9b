/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * A table in the making: columns that know how to find their value in what a row is about.
 *
 * @param <T> what a row is about
 */
public final class TableDraft<T> {
    private final String title;
    private final Map<String, String> facts = new LinkedHashMap<>();
    private final List<Column> columns = new ArrayList<>();
    private final List<Function<T, ?>> values = new ArrayList<>();

    /** Starts with a title of one line. */
    public TableDraft(String title) {
        this.title = title;
    }

    /** Adds what holds for all rows; an empty value is left out. */
    public TableDraft<T> fact(String name, String value) {
        if (!value.isBlank()) {
            facts.put(name, value);
        }
        return this;
    }

    /** Adds a column; its function may give null for none. */
    public TableDraft<T> column(Column column, Function<T, ?> value) {
        columns.add(column);
        values.add(value);
        return this;
    }

    /** The table of some objects. */
    public ReportTable rows(List<T> objects) {
        List<List<Object>> rows = new ArrayList<>(objects.size());
        for (T object : objects) {
            List<Object> row = new ArrayList<>(values.size());
            for (Function<T, ?> value : values) {
                row.add(value.apply(object));
            }
            rows.add(row);
        }
        return new ReportTable(title, facts, columns, rows);
    }
}
