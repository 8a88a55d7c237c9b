/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.Optional;
import javax.swing.Icon;
import javax.swing.KeyStroke;
import oblate.base.Plugin;

/**
 * Extension point: a tool of the measuring desk. It gets a button above the picture, with its {@link #label()}; while it is in hand, clicks on
 * the picture go to it, and what it draws lies over the picture.
 *
 * <p>An implementation has a public constructor without parameters and is named in {@code META-INF/services/oblate.workbench.MeasureTool} of its
 * jar. One that throws is named in the list of plug-ins and switched off.
 */
public interface MeasureTool extends Plugin {
    /** What the tool does and how, for the button's tooltip. */
    String hint();

    /** A picture for the button, 18 × 18 px, painted in the foreground of the component it is given. */
    default Optional<Icon> icon() {
        return Optional.empty();
    }

    /** Key that takes the tool up and lays it down again while the desk is shown; the tooltip names it. */
    default Optional<KeyStroke> key() {
        return Optional.empty();
    }

    /** Takes the tool up. Called on the event thread each time a person chooses it. */
    ToolInHand take(ToolContext context);
}
