/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import javax.swing.Icon;
import javax.swing.JComponent;
import oblate.base.Plugin;

/**
 * Extension point: a panel of the window. It gets an entry in the rail, with its {@link #label()}.
 *
 * <p>The panels that ship come through this door too. An implementation has a public constructor without parameters and is named in
 * {@code META-INF/services/oblate.workbench.WorkbenchPanel} of its jar. One that throws is named in the list of plug-ins and left out.
 */
public interface WorkbenchPanel extends Plugin {
    /** Makes the panel's component. Called once, on the event thread, when the panel is first shown. */
    JComponent create(PanelContext context);

    /** Place in the rail, from the top: small numbers first; those that ship use 100 to 900. */
    default int order() {
        return 500;
    }

    /** A picture for the rail, 24 × 24 px, painted in the foreground of the component it is given; without one, the label's first letter. */
    default Optional<Icon> icon() {
        return Optional.empty();
    }
}
