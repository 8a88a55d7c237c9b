/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.util.List;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JScrollPane;
import oblate.workbench.PanelContext;

/** The list of features beside the chart, one of them chosen or none; it follows what is chosen elsewhere. On the event thread only. */
final class FeatureList {
    private final DriftTable table = new DriftTable();
    private boolean filling;

    /**
     * @param whenChosen called when a person chose another one here
     */
    FeatureList(PanelContext context, Runnable whenChosen) {
        table.getSelectionModel().addListSelectionListener(e -> {
            if (!filling && !e.getValueIsAdjusting()) {
                context.selection().chooseFeature(chosen().map(Fitted::name));
                whenChosen.run();
            }
        });
    }

    /** The list with its scroll bar. */
    JScrollPane scrolled() {
        JScrollPane list = new JScrollPane(table);
        list.setBorder(BorderFactory.createEmptyBorder());
        return list;
    }

    void show(List<Fitted> fits) {
        filling = true;
        table.show(fits);
        filling = false;
    }

    /** The chosen feature. */
    Optional<Fitted> chosen() {
        int row = table.getSelectedRow();
        return row < 0 || row >= table.fits().size()
                ? Optional.empty()
                : Optional.of(table.fits().get(row));
    }

    /** Chooses a feature by its name, or none; true when that is another one than before. */
    boolean follow(Optional<String> name) {
        filling = true;
        int row = -1;
        for (int i = 0; i < table.fits().size(); i++) {
            if (name.equals(Optional.of(table.fits().get(i).name()))) {
                row = i;
            }
        }
        boolean other = row != table.getSelectedRow();
        if (row < 0) {
            table.clearSelection();
        } else if (other) {
            table.setRowSelectionInterval(row, row);
            table.scrollRectToVisible(table.getCellRect(row, 0, true));
        }
        filling = false;
        return other;
    }
}
