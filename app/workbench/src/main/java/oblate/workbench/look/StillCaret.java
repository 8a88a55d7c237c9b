/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.Rectangle;
import javax.swing.text.DefaultCaret;

/** A caret for texts that are only read: it never scrolls what is around it, which an ordinary one does some time after its text was set. */
public final class StillCaret extends DefaultCaret {
    private static final long serialVersionUID = 1L;

    /** A caret that also keeps its place when the text changes. */
    public StillCaret() {
        setUpdatePolicy(NEVER_UPDATE);
    }

    @Override
    protected void adjustVisibility(Rectangle place) {
        // stays where it is
    }
}
