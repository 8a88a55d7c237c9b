/* SPDX-License-Identifier: Apache-2.0 */
package oblate.tables;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import oblate.report.Column;
import oblate.report.ReportFormat;
import oblate.report.ReportTable;
import oblate.report.ValueKind;

/**
 * Columns of text for people. Title and facts stand above; numbers are aligned at their points; a table wider than the page is broken into blocks one below the other, each
 * beginning with the row's number; columns without any value are left out; long texts are wrapped.
 */
public final class TextFormat implements ReportFormat {
    private static final int USUAL_PAGE_WIDTH = 120;
    private static final int WIDEST_CELL = 64;
    private static final int LEAST_PAGE_WIDTH = 40;
    private static final String GAP = "  ";

    private final int pageWidth;

    /** For a page of 120 columns. */
    public TextFormat() {
        this(USUAL_PAGE_WIDTH);
    }

    /**
     * For a page of another width.
     *
     * @param pageWidth columns, at least 40
     */
    public TextFormat(int pageWidth) {
        this.pageWidth = Math.max(LEAST_PAGE_WIDTH, pageWidth);
    }

    @Override
    public String id() {
        return "text";
    }

    @Override
    public String label() {
        return "Text in columns";
    }

    @Override
    public String suffix() {
        return "txt";
    }

    @Override
    public void write(ReportTable table, Writer out) throws IOException {
        if (!table.title().isBlank()) {
            out.write(Wrap.tame(table.title()) + "\n\n");
        }
        facts(table.facts(), out);
        if (table.rows().isEmpty()) {
            out.write("(no rows)\n");
            out.flush();
            return;
        }
        List<Laid> laid = new ArrayList<>();
        for (int i = 0; i < table.columns().size(); i++) {
            if (hasValues(table, i)) {
                laid.add(laid(table, i));
            }
        }
        List<List<Laid>> blocks = blocks(laid, numbers(table.rows().size()));
        for (int i = 0; i < blocks.size(); i++) {
            out.write(i == 0 ? "" : "\n");
            block(blocks.get(i), table.rows().size(), out);
        }
        out.flush();
    }

    private void facts(Map<String, String> facts, Writer out) throws IOException {
        int width = facts.keySet().stream().mapToInt(key -> TextWidth.of(Wrap.tame(key))).max().orElse(0);
        for (Map.Entry<String, String> fact : facts.entrySet()) {
            String label = TextWidth.padRight(Wrap.tame(fact.getKey()), width);
            for (String line : Wrap.lines(fact.getValue(), Math.max(20, pageWidth - width - 2))) {
                out.write((label + GAP + line).stripTrailing() + "\n");
                label = " ".repeat(width);
            }
        }
        if (!facts.isEmpty()) {
            out.write("\n");
        }
    }

    private static boolean hasValues(ReportTable table, int column) {
        return table.rows().stream().anyMatch(row -> row.get(column) != null);
    }

    /** A column ready to be set. */
    private record Laid(String heading, String unit, boolean right, List<List<String>> cells, int width) {

        static Laid of(String heading, String unit, boolean right, List<List<String>> cells) {
            int width = Math.max(TextWidth.of(heading), TextWidth.of(unit));
            for (List<String> cell : cells) {
                for (String line : cell) {
                    width = Math.max(width, TextWidth.of(line));
                }
            }
            return new Laid(heading, unit, right, cells, width);
        }

        String set(String text) {
            return right ? TextWidth.padLeft(text, width) : TextWidth.padRight(text, width);
        }
    }

    private Laid laid(ReportTable table, int index) {
        Column column = table.columns().get(index);
        ValueKind kind = table.kind(index);
        boolean number = kind == ValueKind.NUMBER || kind == ValueKind.INTEGER;
        int widest = Math.min(WIDEST_CELL, pageWidth - 10);
        List<String> texts = new ArrayList<>(table.rows().size());
        for (List<Object> row : table.rows()) {
            texts.add(Cells.plain(row.get(index), column));
        }
        if (number) {
            alignPoints(texts);
        }
        List<List<String>> cells = texts.stream()
                .map(text -> number ? List.of(text) : Wrap.lines(text, widest))
                .toList();
        // A unit with a factor, such as a thirtieth of a degree per day, is for programs; the heading says it in words.
        String unit = column.unit().matches("\\d.*") ? "" : Wrap.tame(column.unit());
        return Laid.of(Wrap.tame(column.heading()), unit, number, cells);
    }

    /** Fills up behind, so that points stand below each other when the cells are set to the right. */
    private static void alignPoints(List<String> texts) {
        int most = 0;
        for (String text : texts) {
            most = Math.max(most, behindPoint(text));
        }
        for (int i = 0; i < texts.size(); i++) {
            texts.set(i, texts.get(i) + " ".repeat(most - behindPoint(texts.get(i))));
        }
    }

    private static int behindPoint(String text) {
        int point = text.indexOf('.');
        return point < 0 ? 0 : text.length() - point;
    }

    private static Laid numbers(int rows) {
        List<List<String>> cells = new ArrayList<>(rows);
        for (int i = 1; i <= rows; i++) {
            cells.add(List.of(String.valueOf(i)));
        }
        return Laid.of("#", "", true, cells);
    }

    private List<List<Laid>> blocks(List<Laid> all, Laid numbers) {
        int whole = all.stream().mapToInt(column -> column.width() + GAP.length()).sum() - GAP.length();
        if (whole <= pageWidth) {
            return List.of(all);
        }
        List<List<Laid>> blocks = new ArrayList<>();
        List<Laid> block = new ArrayList<>(List.of(numbers));
        int used = numbers.width();
        for (Laid column : all) {
            if (block.size() > 1 && used + GAP.length() + column.width() > pageWidth) {
                blocks.add(block);
                block = new ArrayList<>(List.of(numbers));
                used = numbers.width();
            }
            block.add(column);
            used += GAP.length() + column.width();
        }
        blocks.add(block);
        return blocks;
    }

    private static void block(List<Laid> columns, int rows, Writer out) throws IOException {
        line(columns.stream().map(c -> c.set(c.heading())).toList(), out);
        if (columns.stream().anyMatch(c -> !c.unit().isEmpty())) {
            line(columns.stream().map(c -> c.set(c.unit())).toList(), out);
        }
        line(columns.stream().map(c -> "-".repeat(c.width())).toList(), out);
        for (int row = 0; row < rows; row++) {
            int high = 1;
            for (Laid column : columns) {
                high = Math.max(high, column.cells().get(row).size());
            }
            for (int level = 0; level < high; level++) {
                List<String> cells = new ArrayList<>(columns.size());
                for (Laid column : columns) {
                    List<String> cell = column.cells().get(row);
                    cells.add(column.set(level < cell.size() ? cell.get(level) : ""));
                }
                line(cells, out);
            }
        }
    }

    private static void line(List<String> cells, Writer out) throws IOException {
        out.write(String.join(GAP, cells).stripTrailing());
        out.write('\n');
    }
}
