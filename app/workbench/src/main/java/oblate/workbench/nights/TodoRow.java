/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.nights;

import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.function.Supplier;
import javax.accessibility.AccessibleContext;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.ListCellRenderer;
import oblate.workbench.look.Palette;
import oblate.workbench.look.StateGlyph;
import oblate.workbench.look.Theme;

/** A triangle, what is the matter, and where. */
final class TodoRow extends JPanel implements ListCellRenderer<Todo> {
    private static final long serialVersionUID = 1L;
    private final transient Supplier<Palette> palette;
    private transient Todo todo;
    private boolean selected;
    private transient JList<? extends Todo> list;

    TodoRow(Supplier<Palette> palette) {
        this.palette = palette;
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        // A bare component has none of its own.
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                private static final long serialVersionUID = 1L;
            };
        }
        return accessibleContext;
    }

    @Override
    public Component getListCellRendererComponent(
            JList<? extends Todo> in, Todo value, int index, boolean isSelected, boolean focused) {
        list = in;
        todo = value;
        selected = isSelected;
        getAccessibleContext().setAccessibleName(value.title() + ": " + value.sentence());
        return this;
    }

    @Override
    protected void paintComponent(Graphics g) {
        Graphics2D g2 = (Graphics2D) g.create();
        g2.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g2.setColor(selected ? list.getSelectionBackground() : list.getBackground());
        g2.fillRect(0, 0, getWidth(), getHeight());
        StateGlyph.paint(
                g2,
                StateGlyph.State.NEEDS_A_LOOK,
                18,
                15,
                13,
                selected ? list.getSelectionForeground() : palette.get().alarm());
        g2.setFont(Theme.bodyFont(0));
        g2.setColor(selected ? list.getSelectionForeground() : list.getForeground());
        g2.drawString(todo.kind().heading() + ": " + todo.title(), 44, 19);
        g2.setFont(Theme.bodyFont(-2));
        g2.setColor(selected ? list.getSelectionForeground() : palette.get().quietInk());
        g2.drawString(todo.sentence(), 44, 36);
        g2.dispose();
    }
}
