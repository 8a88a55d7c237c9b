/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench.measure;

import java.awt.Graphics2D;
import java.awt.Point;
import oblate.disc.PixelPoint;
import oblate.workbench.look.Palette;

/** Something laid over the canvas that takes the mouse before marks do. On the event thread only. */
interface CanvasTool {
    /** Whether it takes hold of something at a point of the canvas; then it gets the dragging that follows. */
    boolean grabs(Point screen, CanvasView view);

    /** What it holds is dragged to a place of the picture. */
    void draggedTo(PixelPoint pixel);

    /** It is let go. */
    void released();

    /** Paints it, in screen pixels. */
    void paint(Graphics2D g, CanvasView view, Palette palette);
}
