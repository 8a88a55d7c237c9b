/* SPDX-License-Identifier: Apache-2.0 */
package oblate.chartpanel;

import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import javax.swing.BorderFactory;
import javax.swing.JLabel;

/** A line at the foot of a panel; a hint after it is left to the tooltip, which always has all, where there is no room for both. */
final class FootNote extends JLabel {
    private static final long serialVersionUID = 1L;
    private String note = "";
    private String hint = "";

    FootNote(String name) {
        super(" ");
        setName(name);
        setBorder(BorderFactory.createEmptyBorder(4, 16, 6, 16));
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                fill();
            }
        });
    }

    /** Says a note and, where there is room, a hint. */
    void say(String newNote, String newHint) {
        note = newNote;
        hint = newHint;
        setToolTipText(all().isEmpty() ? null : all());
        getAccessibleContext().setAccessibleName(all());
        fill();
    }

    private String all() {
        return hint.isEmpty() ? note : note + " " + hint;
    }

    private void fill() {
        int room = getWidth() - getInsets().left - getInsets().right;
        String shown = getFontMetrics(getFont()).stringWidth(all()) <= room ? all() : note;
        setText(shown.isEmpty() ? " " : shown);
    }
}
