/* SPDX-License-Identifier: Apache-2.0 */
package oblate.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import oblate.report.Column;
import oblate.report.ReportTable;

/** Builds a table from columns that know how to find their value in a row's object. */
final class TableOf<T> {
    private final String title;
    private final Map<String, String> facts = new LinkedHashMap<>();
    private final List<Column> columns = new ArrayList<>();
    private final List<Function<T, Object>> values = new ArrayList<>();

    TableOf(String title) {
        this.title = title;
    }

    /** A line of what holds for all rows. */
    TableOf<T> fact(String name, String value) {
        facts.put(name, value);
        return this;
    }

    /** A column of texts, times or whole numbers. */
    TableOf<T> text(String name, String description, Function<T, Object> value) {
        return add(new Column(name, name, "", "", description, -1), value);
    }

    /** A column of numbers with a fixed count of decimals. */
    TableOf<T> number(String name, String unit, int decimals, String description, Function<T, Object> value) {
        return add(new Column(name, name, unit, "", description, decimals), value);
    }

    private TableOf<T> add(Column column, Function<T, Object> value) {
        columns.add(column);
        values.add(value);
        return this;
    }

    ReportTable rows(List<T> objects) {
        List<List<Object>> rows = new ArrayList<>(objects.size());
        for (T object : objects) {
            List<Object> row = new ArrayList<>(values.size());
            for (Function<T, Object> value : values) {
                row.add(finite(value.apply(object)));
            }
            rows.add(row);
        }
        return new ReportTable(title, facts, List.copyOf(columns), rows);
    }

    /** A table never shows NaN: what is not a number is not there. */
    private static Object finite(Object value) {
        return value instanceof Double d && !Double.isFinite(d) ? null : value;
    }
}
