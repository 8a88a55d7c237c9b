/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.table;

import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;
import oblate.workbench.look.Drawings;
import oblate.workbench.look.LineIcon;

/** Tables for others. */
public final class ReportPanel implements WorkbenchPanel {
    @Override
    public String id() {
        return "report";
    }

    @Override
    public String label() {
        return "Report";
    }

    @Override
    public int order() {
        return 800;
    }

    @Override
    public Optional<Icon> icon() {
        return Optional.of(new LineIcon(24, Drawings::report));
    }

    @Override
    public JComponent create(PanelContext context) {
        return new ReportView(context);
    }
}
