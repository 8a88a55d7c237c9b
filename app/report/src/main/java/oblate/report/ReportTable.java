/* SPDX-License-Identifier: Apache-2.0 */
package oblate.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A finished table. Immutable.
 *
 * <p>Numbers are rounded here, once, to their column's decimals, so that no two formats disagree about a figure and what is written is read back exactly. What is
 * no finite number and a blank text are none.
 *
 * @param title one line
 * @param facts what holds for all rows, in order: observer, site, kit, method, systems, latitude kind, ephemeris, software
 * @param columns columns
 * @param rows one list per row with one value per column: Double, Long, String, java.time.Instant, Boolean, or null for none
 */
public record ReportTable(String title, Map<String, String> facts, List<Column> columns, List<List<Object>> rows) {

    /**
     * Copies, rounds and checks.
     *
     * @throws IllegalArgumentException when a row has not one value per column, a value is of another kind, or two columns have one name
     */
    public ReportTable {
        facts = Collections.unmodifiableMap(new LinkedHashMap<>(facts));
        columns = List.copyOf(columns);
        Set<String> names = new HashSet<>();
        for (Column column : columns) {
            if (!names.add(column.name())) {
                throw new IllegalArgumentException("two columns " + column.name());
            }
        }
        rows = cleaned(columns, rows);
    }

    /** What the values of a column are; {@code TEXT} for one without values or with values of several kinds. */
    public ValueKind kind(int column) {
        ValueKind found = null;
        for (List<Object> row : rows) {
            Object value = row.get(column);
            if (value != null) {
                ValueKind kind = kindOf(value);
                if (found != null && found != kind) {
                    return ValueKind.TEXT;
                }
                found = kind;
            }
        }
        return found == null ? ValueKind.TEXT : found;
    }

    /** A number as every format writes it: with the column's decimals, never in powers of ten; unrounded where the column has none. */
    public static String digits(double value, int decimals) {
        BigDecimal exact = new BigDecimal(Double.toString(value));
        BigDecimal scaled = decimals >= 0
                ? exact.setScale(decimals, RoundingMode.HALF_EVEN)
                : exact.scale() < 1 ? exact.setScale(1, RoundingMode.UNNECESSARY) : exact;
        return scaled.toPlainString();
    }

    private static List<List<Object>> cleaned(List<Column> columns, List<List<Object>> rows) {
        boolean[] real = new boolean[columns.size()];
        List<List<Object>> cleaned = new ArrayList<>(rows.size());
        for (List<Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(row.size() + " values for " + columns.size() + " columns");
            }
            List<Object> copy = new ArrayList<>(row.size());
            for (int i = 0; i < row.size(); i++) {
                Object value = clean(row.get(i), columns.get(i).decimals());
                real[i] |= value instanceof Double;
                copy.add(value);
            }
            cleaned.add(copy);
        }
        List<List<Object>> same = new ArrayList<>(cleaned.size());
        for (List<Object> row : cleaned) {
            for (int i = 0; i < real.length; i++) {
                if (real[i] && row.get(i) instanceof Long whole) {
                    row.set(i, (double) whole);
                }
            }
            same.add(Collections.unmodifiableList(row));
        }
        return Collections.unmodifiableList(same);
    }

    private static Object clean(Object value, int decimals) {
        if (value instanceof Double || value instanceof Float) {
            double number = ((Number) value).doubleValue();
            // Adding zero turns a negative zero into a positive one.
            return Double.isFinite(number) ? (Object) (Double.parseDouble(digits(number, decimals)) + 0.0) : null;
        }
        if (value instanceof Integer || value instanceof Short || value instanceof Byte) {
            return ((Number) value).longValue();
        }
        if (value instanceof String text) {
            return text.isBlank() ? null : text;
        }
        if (value == null || value instanceof Long || value instanceof Instant || value instanceof Boolean) {
            return value;
        }
        throw new IllegalArgumentException("a value of " + value.getClass().getName());
    }

    private static ValueKind kindOf(Object value) {
        if (value instanceof Double) {
            return ValueKind.NUMBER;
        }
        if (value instanceof Long) {
            return ValueKind.INTEGER;
        }
        if (value instanceof Instant) {
            return ValueKind.TIME;
        }
        return value instanceof Boolean ? ValueKind.BOOLEAN : ValueKind.TEXT;
    }

    /**
     * The same table with some of its columns only, in the order they are named.
     *
     * @throws IllegalArgumentException for a name that is no column's
     */
    public ReportTable only(List<String> names) {
        List<Integer> kept = new ArrayList<>();
        for (String name : names) {
            int place = 0;
            while (place < columns.size() && !columns.get(place).name().equals(name)) {
                place++;
            }
            if (place == columns.size()) {
                throw new IllegalArgumentException("no column " + name);
            }
            kept.add(place);
        }
        return with(kept, facts);
    }

    private ReportTable with(List<Integer> kept, Map<String, String> said) {
        return new ReportTable(
                title,
                said,
                kept.stream().map(columns::get).toList(),
                rows.stream()
                        .map(r -> {
                            List<Object> some = new ArrayList<>(kept.size());
                            kept.forEach(c -> some.add(r.get(c)));
                            return some;
                        })
                        .toList());
    }

    /**
     * The same table with columns that say one thing in all rows said once, among the facts; a column whose values differ stays.
     *
     * @param names of the columns it is asked of; a fact of that name that is there already is kept
     */
    public ReportTable saidOnce(Set<String> names) {
        Map<String, String> said = new LinkedHashMap<>(facts);
        List<Integer> kept = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            int column = c;
            List<Object> values =
                    rows.stream().map(r -> r.get(column)).distinct().toList();
            String name = columns.get(c).name();
            if (names.contains(name) && values.size() == 1 && values.get(0) != null) {
                said.putIfAbsent(name.replace('_', ' '), values.get(0).toString());
            } else {
                kept.add(c);
            }
        }
        return with(kept, said);
    }
}
