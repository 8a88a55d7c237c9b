/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import javax.swing.JPanel;

/** A row of parts that goes on in a further line where there is no room; the last part may keep to the right. Invisible parts take no room. */
public final class FlowingRow extends JPanel {
    private static final long serialVersionUID = 1L;
    private static final int GAP_PX = 8;
    private static final int LINE_GAP_PX = 6;
    private static final int SIDE_PX = 16;
    private final int sidePx;
    private final boolean lastRight;

    /**
     * An empty row.
     *
     * @param lastRight whether the last part keeps to the right edge
     */
    public FlowingRow(boolean lastRight) {
        this(lastRight, SIDE_PX);
    }

    /**
     * An empty row.
     *
     * @param lastRight whether the last part keeps to the right edge
     * @param sidePx room left free at its sides, half as much above
     */
    public FlowingRow(boolean lastRight, int sidePx) {
        super(null);
        this.lastRight = lastRight;
        this.sidePx = sidePx;
        setOpaque(false);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                revalidate();
            }
        });
    }

    @Override
    public void doLayout() {
        arranged(getWidth(), true);
    }

    /** As wide as all parts in one line until a width is known, then as high as that width asks for. */
    @Override
    public Dimension getPreferredSize() {
        if (getWidth() > 0) {
            return new Dimension(getWidth(), arranged(getWidth(), false));
        }
        int wide = 2 * sidePx;
        for (Component part : getComponents()) {
            wide += part.isVisible() ? part.getPreferredSize().width + GAP_PX : 0;
        }
        return new Dimension(wide, arranged(wide, false));
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(100, getPreferredSize().height);
    }

    /** Puts the parts in their places, or only finds out how high they stand (px). */
    private int arranged(int widthPx, boolean place) {
        int x = sidePx;
        int y = sidePx / 2;
        int lineHeight = 0;
        Component[] parts = getComponents();
        for (int i = 0; i < parts.length; i++) {
            if (!parts[i].isVisible()) {
                continue;
            }
            Dimension wish = parts[i].getPreferredSize();
            int width = Math.min(wish.width, Math.max(0, widthPx - 2 * sidePx));
            if (x > sidePx && x + width > widthPx - sidePx) {
                x = sidePx;
                y += lineHeight + LINE_GAP_PX;
                lineHeight = 0;
            }
            if (place) {
                boolean right = lastRight && i == parts.length - 1;
                parts[i].setBounds(right ? widthPx - sidePx - width : x, y, width, wish.height);
            }
            x += width + GAP_PX;
            lineHeight = Math.max(lineHeight, wish.height);
        }
        return y + lineHeight + LINE_GAP_PX;
    }
}
