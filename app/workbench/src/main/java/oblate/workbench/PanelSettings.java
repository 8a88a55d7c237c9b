/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.function.BiConsumer;
import java.util.function.UnaryOperator;

/** Named values of one panel, kept between sessions. On the event thread only. */
public final class PanelSettings {
    private final String prefix;
    private final UnaryOperator<String> reader;
    private final BiConsumer<String, String> writer;

    PanelSettings(String prefix, UnaryOperator<String> reader, BiConsumer<String, String> writer) {
        this.prefix = prefix;
        this.reader = reader;
        this.writer = writer;
    }

    /** A text, or the default when it was never kept. */
    public String text(String name, String otherwise) {
        String value = reader.apply(prefix + name);
        return value == null ? otherwise : value;
    }

    /** Yes or no, or the default when it was never kept. */
    public boolean flag(String name, boolean otherwise) {
        return Boolean.parseBoolean(text(name, Boolean.toString(otherwise)));
    }

    /** A whole number, or the default when it was never kept or cannot be read. */
    public int number(String name, int otherwise) {
        String value = text(name, "");
        return value.matches("-?\\d{1,9}") ? Integer.parseInt(value) : otherwise;
    }

    /** Keeps a value. */
    public void keep(String name, Object value) {
        writer.accept(prefix + name, String.valueOf(value));
    }
}
