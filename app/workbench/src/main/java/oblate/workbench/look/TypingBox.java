/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import javax.swing.JComboBox;
import javax.swing.plaf.basic.BasicComboBoxEditor;

/**
 * A box to type into or choose from, whose text field stays the same when the theme changes: the one a look and feel makes is thrown away with it, and what was
 * typed, and who listens, would be lost.
 */
public final class TypingBox extends JComboBox<String> {
    private static final long serialVersionUID = 1L;

    /** Empty and without choices. */
    public TypingBox() {
        setEditor(new BasicComboBoxEditor());
        setEditable(true);
    }
}
