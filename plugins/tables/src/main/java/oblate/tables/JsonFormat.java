/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import oblate.report.Column;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;

/**
 * JSON: an object of {@code title}, {@code facts}, {@code columns} (name, heading, unit, ucd, description, decimals, type) and {@code rows}, each an object by column
 * name with null for none. Times are texts in ISO 8601 in columns of type {@code time}. {@link JsonReader} brings back an equal table.
 */
public final class JsonFormat implements ReportFormat {

    @Override
    public String id() {
        return "json";
    }

    @Override
    public String label() {
        return "JSON";
    }

    @Override
    public String suffix() {
        return "json";
    }

    @Override
    public void write(ReportTable table, Writer out) throws IOException {
        JsonFactory factory = JsonFactory.builder().build();
        try (JsonGenerator json = factory.createGenerator(out)) {
            json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
            json.setPrettyPrinter(new DefaultPrettyPrinter());
            json.writeStartObject();
            json.writeStringField("title", table.title());
            json.writeObjectFieldStart("facts");
            for (Map.Entry<String, String> fact : table.facts().entrySet()) {
                json.writeStringField(fact.getKey(), fact.getValue());
            }
            json.writeEndObject();
            columns(table, json);
            json.writeArrayFieldStart("rows");
            for (List<Object> row : table.rows()) {
                json.writeStartObject();
                for (int i = 0; i < row.size(); i++) {
                    json.writeFieldName(table.columns().get(i).name());
                    value(row.get(i), table.columns().get(i), json);
                }
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
            json.writeRaw('\n');
        }
    }

    private static void columns(ReportTable table, JsonGenerator json) throws IOException {
        json.writeArrayFieldStart("columns");
        for (int i = 0; i < table.columns().size(); i++) {
            Column column = table.columns().get(i);
            json.writeStartObject();
            json.writeStringField("name", column.name());
            json.writeStringField("heading", column.heading());
            json.writeStringField("unit", column.unit());
            json.writeStringField("ucd", column.ucd());
            json.writeStringField("description", column.description());
            json.writeNumberField("decimals", column.decimals());
            json.writeStringField("type", table.kind(i).name().toLowerCase(Locale.ROOT));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void value(Object value, Column column, JsonGenerator json) throws IOException {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof Boolean yes) {
            json.writeBoolean(yes);
        } else if (value instanceof Long whole) {
            json.writeNumber(whole);
        } else if (value instanceof Double) {
            json.writeNumber(Cells.plain(value, column));
        } else {
            json.writeString(String.valueOf(value));
        }
    }
}
