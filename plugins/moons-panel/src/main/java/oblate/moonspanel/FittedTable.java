/* SPDX-License-Identifier: Apache-2.0 */
package oblate.moonspanel;

import java.awt.Component;
import java.awt.Font;
import java.awt.FontMetrics;
import javax.swing.JTable;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.TableColumn;

/** A table whose columns are as wide as what stands in them, one taking what is left; where there is no room for all it is scrolled sideways, never cut. */
abstract class FittedTable extends JTable {
    private static final long serialVersionUID = 1L;
    private static final int PADDING_PX = 16;
    private static final int HEADING_SPARE_PX = 4;
    private final int rest;
    private final int leastRestPx;

    /**
     * @param rest the column that takes what the others leave
     * @param leastRestPx how wide it is at least
     */
    FittedTable(AbstractTableModel rows, int rest, int leastRestPx) {
        super(rows);
        this.rest = rest;
        this.leastRestPx = leastRestPx;
    }

    /** The font a column's values are written in. */
    abstract Font fontOf(int column);

    /** Makes room for the headings and for every value there is now. */
    final void fit() {
        for (int i = 0; i < getColumnCount(); i++) {
            TableColumn column = getColumnModel().getColumn(i);
            int width = i == rest ? leastRestPx : widest(i);
            column.setMinWidth(width);
            column.setPreferredWidth(width);
        }
        revalidate();
    }

    private int widest(int column) {
        Component heading = getTableHeader()
                .getDefaultRenderer()
                .getTableCellRendererComponent(this, getColumnName(column), false, false, -1, column);
        int width = heading.getPreferredSize().width + HEADING_SPARE_PX;
        FontMetrics metrics = getFontMetrics(fontOf(column));
        for (int row = 0; row < getRowCount(); row++) {
            width = Math.max(width, metrics.stringWidth(String.valueOf(getValueAt(row, column))) + PADDING_PX);
        }
        return width;
    }

    @Override
    public void doLayout() {
        if (getTableHeader() == null || getTableHeader().getResizingColumn() == null) {
            int others = 0;
            for (int i = 0; i < getColumnCount(); i++) {
                others += i == rest ? 0 : getColumnModel().getColumn(i).getPreferredWidth();
            }
            getColumnModel().getColumn(rest).setPreferredWidth(Math.max(leastRestPx, getWidth() - others));
        }
        super.doLayout();
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        int least = 0;
        for (int i = 0; i < getColumnCount(); i++) {
            least += getColumnModel().getColumn(i).getMinWidth();
        }
        return getParent() == null || getParent().getWidth() >= least;
    }
}
