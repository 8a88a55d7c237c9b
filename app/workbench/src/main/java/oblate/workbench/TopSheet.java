/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLayeredPane;
import javax.swing.LookAndFeel;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;

/** Shows one component over the window, hanging from its top edge; what lies under it stays usable. On the event thread only. */
final class TopSheet {
    private static final int MARGIN = 40;
    private static final Object LOOK = new Object();
    private final JFrame frame;
    private JComponent shown;
    private Component focusBefore;

    TopSheet(JFrame frame) {
        this.frame = frame;
        frame.getRootPane().addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                place();
            }
        });
    }

    void show(JComponent component) {
        hide();
        focusBefore = frame.getFocusOwner();
        shown = component;
        // While it was away it did not hear of another theme.
        LookAndFeel now = UIManager.getLookAndFeel();
        if (component.getClientProperty(LOOK) != now) {
            component.putClientProperty(LOOK, now);
            SwingUtilities.updateComponentTreeUI(component);
        }
        frame.getLayeredPane().add(component, JLayeredPane.POPUP_LAYER);
        place();
        component.setVisible(true);
    }

    private void place() {
        if (shown == null) {
            return;
        }
        JLayeredPane pane = frame.getLayeredPane();
        Dimension wish = shown.getPreferredSize();
        int width = Math.min(wish.width, pane.getWidth() - 2 * MARGIN);
        int height = Math.min(wish.height, pane.getHeight() - 2 * MARGIN);
        int top = frame.getJMenuBar() == null ? 0 : frame.getJMenuBar().getHeight();
        shown.setBounds((pane.getWidth() - width) / 2, top, width, height);
        shown.revalidate();
        pane.repaint();
    }

    void hide() {
        if (shown == null) {
            return;
        }
        boolean hadFocus =
                frame.getFocusOwner() != null && SwingUtilities.isDescendingFrom(frame.getFocusOwner(), shown);
        frame.getLayeredPane().remove(shown);
        frame.getLayeredPane().repaint();
        shown = null;
        if (hadFocus && focusBefore != null && focusBefore.isShowing()) {
            focusBefore.requestFocusInWindow();
        }
    }
}
