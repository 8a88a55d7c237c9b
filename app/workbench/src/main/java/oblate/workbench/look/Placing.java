/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.look;

import java.awt.Component;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Window;

/** Gives a small window its size and place before it is shown. */
public final class Placing {
    private Placing() {}

    /**
     * Packs a window that has not been shown, in the middle of what is below it. Its place is set before the display hears of it, and its size once: what is
     * changed in between may be undone by the display's late answer to what was asked first, and a window then stands elsewhere or smaller than it believes.
     *
     * @param window not yet displayable
     * @param below a component, in pixels of the screen; null or not showing for the screen
     */
    public static void over(Window window, Component below) {
        Dimension wanted = window.getPreferredSize();
        Rectangle room = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
        Point middle = new Point((int) room.getCenterX(), (int) room.getCenterY());
        if (below != null && below.isShowing()) {
            middle = below.getLocationOnScreen();
            middle.translate(below.getWidth() / 2, below.getHeight() / 2);
        }
        window.setLocation(
                within(middle.x - wanted.width / 2, room.x, room.width - wanted.width),
                within(middle.y - wanted.height / 2, room.y, room.height - wanted.height));
        window.pack();
    }

    private static int within(int wanted, int least, int span) {
        return Math.max(least, Math.min(wanted, least + span));
    }
}
