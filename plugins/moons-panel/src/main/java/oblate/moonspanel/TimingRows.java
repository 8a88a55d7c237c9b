/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.Component;
import java.awt.Font;
import java.util.List;
import java.util.function.Supplier;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import oblate.drift.timing.TimedPoint;
import oblate.drift.timing.Timing;
import oblate.report.TimingTable;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Palette;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Timings, one event's moment a row; what is in doubt is dimmed and says why. */
final class TimingRows extends FittedTable {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(TimingRows.class);
    private static final String[] KEYS = {
        "timings.night", "timings.moon", "timings.what", "timings.omp", "timings.beside"
    };
    private static final int WHAT = 2;
    private static final int LEAST_WHAT_PX = 120;
    private static final int FIRST_FIGURE = 3;
    private final transient Supplier<Palette> palette;
    private final Rows rows;

    TimingRows(Supplier<Palette> palette) {
        super(new Rows(), WHAT, LEAST_WHAT_PX);
        this.palette = palette;
        rows = (Rows) getModel();
        setName("moons.timings.rows");
        getAccessibleContext().setAccessibleName(TEXTS.text("timings.rows.name"));
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setShowGrid(false);
        setRowHeight(22);
        setFillsViewportHeight(true);
        getTableHeader().setReorderingAllowed(false);
        for (int i = 0; i < KEYS.length; i++) {
            getColumnModel().getColumn(i).setCellRenderer(new Cell(isFigure(i)));
        }
        fit();
    }

    private static boolean isFigure(int column) {
        return column == 0 || column >= FIRST_FIGURE;
    }

    @Override
    Font fontOf(int column) {
        return isFigure(column) ? Theme.figureFont(-1) : Theme.bodyFont(-1);
    }

    void show(List<Timing> timings) {
        rows.timings = List.copyOf(timings);
        rows.fireTableDataChanged();
        fit();
    }

    List<Timing> timings() {
        return rows.timings;
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
            setFont(figure ? Theme.figureFont(-1) : Theme.bodyFont(-1));
            Timing timing = rows.timings.get(row);
            if (!isSelected) {
                Palette colours = palette.get();
                setForeground(timing.doubts().isEmpty() ? colours.ink() : colours.quietInk());
            }
            setToolTipText(timing.doubts().isEmpty() ? null : String.join("; ", timing.doubts()));
            return this;
        }
    }

    /** The rows. */
    private static final class Rows extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private transient List<Timing> timings = List.of();

        @Override
        public int getRowCount() {
            return timings.size();
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
            Timing t = timings.get(row);
            return switch (column) {
                case 0 -> t.night().toString();
                case 1 -> t.words();
                case 2 -> what(t);
                case 3 ->
                    t.hasTime()
                            ? Figures.withSigma(t.oMinusPS(), t.errors().totalS(), "")
                            : TimingTable.limit(t).orElse("–");
                default ->
                    t.beside()
                            .map(b -> Figures.withSigma(b.arcsec(), b.sigmaArcsec(), ""))
                            .orElse("–");
            };
        }

        /** "transit, mid"; the place alone where there is no moment to name. */
        private static String what(Timing t) {
            return t.point() == TimedPoint.PLACE
                    ? t.phenomenon().words()
                    : TEXTS.text(
                            "timings.what.moment",
                            t.phenomenon().words(),
                            TEXTS.text("point." + t.point().id()));
        }
    }
}
