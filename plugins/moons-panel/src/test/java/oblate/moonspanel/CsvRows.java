/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Rows of a table among the test's resources. */
final class CsvRows {
    private CsvRows() {}

    /** One row by the names of its columns. */
    record Row(Map<String, String> values) {
        String text(String column) {
            return values.get(column);
        }

        double number(String column) {
            return Double.parseDouble(text(column));
        }
    }

    static List<Row> of(String name) {
        try (InputStream in = CsvRows.class.getResourceAsStream(name)) {
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(l -> !l.startsWith("#") && !l.isBlank())
                    .toList();
            String[] columns = lines.get(0).split(",", -1);
            return lines.stream()
                    .skip(1)
                    .map(line -> {
                        String[] parts = line.split(",", -1);
                        Map<String, String> values = new HashMap<>();
                        for (int i = 0; i < columns.length; i++) {
                            values.put(columns[i], parts[i]);
                        }
                        return new Row(values);
                    })
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
