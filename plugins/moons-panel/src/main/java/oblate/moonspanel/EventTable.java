/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import oblate.sky.GroundView;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** The events of the span, one a row; those that cannot be seen are dimmed and say why. */
final class EventTable extends FittedTable {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(EventTable.class);
    private static final String[] KEYS = {
        "column.kind",
        "column.moon",
        "column.begin",
        "column.mid",
        "column.end",
        "column.sigma",
        "column.altitude",
        "column.sun",
        "column.notes"
    };
    private static final int FIRST_FIGURE = 2;
    private static final int NOTES = 8;
    private static final int LEAST_NOTES_PX = 120;
    private final transient Supplier<Palette> palette;
    private final Rows rows;

    EventTable(Supplier<Palette> palette) {
        super(new Rows(), NOTES, LEAST_NOTES_PX);
        this.palette = palette;
        rows = (Rows) getModel();
        setName("moons.events");
        getAccessibleContext().setAccessibleName(TEXTS.text("events.name"));
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setShowGrid(false);
        setRowHeight(24);
        setFillsViewportHeight(true);
        setAutoResizeMode(AUTO_RESIZE_LAST_COLUMN);
        getTableHeader().setReorderingAllowed(false);
        for (int i = 0; i < KEYS.length; i++) {
            getColumnModel().getColumn(i).setCellRenderer(new Cell(isFigure(i)));
        }
        fit();
    }

    private static boolean isFigure(int column) {
        return column >= FIRST_FIGURE && column < NOTES;
    }

    @Override
    Font fontOf(int column) {
        return isFigure(column) ? Theme.figureFont(-1) : Theme.bodyFont(0);
    }

    void show(List<Happening> events) {
        rows.events = List.copyOf(events);
        rows.fireTableDataChanged();
        fit();
    }

    List<Happening> events() {
        return rows.events;
    }

    /** Paints one value. */
    private final class Cell extends DefaultTableCellRenderer {
        private static final long serialVersionUID = 1L;
        private final boolean figure;

        Cell(boolean figure) {
            this.figure = figure;
            setHorizontalAlignment(figure ? SwingConstants.RIGHT : SwingConstants.LEFT);
        }

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean isSelected, boolean hasFocus, int row, int column) {
            super.getTableCellRendererComponent(table, value, isSelected, false, row, column);
            setFont(figure ? Theme.figureFont(-1) : Theme.bodyFont(0));
            Happening event = rows.events.get(row);
            if (!isSelected) {
                Palette colours = palette.get();
                setForeground(event.hindrance().isPresent() ? dimmed(colours) : colours.ink());
            }
            setToolTipText(event.words().isEmpty() ? null : event.words());
            return this;
        }

        private Color dimmed(Palette colours) {
            return colours.quietInk();
        }
    }

    /** The rows. */
    private static final class Rows extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private transient List<Happening> events = List.of();

        @Override
        public int getRowCount() {
            return events.size();
        }

        @Override
        public int getColumnCount() {
            return KEYS.length;
        }

        @Override
        public String getColumnName(int column) {
            return TEXTS.text(KEYS[column]);
        }

        @Override
        public Object getValueAt(int row, int column) {
            Happening event = events.get(row);
            return switch (column) {
                case 0 -> event.what();
                case 1 -> event.moonName();
                case 2 -> EventClock.day(event.from());
                case 3 -> EventClock.clock(event.mid());
                case 4 -> EventClock.clock(event.to());
                case 5 -> event.sigmaS().map(s -> Figures.fixed(s, 0)).orElse("–");
                case 6 -> pair(event, GroundView::altitudeDeg);
                case 7 -> pair(event, GroundView::sunAltitudeDeg);
                default -> event.words();
            };
        }

        private static String pair(Happening event, ToDoubleFunction<GroundView> what) {
            if (event.begin().isEmpty() || event.end().isEmpty()) {
                return "–";
            }
            return Figures.fixed(what.applyAsDouble(event.begin().get()), 0) + " / "
                    + Figures.fixed(what.applyAsDouble(event.end().get()), 0);
        }
    }
}
