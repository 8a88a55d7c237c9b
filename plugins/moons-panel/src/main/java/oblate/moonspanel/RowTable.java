/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.Component;
import java.awt.Font;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;

/**
 * Things of one kind, one a row, that are looked at and chosen: figures to the right in the figures' face, words to the left, what cannot be relied on dimmed.
 *
 * @param <R> what a row is
 */
abstract class RowTable<R> extends FittedTable {
    private static final long serialVersionUID = 1L;
    private final transient Supplier<Palette> palette;
    private final transient List<Column<R>> columns;
    private final int wordsSize;
    private final Rows<R> rows;

    /**
     * A column.
     *
     * @param heading over it
     * @param isFigure whether it holds figures
     * @param value what stands in a row
     */
    record Column<R>(String heading, boolean isFigure, Function<R, String> value) {
        static <R> Column<R> words(String heading, Function<R, String> value) {
            return new Column<>(heading, false, value);
        }

        static <R> Column<R> figure(String heading, Function<R, String> value) {
            return new Column<>(heading, true, value);
        }
    }

    /**
     * How it is laid out.
     *
     * @param name of the component
     * @param rest the column that takes what the others leave
     * @param leastRestPx how wide it is at least
     * @param rowPx height of a row
     * @param wordsSize size of words against the usual (px)
     */
    record Layout(String name, int rest, int leastRestPx, int rowPx, int wordsSize) {}

    RowTable(Supplier<Palette> palette, List<Column<R>> columns, Layout layout, String accessibleName) {
        super(new Rows<>(columns), layout.rest(), layout.leastRestPx());
        this.palette = palette;
        this.columns = List.copyOf(columns);
        wordsSize = layout.wordsSize();
        rows = rowsOf();
        setName(layout.name());
        getAccessibleContext().setAccessibleName(accessibleName);
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setShowGrid(false);
        setRowHeight(layout.rowPx());
        setFillsViewportHeight(true);
        getTableHeader().setReorderingAllowed(false);
        for (int i = 0; i < columns.size(); i++) {
            getColumnModel().getColumn(i).setCellRenderer(new Cell(i));
        }
        fit();
    }

    @SuppressWarnings("unchecked")
    private Rows<R> rowsOf() {
        return (Rows<R>) getModel();
    }

    /** Whether a row is dimmed. */
    abstract boolean isDimmed(R row);

    /** What the pointer is told over a row. */
    abstract Optional<String> tip(R row);

    @Override
    final Font fontOf(int column) {
        return columns.get(column).isFigure() ? Theme.figureFont(-1) : Theme.bodyFont(wordsSize);
    }

    void show(List<R> shown) {
        rows.shown = List.copyOf(shown);
        rows.fireTableDataChanged();
        fit();
    }

    List<R> shown() {
        return rows.shown;
    }

    /** The chosen row; of several the first. */
    Optional<R> chosen() {
        int row = getSelectedRow();
        return row < 0 || row >= shown().size() ? Optional.empty() : Optional.of(shown().get(row));
    }

    /** Chooses a row that is shown, and shows it. */
    void choose(R wanted) {
        int row = shown().indexOf(wanted);
        if (row >= 0) {
            setRowSelectionInterval(row, row);
            scrollRectToVisible(getCellRect(row, 0, true));
        }
    }

    /** Paints one value. */
    private final class Cell extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;
        private final int of;

        Cell(int of) {
            this.of = of;
            setHorizontalAlignment(columns.get(of).isFigure() ? SwingConstants.RIGHT : SwingConstants.LEFT);
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean isSelected, boolean hasFocus, int row, int column) {
            super.getTableCellRendererComponent(table, value, isSelected, false, row, column);
            setFont(fontOf(of));
            R shown = shown().get(row);
            if (!isSelected) {
                Palette colours = palette.get();
                setForeground(isDimmed(shown) ? colours.quietInk() : colours.ink());
            }
            setToolTipText(tip(shown).orElse(null));
            return this;
        }
    }

    /** The rows. */
    private static final class Rows<R> extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private final transient List<Column<R>> columns;
        private transient List<R> shown = List.of();

        Rows(List<Column<R>> columns) {
            this.columns = columns;
        }

        @Override
        public int getRowCount() {
            return shown.size();
        }

        @Override
        public int getColumnCount() {
            return columns.size();
        }

        @Override
        public String getColumnName(int column) {
            return columns.get(column).heading();
        }

        @Override
        public Object getValueAt(int row, int column) {
            return columns.get(column).value().apply(shown.get(row));
        }
    }
}
