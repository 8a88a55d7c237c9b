/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.List;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.SwingConstants;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.DefaultTableCellRenderer;
import oblate.workbench.look.Figures;
import oblate.workbench.look.Theme;
import oblate.workbench.words.Texts;

/** Features with their rates and small pictures of their residuals. */
final class DriftTable extends JTable {
    private static final long serialVersionUID = 1L;
    private static final Texts TEXTS = Texts.of(DriftTable.class);
    private static final String[] COLUMNS = {"column.feature", "column.rate", "column.marks", "column.residuals"};
    private static final int SPARE_PX = 4;
    private final transient Rows rows;

    DriftTable() {
        super(new Rows());
        rows = (Rows) getModel();
        setName("drifts");
        getAccessibleContext().setAccessibleName(TEXTS.text("list.name"));
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setShowGrid(false);
        setRowHeight(26);
        setFillsViewportHeight(true);
        getTableHeader().setReorderingAllowed(false);
        DefaultTableCellRenderer figures = new DefaultTableCellRenderer() {
            private static final long serialVersionUID = 1L;

            @Override
            public void updateUI() {
                super.updateUI();
                setFont(Theme.figureFont(-1));
            }

            @Override
            public void setFont(java.awt.Font font) {
                super.setFont(Theme.figureFont(-1));
            }
        };
        figures.setHorizontalAlignment(SwingConstants.RIGHT);
        getColumnModel().getColumn(1).setCellRenderer(figures);
        getColumnModel().getColumn(2).setCellRenderer(figures);
        getColumnModel().getColumn(3).setCellRenderer(new Sparkline());
        getColumnModel().getColumn(3).setPreferredWidth(80);
        getColumnModel().getColumn(0).setPreferredWidth(96);
        getColumnModel().getColumn(1).setPreferredWidth(112);
        getColumnModel().getColumn(2).setPreferredWidth(56);
    }

    void show(List<Fitted> fits) {
        rows.fits = List.copyOf(fits);
        rows.fireTableDataChanged();
        fit();
    }

    /** Rates, counts and headings are never cut; names and small pictures take what is left. */
    private void fit() {
        for (int column = 0; column < getColumnCount(); column++) {
            int width = getTableHeader()
                            .getDefaultRenderer()
                            .getTableCellRendererComponent(this, getColumnName(column), false, false, -1, column)
                            .getPreferredSize()
                            .width
                    + SPARE_PX;
            boolean figures = column == 1 || column == 2;
            for (int row = 0; figures && row < getRowCount(); row++) {
                width = Math.max(
                        width,
                        prepareRenderer(getCellRenderer(row, column), row, column)
                                        .getPreferredSize()
                                        .width
                                + SPARE_PX);
            }
            getColumnModel().getColumn(column).setMinWidth(width);
        }
    }

    List<Fitted> fits() {
        return rows.fits;
    }

    /** The rows. */
    private static final class Rows extends AbstractTableModel {
        private static final long serialVersionUID = 1L;
        private transient List<Fitted> fits = List.of();

        @Override
        public Class<?> getColumnClass(int column) {
            return column == 3 ? Fitted.class : String.class;
        }

        @Override
        public int getRowCount() {
            return fits.size();
        }

        @Override
        public int getColumnCount() {
            return COLUMNS.length;
        }

        @Override
        public String getColumnName(int column) {
            return TEXTS.text(COLUMNS[column]);
        }

        @Override
        public Object getValueAt(int row, int column) {
            Fitted one = fits.get(row);
            return switch (column) {
                case 0 -> one.name();
                case 3 -> one;
                case 1 ->
                    one.drift()
                            .map(d -> Figures.withSigma(d.rateDegPer30Days(), d.sigmaRateDegPer30Days(), ""))
                            .orElse("–");
                default -> Integer.toString(one.series().points().size());
            };
        }
    }
}
