/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.Reader;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import oblate.base.ProblemException;
import oblate.report.Column;
import oblate.report.ReportTable;
import oblate.report.ValueKind;

/** Reads tables of {@link JsonFormat} back, equal to what was written. Stateless. */
public final class JsonReader {

    /**
     * Reads a table.
     *
     * @param name what to call the source in messages
     * @throws ProblemException with {@link TablesProblem}
     */
    public ReportTable read(Reader reader, String name) {
        JsonFactory factory = JsonFactory.builder().build();
        try (JsonParser json = factory.createParser(reader)) {
            return new Reading(json, name).table();
        } catch (IOException | DateTimeException | IllegalArgumentException e) {
            throw new ProblemException(e, TablesProblem.NOT_A_TABLE, name, firstLine(e.getMessage()));
        }
    }

    private static String firstLine(String message) {
        return message == null ? "unreadable" : message.lines().findFirst().orElse("unreadable");
    }

    private static final class Reading {
        private final JsonParser json;
        private final String name;
        private String title = "";
        private final Map<String, String> facts = new LinkedHashMap<>();
        private final List<Column> columns = new ArrayList<>();
        private final Map<String, Integer> places = new HashMap<>();
        private final List<ValueKind> kinds = new ArrayList<>();
        private final List<List<Object>> rows = new ArrayList<>();

        Reading(JsonParser json, String name) {
            this.json = json;
            this.name = name;
        }

        ReportTable table() throws IOException {
            expect(json.nextToken(), JsonToken.START_OBJECT);
            while (json.nextToken() != JsonToken.END_OBJECT) {
                String part = json.currentName();
                json.nextToken();
                switch (part == null ? "" : part) {
                    case "title" -> title = json.getText();
                    case "facts" -> facts.putAll(texts());
                    case "columns" -> columns();
                    case "rows" -> rows();
                    default -> json.skipChildren();
                }
            }
            return new ReportTable(title, facts, columns, rows);
        }

        private Map<String, String> texts() throws IOException {
            expect(json.currentToken(), JsonToken.START_OBJECT);
            Map<String, String> texts = new LinkedHashMap<>();
            while (json.nextToken() != JsonToken.END_OBJECT) {
                String key = json.currentName();
                json.nextToken();
                texts.put(key, json.getText());
            }
            return texts;
        }

        private void columns() throws IOException {
            expect(json.currentToken(), JsonToken.START_ARRAY);
            while (json.nextToken() != JsonToken.END_ARRAY) {
                Map<String, String> parts = texts();
                places.put(parts.getOrDefault("name", ""), columns.size());
                columns.add(new Column(
                        parts.getOrDefault("name", ""),
                        parts.getOrDefault("heading", ""),
                        parts.getOrDefault("unit", ""),
                        parts.getOrDefault("ucd", ""),
                        parts.getOrDefault("description", ""),
                        Integer.parseInt(parts.getOrDefault("decimals", "-1"))));
                kinds.add(ValueKind.valueOf(parts.getOrDefault("type", "text").toUpperCase(Locale.ROOT)));
            }
        }

        private void rows() throws IOException {
            expect(json.currentToken(), JsonToken.START_ARRAY);
            while (json.nextToken() != JsonToken.END_ARRAY) {
                expect(json.currentToken(), JsonToken.START_OBJECT);
                Object[] row = new Object[columns.size()];
                while (json.nextToken() != JsonToken.END_OBJECT) {
                    Integer place = places.get(json.currentName());
                    if (place == null) {
                        throw new ProblemException(TablesProblem.NO_COLUMN, name, json.currentName());
                    }
                    json.nextToken();
                    row[place] = value(kinds.get(place));
                }
                rows.add(java.util.Arrays.asList(row));
            }
        }

        private Object value(ValueKind kind) throws IOException {
            return switch (json.currentToken()) {
                case VALUE_NULL -> null;
                case VALUE_TRUE -> true;
                case VALUE_FALSE -> false;
                case VALUE_NUMBER_INT -> kind == ValueKind.NUMBER ? (Object) json.getDoubleValue() : (Object) json.getLongValue();
                case VALUE_NUMBER_FLOAT -> json.getDoubleValue();
                case VALUE_STRING -> kind == ValueKind.TIME ? (Object) Instant.parse(json.getText()) : json.getText();
                default -> throw new IllegalArgumentException("a value within a value");
            };
        }

        private static void expect(JsonToken found, JsonToken wanted) {
            if (found != wanted) {
                throw new IllegalArgumentException("found " + found + " instead of " + wanted);
            }
        }
    }
}
