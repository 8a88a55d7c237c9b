/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.tutorial;

import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;

/** A panel that cannot be made, for the tests of the host. */
public final class FailingPanel implements WorkbenchPanel {
    @Override
    public String id() {
        return "failing";
    }

    @Override
    public String label() {
        return "Failing";
    }

    @Override
    public JComponent create(PanelContext context) {
        throw new IllegalStateException("no lamp in the lighthouse");
    }
}
