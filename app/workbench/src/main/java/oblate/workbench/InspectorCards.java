/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.JPanel;
import javax.swing.Scrollable;

/** The inspectors of the panels, one shown at a time, as wide as there is room. */
final class InspectorCards extends JPanel implements Scrollable {
    private static final long serialVersionUID = 1L;

    InspectorCards() {
        super(new CardLayout());
        setOpaque(false);
    }

    /** As high as the one shown, not as the highest of all. */
    @Override
    public Dimension getPreferredSize() {
        for (java.awt.Component card : getComponents()) {
            if (card.isVisible()) {
                return card.getPreferredSize();
            }
        }
        return super.getPreferredSize();
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return getPreferredSize();
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return 16;
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return visible.height - 32;
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return getParent() != null && getParent().getHeight() > getPreferredSize().height;
    }
}
