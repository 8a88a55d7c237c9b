/* SPDX-License-Identifier: Apache-2.0 */
package example.meridian;

import javax.swing.JComponent;
import oblate.workbench.PanelContext;
import oblate.workbench.WorkbenchPanel;

/** Shows how bright the chosen picture is along the central meridian and along the equator. */
public final class ProfilePanel implements WorkbenchPanel {
    @Override
    public String id() {
        return "brightness-profile";
    }

    @Override
    public String label() {
        return "Profile";
    }

    @Override
    public int order() {
        return 450;
    }

    @Override
    public JComponent create(PanelContext context) {
        return new ProfileView(context);
    }
}
