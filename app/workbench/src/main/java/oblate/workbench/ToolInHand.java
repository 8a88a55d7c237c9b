/* SPDX-License-Identifier: Apache-2.0 */
package oblate.workbench;

import java.util.List;
import java.util.Optional;
import oblate.disc.PixelPoint;
import oblate.workbench.measure.Drawn;

/**
 * A measuring tool while a person holds it. Everything is called on the event thread and must be quick; places are in picture pixels, whole
 * numbers at pixel centres, wherever the picture has been moved, turned or zoomed to.
 */
public interface ToolInHand {
    /** A place was clicked. */
    void clicked(PixelPoint at);

    /** The pointer is over a place, or has left the picture. */
    default void moved(Optional<PixelPoint> at) {}

    /** Another picture lies on the desk, or the disc was fitted anew, or the marks have changed. */
    default void pictureChanged() {}

    /** What to draw over the picture; asked after each of the calls above and after {@link ToolContext#redraw()}. */
    List<Drawn> overlay();

    /** The tool was laid down. */
    default void laidDown() {}
}
